// What differs between two texts of a job, in the few words that stand above it.
import { expect, test } from 'vitest';
import { comparisonSummary } from '../../language/views/comparison/comparison-summary.ts';
import { compared } from './compared.ts';

// 8 by 6 flags of 495 mm with joints of 5 mm fill 4 x 3 m. The base reaches the walls: 12 m2 by 100 mm by 2 t/m3 are 2.4 t.
const JOB = `job "Yard" { rules britain, currency GBP, tax 20 % }
site { benchmark sill, ground level with sill }
unit flag { size 495 x 495 x 50 mm }
material type-1 { role base, compacted 2 t/m3 }
price flag { pack of 1 for 10 GBP }
area patio {
  outline rectangle 4 x 3 m
  traffic foot
  finish  level with sill
  paving  flag in stack-bond, joints 5 mm
  bed     sharp-sand 40 mm
  base    type-1 100 mm
  edges   { all round meets house-wall }
}
`;

async function summary(before: string, after: string, text = JOB): Promise<string | undefined> {
  const newer = text.replace(before, () => after);
  expect(newer).not.toBe(text);
  return comparisonSummary(await compared({ 'job.paving': text }, { 'job.paving': newer }), 'metric');
}

test('tells what there is more of, and less', async () => {
  // 24 flags at 10.00 with a fifth of tax.
  expect(await summary('4 x 3 m', '2 x 3 m')).toMatch(/^−6\.00 m2, 24 units fewer, −288\.00 GBP\b/);
  expect(await summary('base    type-1 100 mm', 'base    type-1 150 mm')).toMatch(/^\+1\.20 t of stone\b/);
});

test('leaves out what weighs least where more differs than is read at a glance', async () => {
  const told = await summary('rectangle 4 x 3 m', 'rectangle 4.2 x 3.1 m');
  expect(told).toMatch(/^\+1\.02 m2, \d+ cuts more, \+[0-9.]+ GBP, /);
  expect(told!.split(', ')).toHaveLength(4);
});

test('tells of findings', async () => {
  expect(await summary('base    type-1 100 mm', 'base    type-1 90 mm')).toBe('−0.24 t of stone, 1 finding appeared');
});

test('tells of edits that move none of these numbers, and of names', async () => {
  expect(await summary('"Yard"', '"The yard"')).toBe('1 edit');
  expect(await summary('area patio', 'area terrace')).toBe('1 thing called otherwise');
});

test('tells nothing where nothing differs in meaning', async () => {
  expect(await summary('area patio {', '// here we sit\narea patio {')).toBeUndefined();
  expect(await summary('100 mm', '10 cm')).toBeUndefined();
});
