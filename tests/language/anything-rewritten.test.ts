// Rewrites and tables on texts that nobody would write: nothing throws, and nothing grows with the square of a text.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, test, vi } from 'vitest';
import { pointsFromTable } from '../../language/editing/paste-points.ts';
import { applyChanges } from '../../language/editing/apply-changes.ts';
import { rewritesAt } from '../../language/editing/rewrites/rewrites-at.ts';
import { drain, Paving } from '../../language/paving.ts';
import { textOf } from '../samples/samples.ts';
import { inMemory } from './in-memory.ts';

const SAMPLES = ['terrace.paving', 'drive.paving', 'path.paving', 'first-job.paving'].map(textOf);
const SCRAPS = [
  '{',
  '}',
  '(',
  ')',
  '"',
  ',',
  ' x ',
  ' to ',
  '-',
  '1/0',
  ' in',
  '½',
  "'",
  '\n',
  ' m',
  '//',
  'let a = a\n'
];

test('wherever the cursor stands in a damaged text: edits lie in it, apart, and make the text that is told', () => {
  const paving = new Paving(inMemory({}));
  let made = 0;
  const damage = fc.record({ at: fc.nat(4_000), gone: fc.nat(20), scrap: fc.constantFrom(...SCRAPS) });
  fc.assert(
    fc.property(
      fc.constantFrom(...SAMPLES),
      fc.array(damage, { minLength: 1, maxLength: 3 }),
      fc.array(fc.record({ at: fc.nat(4_000), more: fc.nat(40) }), { minLength: 5, maxLength: 5 }),
      (sample, damages, cursors) => {
        let text = sample;
        for (const { at, gone, scrap } of damages)
          text = text.slice(0, at % text.length) + scrap + text.slice((at % text.length) + gone);
        paving.setText('job.paving', text);
        const evaluation = drain(paving.evaluate('job.paving', 'findings'));
        for (const { at, more } of cursors) {
          const start = at % (text.length + 1);
          const end = more % 2 === 0 ? start : Math.min(text.length, start + more);
          for (const rewrite of rewritesAt(paving.look('job.paving')!, evaluation, start, end)) {
            made++;
            expect(applyChanges(text, rewrite.edits)).toBe(rewrite.text);
            rewrite.edits.slice(1).forEach(({ place }, index) => {
              const before = rewrite.edits[index]!.place;
              const isApart = place.line > before.endLine || place.column >= before.endColumn;
              expect(isApart && place.line >= before.endLine).toBe(true);
            });
          }
        }
      }
    ),
    { seed: 20260419, numRuns: 300 }
  );
  expect(made).toBeGreaterThan(100);
});

/** A yard with many lets, areas and comments; the cursor is in the last area. */
function large(count: number): string {
  const part = (at: number): string =>
    `// So.\nlet a${at} = 3 m + 3 m // so\narea b${at} {\n  outline rectangle a${at} x 3 m\n  base type-1 150 mm\n}\n`;
  return `job "Yard" { rules britain }\n${Array.from({ length: count }, (_, at) => part(at)).join('')}`;
}

/** How often a word, comment or statement was looked at, or a number worked with, to find the rewrites at a place. */
function workAt(text: string, words: string): { titles: string[]; work: number } {
  const paving = new Paving(inMemory({}));
  paving.setText('job.paving', text);
  const look = paving.look('job.paving')!;
  let work = 0;
  const counted = <T extends object>(list: T): T =>
    new Proxy(list, {
      get: (target, key, receiver): unknown => {
        if (typeof key === 'string' && /^\d/.test(key)) work++;
        return Reflect.get(target, key, receiver);
      }
    });
  const { parsed } = look.text;
  const { tokens, comments, statements, chunks } = parsed;
  Object.assign(parsed, {
    tokens: counted(tokens),
    comments: counted(comments),
    statements: counted(statements),
    chunks: counted(chunks)
  });
  const spies = (['mul', 'equals', 'compare'] as const).map(name => vi.spyOn(Fraction.prototype, name));
  const at = text.lastIndexOf(words);
  const titles = rewritesAt(look, undefined, at, at).map(({ title }) => title);
  work += spies.reduce((sum, spy) => sum + spy.mock.calls.length, 0);
  vi.restoreAllMocks();
  return { titles, work };
}

test.each([
  ['3 m + 3 m', 'Name 3 m with let, here'],
  ['a399 x', 'Write 3 m + 3 m here'],
  ['rectangle', 'Write the rectangle as four points'],
  ['type-1', 'Declare type-1 here'],
  ['150 mm', 'Write 5 7/8 in']
])('at %s twice the text is no more than twice the work', (words, title) => {
  const [half, whole] = [workAt(large(200), words.replace('399', '199')), workAt(large(400), words)];
  expect(whole.titles.join('\n')).toContain(title);
  expect(half.titles.length).toBe(whole.titles.length);
  expect(half.work).toBeGreaterThan(0);
  expect(whole.work / half.work).toBeLessThan(2.2);
});

test('any clipboard is read or refused', () => {
  const paving = new Paving(inMemory({}));
  paving.setText('job.paving', SAMPLES[0]!);
  const look = paving.look('job.paving')!;
  const at = { start: 0, end: 0 };
  const cell = fc.oneof(
    fc.constantFrom(
      'A',
      '',
      ' ',
      '1',
      '-2.5',
      '3,5',
      '1,234',
      '12\' 6 1/2"',
      '3 m',
      '1/0',
      '½',
      '€',
      '\u00a0',
      'x (m)'
    ),
    fc.string({ maxLength: 6 })
  );
  const table = fc
    .tuple(fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 6 }), fc.constantFrom('\t', ';', ',', ' ', '  '))
    .map(([rows, parted]) => rows.map(row => row.join(parted)).join('\n'));
  let read = 0;
  fc.assert(
    fc.property(table, text => {
      const found = pointsFromTable(text, look, at, 'metric');
      if ('problem' in found) {
        expect(found.problem).not.toBe('');
        return;
      }
      read++;
      for (const { text: written } of found.choices) {
        paving.setText('pasted.paving', `job "Points" { rules britain }\n${written}\n`);
        const { findings } = drain(paving.evaluate('pasted.paving', 'findings'))!;
        expect(findings.filter(({ id }) => id !== 'never-used')).toEqual([]);
      }
    }),
    { seed: 20260420, numRuns: 4_000 }
  );
  expect(read).toBeGreaterThan(20);
});

test.each([
  ['digits', '1'.repeat(200_000)],
  ['spaces', `1${' '.repeat(199_998)}1`],
  ['commas', ','.repeat(200_000)],
  ['points and commas', '1.,'.repeat(60_000)],
  ['quotes', "1'".repeat(100_000)],
  ['one name on each line', 'A 1 2\n'.repeat(2_000)]
])('a clipboard full of %s comes to an end', (_, text) => {
  const paving = new Paving(inMemory({}));
  paving.setText('job.paving', '');
  const found = pointsFromTable(text, paving.look('job.paving')!, { start: 0, end: 0 }, undefined);
  expect('problem' in found || found.choices.length > 0).toBe(true);
});
