import { expect, test } from 'vitest';
import type { Finding } from '../../language/findings/finding.ts';
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
  ['12 ft.-6 in.', 150 * INCH],
  ['12ft.-6in.', 150 * INCH],
  ['12-ft.-6-in.', 150 * INCH],
  ['12’–6”', 150 * INCH],
  ['−2 m', -2],
  ['(2 + 3) ft', 60 * INCH],
  ['2 * 3 ft - 1 ft', 60 * INCH],
  ['7 ft / 2', 42 * INCH]
];

/** A length as a point has it, m. */
async function read(written: string): Promise<{ x: number | undefined; findings: readonly Finding[] }> {
  const { job, findings } = await evaluated(`job "Tape" { rules britain }\npoint A at (${written}, 0)\n`);
  return { x: job!.points[0]?.x, findings };
}

test.each(SPELLINGS)('%s', async (written, metres) => {
  const { x, findings } = await read(written);
  expect(findings.map(({ id }) => id)).toEqual(['never-used']);
  expect(x).toBeCloseTo(metres, 12);
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
  const { x, findings } = await read(written);
  expect(findings.map(finding => finding.id)).toContain(id);
  expect(x).toBeUndefined();
});

test.each([
  ['12ft.6in.', 'the point could end a word or begin a decimal'],
  ['3m.50cm', 'the point could end a word or begin a decimal'],
  ['12 ft -6 in', 'feet and inches, or feet less inches'],
  ["1'000 mm", 'Feet or inches and metres stand in one quantity']
])('%s could be read in two ways, and is refused', async (written, message) => {
  const { x, findings } = await read(written);
  expect(findings.map(finding => finding.message).join('\n')).toContain(message);
  expect(x).toBeUndefined();
});
