import { expect, test } from 'vitest';
import { evaluated } from './in-memory.ts';

const INCH = 0.0254;

/** As scribbled, and in metres. */
const SPELLINGS: readonly [string, number][] = [
  [`12' 6 1/2"`, 150.5 * INCH],
  [`12'-6 1/2"`, 150.5 * INCH],
  ['12ft 6in', 150 * INCH],
  ['12ft6in', 150 * INCH],
  ['12ft-6in', 150 * INCH],
  ['12 ft - 6 in', 138 * INCH],
  ['6-in', 6 * INCH],
  ['6 in.', 6 * INCH],
  [`2''`, 2 * INCH],
  ['2-3/8 in', 2.375 * INCH],
  ['2 3/8"', 2.375 * INCH],
  ['5½ in', 5.5 * INCH],
  ['½ in', 0.5 * INCH],
  ['.5 in', 0.5 * INCH],
  ['1/3 ft', 4 * INCH],
  ['3.25m', 3.25],
  ['150mm', 0.15],
  ['−2 m', -2],
  ['(2 + 3) ft', 60 * INCH],
  ['2 * 3 ft - 1 ft', 60 * INCH],
  ['7 ft / 2', 42 * INCH]
];

test.each(SPELLINGS)('%s', async (written, metres) => {
  const { job, findings } = await evaluated(`job "Tape" { rules britain }\npoint A at (${written}, 0)\n`);
  expect(findings.filter(({ id }) => id !== 'never-used')).toEqual([]);
  expect(job!.points[0]!.x).toBeCloseTo(metres, 12);
});

test.each([
  ['20 ton', 'ton-alone'],
  ['2,5 m', 'comma-in-number'],
  ['5', 'measure-missing'],
  ['3 sq ft', 'wrong-kind'],
  ['3 ft + 2 lb', 'kinds-mixed'],
  ['3/0 in', 'division-by-nought'],
  ['6 inchs', 'unknown-measure']
])('%s is no silent number', async (written, id) => {
  const { job, findings } = await evaluated(`job "Tape" { rules britain }\npoint A at (${written}, 0)\n`);
  expect(findings.map(finding => finding.id)).toContain(id);
  expect(job!.points).toEqual([]);
});
