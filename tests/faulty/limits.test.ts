import { describe, expect, it } from 'vitest';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { MOST_FILES, type SpecFiles } from '../../language/project.ts';
import { MOST_CHARACTERS, MOST_NESTED, MOST_SIDES, MOST_TERMS } from '../../language/syntax/limits.ts';
import { badlyTold } from './plain-words.ts';

/* Limits of the text: what stands at a limit is read, what stands one past it is a finding. Texts too long to be kept. */
/** The first, and a hundred others in a row that it may lean on. */
const MOST_LETS = 101;
const JOB = 'job "Yard" { rules britain }\n';
const SITE = 'site { soil clay, bearing 5 %, benchmark step, ground level with step }\n';

async function evaluateTexts(texts: Readonly<Record<string, string>>): Promise<Evaluation> {
  const files: SpecFiles = {
    resolve: (_, written) => written,
    read: name => Promise.resolve(texts[name] === undefined ? { problem: 'missing' } : { text: texts[name] }),
    show: name => name
  };
  const paving = new Paving(files);
  await paving.load('job.paving');
  return drain(paving.evaluate('job.paving'))!;
}

/** A small area whose outline and bed are told, with what they need. */
function area(outline: string, bed = '30 mm', before = ''): string {
  return `${JOB}${SITE}${before}
area yard {
  outline ${outline}
  traffic foot
  finish  level with step
  bed     sharp-sand ${bed}
  base    type-1 100 mm
  edges { the rest meets garden-wall }
}
`;
}

async function ids(text: string): Promise<string[]> {
  const evaluation = await evaluateTexts({ 'job.paving': text });
  expect(badlyTold(evaluation)).toEqual([]);
  // What has no finding has its numbers.
  expect(evaluation.numbers?.quantities.complete).toBe(
    evaluation.findings.every(finding => finding.severity === 'note')
  );
  return evaluation.findings.map(finding => finding.id);
}

/** Steps to the right and up, then left and back: so many legs in all. */
function stairs(legs: number): string {
  const steps = Array.from({ length: legs - 2 }, (_, index) => (index % 2 === 0 ? 'right 10 mm' : 'up 10 mm'));
  const right = Math.ceil((legs - 2) / 2) * 10;
  return `walk from (0, 0), ${steps.join(', ')}, left ${right} mm, back`;
}

const brackets = (count: number): string => `${'('.repeat(count)}30 mm${')'.repeat(count)}`;
const terms = (count: number): string => ['30 mm', ...Array.from({ length: count - 1 }, () => '0 mm')].join(' + ');
/** A value that leans on so many others, one on the other, each declared after the one that leans on it. */
const lets = (count: number): string =>
  Array.from(
    { length: count },
    (_, index) => `let v${index} = ${index === count - 1 ? '30 mm' : `v${index + 1}`}\n`
  ).join('');

describe('at a limit and one past it', () => {
  it.each([
    [
      'brackets inside each other',
      'brackets-too-deep',
      MOST_NESTED,
      (n: number) => area('rectangle 3 x 4 m', brackets(n))
    ],
    ['terms of a sum', 'sum-too-long', MOST_TERMS, (n: number) => area('rectangle 3 x 4 m', terms(n))],
    ['sides of an outline', 'too-many-sides', MOST_SIDES, (n: number) => area(stairs(n))],
    [
      'digits of a number',
      'number-too-large',
      40,
      (n: number) => area('rectangle 3 x 4 m', `${'0'.repeat(n - 2)}30 mm`)
    ]
  ])('%s', { timeout: 300_000 }, async (_, id, most, text) => {
    expect(await ids(text(most))).toEqual([]);
    expect(await ids(text(most + 1))).toEqual([id]);
  });

  it('values that lean on each other', async () => {
    expect(await ids(area('rectangle 3 x 4 m', 'v0', lets(MOST_LETS)))).toEqual([]);
    expect(await ids(area('rectangle 3 x 4 m', 'v0', lets(MOST_LETS + 1)))).toEqual(['let-in-circle']);
    // Declared the other way round, each is known when the next one is read.
    const inOrder = lets(1000).trimEnd().split('\n').reverse().join('\n');
    expect(await ids(area('rectangle 3 x 4 m', 'v0', inOrder))).toEqual([]);
  });

  it('characters of a text', async () => {
    const filled = (length: number): string => JOB + '/'.repeat(length - JOB.length);
    expect((await evaluateTexts({ 'job.paving': filled(MOST_CHARACTERS) })).findings).toEqual([]);
    const evaluation = await evaluateTexts({ 'job.paving': filled(MOST_CHARACTERS + 1) });
    expect(evaluation.findings.map(({ id, line, column, message }) => ({ id, line, column, message }))).toEqual([
      {
        id: 'text-too-long',
        line: 1,
        column: 1,
        message:
          'This file has 1,000,001 characters; at most 1,000,000 are read. Part it into several files with `use`.'
      }
    ]);
    expect(badlyTold(evaluation)).toEqual([]);
  });

  it('files that are used', async () => {
    const parts = (count: number): Record<string, string> => {
      const names = Array.from({ length: count }, (_, index) => `part-${index + 1}.paving`);
      const main = JOB + names.map(name => `use "${name}"\n`).join('');
      return { 'job.paving': main, ...Object.fromEntries(names.map(name => [name, '// nothing yet\n'])) };
    };
    // The job's own file counts.
    expect((await evaluateTexts(parts(MOST_FILES - 1))).findings).toEqual([]);
    const evaluation = await evaluateTexts(parts(MOST_FILES));
    expect(evaluation.findings.map(({ id, line, column, message }) => ({ id, line, column, message }))).toEqual([
      { id: 'use-too-many', line: MOST_FILES + 1, column: 5, message: 'More than 200 files are used.' }
    ]);
    expect(badlyTold(evaluation)).toEqual([]);
  });
});

describe('far past every limit', () => {
  const good = 'box sump in yard { circle 300 mm across, centre (1 m, 1 m) }\n';

  it.each([
    ['500 brackets', area('rectangle 3 x 4 m', '30 mm', `let a = ${brackets(500)}\n`)],
    ['a sum of 5,000 terms', area('rectangle 3 x 4 m', '30 mm', `let a = ${terms(5000)}\n`)],
    ['a number of 5,000 digits', area('rectangle 3 x 4 m', '30 mm', `let a = ${'9'.repeat(5000)} mm\n`)],
    ['5,000 braces', area('rectangle 3 x 4 m', '30 mm', `unit a ${'{'.repeat(5000)}\n`)],
    ['5,000 closing braces', area('rectangle 3 x 4 m', '30 mm', `existing wall\n${'}'.repeat(5000)}\n`)]
  ])('%s: one thing is lost, the others stand', { timeout: 300_000 }, async (_, text) => {
    const evaluation = await evaluateTexts({ 'job.paving': text + good });
    expect(evaluation.findings.filter(finding => finding.severity === 'error').length).toBeGreaterThan(0);
    expect(badlyTold(evaluation)).toEqual([]);
    expect(evaluation.numbers!.quantities.areas.map(one => [one.name, one.keptOut.length])).toEqual([['yard', 1]]);
  });
});
