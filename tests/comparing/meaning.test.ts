// Jobs are compared, not lines: what is moved, laid out otherwise, put in another measure or called otherwise is no change.
import { describe, expect, test } from 'vitest';
import { compareJobs } from '../../language/comparing/compare.ts';
import type { Comparison } from '../../language/comparing/contract.ts';
import { formatText } from '../../language/format/format.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { FILES, JOBS, textOf } from '../samples/samples.ts';
import { asText, compared, read } from './compared.ts';

const PATIO = `job "Patio" { rules north-america, show feet-and-inches }
site { soil clay }
unit slab-16 { size 16 x 16 x 2 in }
unit slab-8 { size 8 x 8 x 2 in }
let wide = 12 ft
point A at (0, 0)
point B at (wide, 0)
area terrace {
  outline rectangle 18 x 12 ft
  traffic foot
  paving  slab-16 in running-bond
  bed     washed-sand 1 in
  base    crushed-stone 6 in
  edges { the rest meets lawn, edging spiked-strip }
}
area path {
  outline rectangle 3 x 20 ft, corner (30, 0) ft
  traffic foot
  paving  slab-8 in running-bond
  bed     washed-sand 1 in
  base    as terrace
  edges { the rest meets lawn, edging spiked-strip }
}
`;

const change = (from: string, to: string, text = PATIO): string => {
  expect(text, `${from} stands in the text`).toContain(from);
  return text.replaceAll(from, to);
};

const between = (newer: string, others: Readonly<Record<string, string>> = {}): Promise<Comparison> =>
  compared({ 'job.paving': PATIO }, { ...others, 'job.paving': newer });

const isEmpty = ({ edits, renamed, numbers, findings, money, tasks }: Comparison): boolean =>
  [edits, renamed, numbers, findings, money, tasks].every(list => list.length === 0);

describe('no change', () => {
  test.each([
    ['white space and comments', change('traffic foot', 'traffic   foot   // people only\n')],
    ['another measure', change('crushed-stone 6 in', 'crushed-stone 1/2 ft')],
    ['a length as feet and inches', change('crushed-stone 6 in', 'crushed-stone 0 ft 6 in')],
    ['a value by its name', change('crushed-stone 6 in', 'crushed-stone 3 * 2 in')],
    [
      'areas in another order',
      PATIO.slice(0, PATIO.indexOf('area terrace')) +
        PATIO.slice(PATIO.indexOf('area path')) +
        PATIO.slice(PATIO.indexOf('area terrace'), PATIO.indexOf('area path'))
    ],
    [
      'clauses in another order',
      change(
        '  traffic foot\n  paving  slab-16 in running-bond\n',
        '  paving  slab-16 in running-bond\n  traffic foot\n'
      )
    ]
  ])('%s', async (_, newer) => {
    const comparison = await between(newer);
    expect(isEmpty(comparison), asText(comparison)).toBe(true);
    expect(asText(comparison)).toContain('Nothing differs in meaning.');
  });

  test('a unit moved into a file that is used', async () => {
    const unit = 'unit slab-8 { size 8 x 8 x 2 in }\n';
    const comparison = await between(`use "units.paving"\n${change(unit, '')}`, { 'units.paving': unit });
    expect(isEmpty(comparison), asText(comparison)).toBe(true);
  });

  test.each(JOBS)('%s laid out anew', async file => {
    const texts = Object.fromEntries(FILES.map(one => [one, textOf(one)]));
    const squeezed = textOf(file).replace(/(?<=\S) {2,}(?!\/\/)/g, ' ');
    const parse = createParse(() => false);
    for (const newer of [squeezed, formatText(squeezed, parse)]) {
      const comparison = compareJobs(await read(texts, file), await read({ ...texts, [file]: newer }, file));
      expect(isEmpty(comparison), asText(comparison)).toBe(true);
    }
  });
});

describe('called otherwise', () => {
  test.each([
    ['an area', 'terrace', 'sun-deck', 'area'],
    ['a unit', 'slab-16', 'big-slab', 'unit'],
    ['a point', 'B at', 'E at', 'point']
  ])('%s with all that names it', async (_, before, after, kind) => {
    const comparison = await between(change(before, after));
    const name = (words: string): string => words.replace(' at', '');
    expect(comparison.renamed).toEqual([{ kind, before: name(before), after: name(after) }]);
    expect({ ...comparison, renamed: [] }).toMatchObject({ edits: [], numbers: [], money: [], tasks: [] });
  });

  test('an area renamed and paved otherwise on the same outline is the same area', async () => {
    const newer = change('area terrace', 'area court', change('as terrace', 'as court')).replace(
      'slab-16 in',
      'slab-8 in'
    );
    const comparison = await between(newer);
    expect(comparison.renamed).toEqual([{ kind: 'area', before: 'terrace', after: 'court' }]);
    expect(comparison.edits.map(({ label, before, after }) => [label, before, after])).toEqual([
      ['area court, paving', 'paving slab-16 in running-bond', 'paving slab-8 in running-bond']
    ]);
    // The area keeps its size; what it is paved with does not.
    expect(comparison.numbers.filter(({ id }) => id.endsWith('/netArea'))).toEqual([]);
  });

  test('a unit and an area of one name are told apart', async () => {
    const both = change('area path', 'area slab-8');
    const comparison = await compared(
      { 'job.paving': both },
      { 'job.paving': both.replaceAll('area slab-8', 'area walk') }
    );
    expect(comparison.renamed).toEqual([{ kind: 'area', before: 'slab-8', after: 'walk' }]);
    expect(comparison.numbers).toEqual([]);
  });
});

describe('what follows', () => {
  test('totals that one area alone comes to name its edits', async () => {
    const one = PATIO.slice(0, PATIO.indexOf('area path'));
    const comparison = await compared({ 'job.paving': one }, { 'job.paving': change('18 x 12 ft', '18 x 14 ft', one) });
    expect(comparison.numbers.map(({ id }) => id)).toContain('materials/base crushed-stone/mass');
    expect(comparison.numbers.filter(({ causes }) => causes.length === 0).map(({ id }) => id)).toEqual([]);
  });

  test('names the edits found in its working, and no other', async () => {
    const newer = change('18 x 12 ft', '18 x 14 ft', change('slab-8 in running-bond', 'slab-8 in stack-bond'));
    const comparison = await between(newer);
    const [outline, paving] = ['area terrace, outline', 'area path, paving'];
    expect(comparison.edits.map(({ label }) => label)).toEqual([outline, paving]);
    const causes = (id: string): string[] | undefined =>
      comparison.numbers.find(one => one.id === id)?.causes.map(({ label }) => label);
    expect(causes('areas/area:terrace/netArea')).toEqual([outline]);
    expect(causes('areas/area:terrace/layers/base/mass')).toEqual([outline]);
    expect(comparison.numbers.filter(({ causes: all }) => all.length === 0).map(({ id }) => id)).toEqual([]);
    expect(comparison.numbers.some(({ id }) => id.startsWith('areas/area:path/layers'))).toBe(false);
  });

  test('a value that several things take is one edit', async () => {
    const newer = change('let wide = 12 ft', 'let wide = 13 ft', PATIO);
    const comparison = await between(newer);
    expect(comparison.edits.map(({ label }) => label)).toEqual(['let wide']);
  });

  test('a finding set aside, and one that appears set aside at once, are told as that', async () => {
    const thin = change('crushed-stone 6 in', 'crushed-stone 1 in');
    const aside = `${thin}accept base-too-thin on terrace because "a trial" for good, agreed with "the owner"\n`;
    const appeared = await compared({ 'job.paving': PATIO }, { 'job.paving': aside });
    const accepted = await compared({ 'job.paving': thin }, { 'job.paving': aside });
    const kindOf = ({ findings }: Comparison): unknown =>
      findings
        .filter(({ finding }) => finding.id === 'base-too-thin' && finding.target === 'area:terrace')
        .map(({ kind, acceptance }) => [kind, acceptance !== undefined]);
    expect(kindOf(appeared)).toEqual([['appeared', true]]);
    expect(kindOf(accepted)).toEqual([['set aside', true]]);
    expect(asText(appeared)).toContain('appeared, set aside');
  });
});
