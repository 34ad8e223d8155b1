import { describe, expect, test } from 'vitest';
import { selectionsAt } from '../../../language/editing/selection.ts';
import { marked } from './marked.ts';

async function grown(drawn: string): Promise<string[]> {
  const { look, offset } = await marked({ 'a.paving': drawn });
  const { text } = look.text.parsed;
  return selectionsAt(look.text, offset).map(({ start, end }) => text.slice(start, end).replaceAll(/\s+/g, ' '));
}

describe('A selection grows', () => {
  test('from a figure over quantity, sizes, clause, statement and braces to the file', async () => {
    expect(
      await grown('area a {\n  outline rectangle 12 ft 6 1/‸2 in x 3 ft, turned 2 degrees\n  traffic foot\n}\n')
    ).toEqual([
      '6 1/2',
      '12 ft 6 1/2 in',
      '12 ft 6 1/2 in x 3 ft',
      'outline rectangle 12 ft 6 1/2 in x 3 ft',
      'outline rectangle 12 ft 6 1/2 in x 3 ft, turned 2 degrees',
      'outline rectangle 12 ft 6 1/2 in x 3 ft, turned 2 degrees traffic foot',
      '{ outline rectangle 12 ft 6 1/2 in x 3 ft, turned 2 degrees traffic foot }',
      'area a { outline rectangle 12 ft 6 1/2 in x 3 ft, turned 2 degrees traffic foot }',
      'area a { outline rectangle 12 ft 6 1/2 in x 3 ft, turned 2 degrees traffic foot } '
    ]);
  });

  test('over a whole name with hyphens, and a line of the edges', async () => {
    expect(
      (await grown('area a { edges {\n A to B meets old-w‸alk, flush\n C to A meets lawn } }')).slice(0, 4)
    ).toEqual([
      'old-walk',
      'A to B meets old-walk',
      'A to B meets old-walk, flush',
      'A to B meets old-walk, flush C to A meets lawn'
    ]);
  });

  test('over brackets and the measure behind them', async () => {
    expect(await grown('point A at (1 + 2‸ * b, 3) m')).toEqual([
      '2',
      '1 + 2 * b, 3',
      '(1 + 2 * b, 3)',
      '(1 + 2 * b, 3) m',
      'point A at (1 + 2 * b, 3) m'
    ]);
  });

  test('over a text, then its quotes', async () => {
    expect(await grown('use "pri‸ces.paving"')).toEqual(['prices.paving', '"prices.paving"', 'use "prices.paving"']);
  });

  test('from the head of a block', async () => {
    expect(await grown('box li‸d in a { circle 1 m across }')).toEqual([
      'lid',
      'box lid in a',
      'box lid in a { circle 1 m across }'
    ]);
  });

  test('from a comment', async () => {
    expect(await grown('area a {\n  // thr‸ee words\n  traffic foot\n}')).toEqual([
      '// three words',
      '{ // three words traffic foot }',
      'area a { // three words traffic foot }'
    ]);
  });

  test('in a broken text too, as far as it was read', async () => {
    expect((await grown('area a {\n  base st‸one (3 in\n')).slice(0, 2)).toEqual(['stone', 'base stone (3 in']);
  });
});
