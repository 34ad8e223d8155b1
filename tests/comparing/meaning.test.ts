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

  test('a corner renamed, and one clause at its sides edited, is one edit of that side', async () => {
    const yard = PATIO.replace('rectangle 18 x 12 ft', 'A to B to C to D').replace(
      'edges { the rest meets lawn, edging spiked-strip }',
      'edges {\n    A to B meets house-wall, damp-course 6 in\n    D to A meets fence\n    the rest meets lawn, edging spiked-strip\n  }'
    );
    const job = `${yard}point C at (12, 9) ft\npoint D at (0, 9) ft\n`;
    const newer = job.replace(/\bA\b/g, 'Z9').replace('damp-course 6 in', 'damp-course 7 in');
    const comparison = await compared({ 'job.paving': job }, { 'job.paving': newer });
    expect(comparison.renamed).toEqual([{ kind: 'point', before: 'A', after: 'Z9' }]);
    expect(comparison.edits.map(({ label }) => label)).toEqual(['area terrace, Z9 to B']);
  });

  test('a long chain of points, each from the one before, all called otherwise', async () => {
    const chain = Array.from(
      { length: 12 },
      (_, at) => `point c${at + 1} at 1 ft from ${at === 0 ? 'A' : `c${at}`} at ${at} degrees`
    );
    const job = `${PATIO}${chain.join('\n')}\n`;
    const comparison = await compared({ 'job.paving': job }, { 'job.paving': job.replace(/\bc(\d+)\b/g, 'k$1') });
    expect([comparison.renamed.length, comparison.edits.length]).toEqual([12, 0]);
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

  test('names that lead to the same thing again and again are followed once', async () => {
    const lets = Array.from({ length: 23 }, (_, at) => `let a${at + 1} = a${at} + a${at} - a${at}`);
    const job = `let a0 = 3 ft\n${lets.join('\n')}\n${change('18 x 12 ft', 'a23 x 12 ft')}`;
    const comparison = await compared({ 'job.paving': job }, { 'job.paving': job.replace('a0 = 3 ft', 'a0 = 4 ft') });
    expect(comparison.edits.map(({ label }) => label)).toEqual(['let a0']);
    expect(comparison.numbers.every(({ causes }) => causes.length === 1)).toBe(true);
  });

  test('borders in another order are told by their places', async () => {
    const two = ['border slab-8 in sailor-course all round', 'border slab-8 in soldier-course all round'];
    const job = change(
      '  bed     washed-sand 1 in\n  base    crushed-stone',
      `  ${two.join('\n  ')}\n  bed     washed-sand 1 in\n  base    crushed-stone`
    );
    const swapped = job.replace(two.join('\n  '), two.toReversed().join('\n  '));
    const comparison = await compared({ 'job.paving': job }, { 'job.paving': swapped });
    expect(comparison.edits.map(({ kind, order, after }) => [kind, order, after])).toEqual([
      ['moved', { before: 2, after: 1 }, two[1]],
      ['moved', { before: 1, after: 2 }, two[0]]
    ]);
    expect(asText(comparison)).toMatch(/soldier-course .*in place 2 +in place 1/);
  });

  test('what a variant says of an area, and what is accepted of what, can be told apart', async () => {
    const job = `${PATIO}variant deeper { area path { base crushed-stone 8 in } }
accept base-too-thin on terrace because "a trial" for good, agreed with "the owner"
`;
    const newer = job.replace('8 in } }', '9 in } }').replace('"a trial"', '"an old slab below"');
    const comparison = await compared({ 'job.paving': job }, { 'job.paving': newer });
    expect(comparison.edits.map(({ label }) => label)).toEqual([
      'variant deeper, area path, base',
      'accept base-too-thin on terrace'
    ]);
  });

  test('of a point it is seen which of its numbers moved', async () => {
    const comparison = await between(change('point A at (0, 0)', 'point A at (1, 0)'));
    expect(asText(comparison)).toMatch(/point A +point A at \(0, 0\) +point A at \(1, 0\)/);
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
