// Limits of published texts, and of common practice where it says so, run through jobs.
import { describe, expect, test } from 'vitest';
import { evaluated } from '../language/in-memory.ts';

const PATIO = (finish: string, more = ''): string => `job "Patio" { rules north-america }
site { soil sand, winters mild, benchmark sill }
unit block-8 { size 7 7/8 x 3 7/8 x 2 3/8 in }
unit slab-12 {
  size 12 x 12 x 2 in
  set by hand
}
point A at (0, 0) ft
point B at (12, 0) ft
point C at (12, 10) ft
point D at (0, 10) ft
area patio {
  outline A to B to C to D
  traffic foot
  finish  ${finish}
${more}
  base    crushed-stone 6 in, 6 in past the edging
  edges {
    A to B   meets house-wall
    the rest meets lawn, edging spiked-strip
  }
}
`;
const PAVED = '  paving  block-8 in running-bond, joints 1/8 in\n  bed     washed-sand 1 in';
const log = (entry: string): string => `log {\n  2026-05-09 ${entry}\n}\n`;

async function told(text: string, rule: string): Promise<string[]> {
  const { findings } = await evaluated(text);
  expect(findings.filter(({ severity, family }) => severity === 'error' && family === 'fault')).toEqual([]);
  return findings.filter(({ id }) => id === rule).map(({ message }) => message);
}

// O-25: IRC R401.3 (2006 text, as quoted): hard surfaces within 10 ft of a foundation fall 2 %.
describe('a patio that reaches 10 ft out from the house', () => {
  const corners = (drop: string): string =>
    `A 3 in below sill  B 3 in below sill  C ${drop} below sill  D ${drop} below sill`;

  test('drops 2.4 in at least', async () => {
    expect(await told(PATIO(corners('5.4 in'), PAVED), 'fall-too-flat')).toEqual([]);
  });

  test('and is told of where it drops less', async () => {
    const [message, ...others] = await told(PATIO(corners('5.375 in'), PAVED), 'fall-too-flat');
    expect(others).toEqual([]);
    expect(message).toContain('2 % at least within 10 ft (3 m) of a house');
  });
});

// O-26: Brick Industry Association, Technical Note 14A: 1/4 in per ft is 2.083 %.
test('a quarter of an inch in a foot is 2.083 %', async () => {
  const text = PATIO('3 in below sill along A to B, falling 1/4 in per ft away from A to B', PAVED);
  const { numbers } = await evaluated(text);
  expect(numbers!.quantities.areas[0]!.finish!.fall! * 100).toBeCloseTo(2.0833, 3);
  expect(await told(text, 'fall-too-flat')).toEqual([]);
});

// O-21: UK national building specification, clause 635 to BS 7533: 10 mm under a straightedge of 3 m.
test.each([
  ['11 mm', 1],
  ['10 mm', 0]
])('a gap of %s under a straightedge of 3 m', async (gap, count) => {
  const text = `job "Path" { rules britain }
site { soil sand, benchmark sill }
area path {
  outline rectangle 1 x 6 m
  traffic foot
  finish  75 mm below sill
}
${log(`measured gap ${gap} under 3 m straightedge`)}`;
  expect(await told(text, 'gap-under-straightedge')).toHaveLength(count);
});

// P-02: common practice, no source. Under units set by hand the bed may be left up to 1/2 in high.
describe('the bed before units are set by hand', () => {
  const byHand = '  paving  slab-12 in running-bond, joints 1/8 in\n  bed     washed-sand 1 in';
  // The design of the bed at A: 3 in and the slab of 2 in below the sill.
  test.each([
    ['4 1/2 in', undefined],
    ['5 in', undefined],
    ['4 3/8 in', 'measured 5/8 in high'],
    ['5 1/8 in', 'measured 1/8 in low']
  ])('at %s', async (height, saying) => {
    const finish = '3 in below sill along A to B, falling 1/4 in per ft away from A to B';
    const found = await told(PATIO(finish, byHand) + log(`measured bed at A ${height} below sill`), 'bed-off-design');
    if (saying === undefined) expect(found).toEqual([]);
    else expect(found.join()).toContain(saying);
  });
});

// P-02: the bed of units that are vibrated stands as high as it settles, within 1/8 in.
test.each([
  ['5 1/8 in', 0],
  ['5 in', 0],
  ['4 15/16 in', 1],
  ['5 5/16 in', 1]
])('the bed of vibrated units at %s', async (height, count) => {
  const bed = '  paving  block-8 in running-bond, joints 1/8 in\n  bed     washed-sand 1 in, settles 1/4 in';
  const finish = '3 in below sill along A to B, falling 1/4 in per ft away from A to B';
  const found = await told(PATIO(finish, bed) + log(`measured bed at A ${height} below sill`), 'bed-off-design');
  expect(found).toHaveLength(count);
});
