import { describe, expect, test } from 'vitest';
import { contentsOf, type Entry } from '../../../language/editing/contents.ts';
import { foldsIn } from '../../../language/editing/folding.ts';
import { thingsNamed } from '../../../language/editing/search.ts';
import { FILES, textOf } from '../../samples/samples.ts';
import { marked } from './marked.ts';
import { YARD } from './yard.ts';

async function textOfFile(text: string) {
  return (await marked({ 'a.paving': `‸${text}` })).look.text;
}

function lined(entries: readonly Entry[], indent = ''): string[] {
  return entries.flatMap(({ word, name, detail, inside }) => [
    `${indent}${word} | ${name} | ${detail}`,
    ...lined(inside, `${indent}  `)
  ]);
}

describe('Contents', () => {
  test('of a job: things with their headlines, areas with their parts', async () => {
    expect(lined(contentsOf(await textOfFile(YARD['yard.paving']!)))).toEqual([
      'job | Pear tree yard | britain',
      '  rules | rules | britain',
      'use | shared.paving | ',
      'use | walk.paving | ',
      'let | depth | = 150 mm',
      'area | yard | A to door bowed 3 m out to C',
      '  outline | outline | A to door bowed 3 m out to C',
      '  traffic | traffic | foot',
      '  finish | finish | level with step',
      '  paving | paving | slab in running-bond, joints 3 mm',
      '  base | base | stone depth',
      '  edges | edges | ',
      '    side | A to door | meets house-wall',
      '    side | C to A | meets hedge, edging spiked-strip set before laying',
      '    side | the rest | meets front-walk, flush',
      'box | lid | in yard',
      '  rectangle | rectangle | 20 x 14 in, centre (3, 2) m'
    ]);
  });

  test('of a file that others use', async () => {
    expect(lined(contentsOf(await textOfFile(YARD['shared.paving']!)))).toEqual([
      'site | site | clay',
      '  soil | soil | clay',
      '  benchmark | step | ',
      '  ground | ground | level with step',
      'point | A | at (0, 0)',
      'point | door | at (6 m, 0)',
      'point | C | at (6, 4) m',
      'unit | slab | 450 x 450 x 50 mm',
      '  size | size | 450 x 450 x 50 mm',
      'material | stone | base',
      '  role | role | base',
      '  compacted | compacted | 2.2 t/m3',
      '  loose | loose | 1.76 t/m3',
      'existing | hedge | lawn',
      '  kind | kind | lawn'
    ]);
  });

  test('of a broken text, and of one that is being typed', async () => {
    expect(
      lined(contentsOf(await textOfFile('job\narea patio {\n  outline rectangle 4 x\n  nonsense\n  edges {\n')))
    ).toEqual([
      'job | job | ',
      'area | patio | rectangle 4 x',
      '  outline | outline | rectangle 4 x',
      '  edges | edges | '
    ]);
    expect(lined(contentsOf(await textOfFile('area')))).toEqual(['area | area | ']);
  });

  test.each(FILES)('%s: every part lies in its whole, every name in its part', async file => {
    const check = (outer: Entry): void => {
      expect(holds(outer.place, outer.namePlace)).toBe(true);
      for (const inner of outer.inside) {
        expect(holds(outer.place, inner.place)).toBe(true);
        check(inner);
      }
    };
    contentsOf(await textOfFile(textOf(file))).forEach(check);
  });
});

function holds(outer: Entry['place'], inner: Entry['place']): boolean {
  const before = (line: number, column: number, otherLine: number, otherColumn: number): boolean =>
    line < otherLine || (line === otherLine && column <= otherColumn);
  return (
    before(outer.line, outer.column, inner.line, inner.column) &&
    before(inner.endLine, inner.endColumn, outer.endLine, outer.endColumn)
  );
}

test('Things are found by letters of their name, in their order; a box tells its area, a benchmark its site', async () => {
  const found = async (file: string, letters: string): Promise<string[]> =>
    thingsNamed(await textOfFile(YARD[file]!), letters).map(({ entry, within }) =>
      `${entry.name} ${within ?? ''}`.trim()
    );
  expect(await found('yard.paving', 'YRD')).toEqual(['Pear tree yard', 'yard']);
  expect(await found('yard.paving', 'lid')).toEqual(['lid yard']);
  expect(await found('shared.paving', 'st')).toEqual(['step site', 'stone']);
  expect(await found('shared.paving', '')).toHaveLength(7);
  expect(await found('shared.paving', 'zz')).toEqual([]);
});

describe('Folding', () => {
  async function folded(text: string): Promise<string[]> {
    return foldsIn(await textOfFile(text)).map(({ first, last, kind }) => `${first}-${last} ${kind}`);
  }

  test('blocks, comments, runs of points and of used files; the closing brace stays in sight', async () => {
    const text = `// A job
// in two lines.
use "a.paving"
use "b.paving"   // its prices

point A at (0, 0)
point B at (1, 0) m
point C at (1, 1) m
let one = 1 m
let two = 2 m

area a {         // no run of comments
  // its outline
  // and more
  outline A to
    B to C
  edges {
    the rest meets lawn
  }
}
unit u { size 1 x 1 x 1 m }
`;
    expect(await folded(text)).toEqual([
      '1-2 comment',
      '3-4 uses',
      '6-8 run',
      '9-10 run',
      '12-19 block',
      '13-14 comment',
      '17-18 block'
    ]);
  });

  test('of a broken text: a brace that was never closed ends before the next thing', async () => {
    expect(await folded('area a {\n  traffic foot\n  edges {\n    left meets lawn\n\narea b {\n  bogus\n}\n')).toEqual([
      '1-4 block',
      '3-4 block',
      '6-7 block'
    ]);
  });
});
