import { expect, test } from 'vitest';
import { evaluated } from './in-memory.ts';

const SQUARE_FOOT = 0.3048 ** 2;
const CUBIC_FOOT = 0.3048 ** 3;
const SHORT_TON = 2000 * 0.45359237;

const TERRACE = `job "Plum tree terrace" {
  rules    north-america
  show     feet-and-inches
  currency USD
}

site {
  soil      clay, poorly-drained
  topsoil   5 in
  winters   freeze
  benchmark door-sill
  ground    3 in below door-sill
}

unit slab-16 { size 15 7/8 x 15 7/8 x 2 in, weight 42 lb }

material washed-sand   { role bed }
material crushed-stone { role base, compacted 140 lb per cu ft, loose 112 lb per cu ft }
material plain-sand    { role joint-filler, unbound }

point A at (0, 0)
point B at (18 ft 6 in, 0)
point C at (18' 5 7/16", 12 ft 7 7/8 in)
point D at (-2-3/8 in, 12'-8 5/8")

existing old-walk

area terrace {
  outline    A to B to C to D
  traffic    foot
  finish     2 1/2 in below door-sill
  paving     slab-16 in running-bond, joints 1/8 in
  inboard-cuts 2 in
  bed        washed-sand 1 in
  base       crushed-stone 6 in, 6 in past the edging
  geotextile separation-cloth
  joints     filled with plain-sand
  edges {
    A to B       meets house-wall
    B to C to D  meets lawn, edging spiked-strip set after laying
    D to A       meets old-walk, flush
  }
}

box valves in terrace {
  rectangle 20 x 14 in, centre (6 ft 2 in, 3 ft 1 in)
}
`;

// Expected figures: worked by hand for the same terrace (a worked example of this project's own).
test('the terrace, from its text to its numbers', async () => {
  const { numbers, findings, job } = await evaluated(TERRACE);
  expect(findings).toEqual([]);
  expect(job!.system).toBe('imperial');
  const area = numbers!.quantities.areas[0]!;
  const [bed, base] = area.layers;
  expect(area.grossArea / SQUARE_FOOT).toBeCloseTo(235.67, 2);
  expect(area.netArea / SQUARE_FOOT).toBeCloseTo(233.73, 2);
  expect(base!.area / SQUARE_FOOT).toBeCloseTo(249.63, 2);
  expect(base!.compactedVolume / CUBIC_FOOT / 27).toBeCloseTo(4.62, 2);
  expect(base!.mass! / SHORT_TON).toBeCloseTo(8.74, 2);
  expect(base!.looseVolume! / CUBIC_FOOT / 27).toBeCloseTo(5.78, 2);
  expect(bed!.compactedVolume / CUBIC_FOOT).toBeCloseTo(19.48, 2);
  // 31 ft 3 11/16 in, to the nearest sixteenth.
  expect(Math.round((area.edging[0]!.length / 0.0254) * 16)).toBe((31 * 12 + 3) * 16 + 11);
  expect(area.finish).toEqual({ at: 'door-sill', height: -2.5 * 0.0254 });
  expect(area.edges.map(({ name, meets, overhang }) => [name, meets, Math.round(overhang / 0.0254)])).toEqual([
    ['A to B', 'house-wall', 0],
    ['B to C', 'lawn', 6],
    ['C to D', 'lawn', 6],
    ['D to A', 'old-walk', 0]
  ]);
});

test('P-06, P-07: half bond and stack bond on a rectangle from its corner (exact arithmetic)', async () => {
  const court = (size: string, bond: string): string => `job "Court" { rules britain }
unit block { size 200 x 100 x 60 mm }
area court {
  outline rectangle ${size}
  traffic foot
  paving block in ${bond}, joints 0
  base type-1 150 mm
  edges { all round meets house-wall }
}`;
  const half = (await evaluated(court('4.0 x 3.0 m', 'running-bond'))).numbers!.quantities.areas[0]!.laying![0]!;
  expect(half).toMatchObject({ whole: 585, cut: 30 });
  expect(half.unitArea).toBeCloseTo(12, 9);
  const stack = (await evaluated(court('4.05 x 3.0 m', 'stack-bond'))).numbers!.quantities.areas[0]!.laying![0]!;
  expect(stack).toMatchObject({ whole: 600, cut: 30 });
});

test('a lone sub-base counts as the base, and says so with a safe fix', async () => {
  const { numbers, findings } = await evaluated(TERRACE.replace('  base       crushed', '  sub-base   crushed'));
  expect(numbers!.quantities.areas[0]!.layers.map(layer => layer.role)).toEqual(['bed', 'base']);
  expect(findings).toMatchObject([{ id: 'sub-base-alone', severity: 'note', fixes: [{ safe: true }] }]);
});

test('neighbours in two files meet, whichever of them uses the other', async () => {
  const east = `area east {
  outline rectangle 4 x 3 m, corner (4, 0) m
  traffic foot
  finish level with sill
  paving as west
  base as west
  edges { left meets west
    the rest meets house-wall }
}`;
  const job = `job "Two courts" { rules britain }
use "east.paving"
site { benchmark sill, ground level with sill }
unit block { size 197 x 97 x 60 mm }
area west {
  outline rectangle 4 x 3 m
  traffic foot
  finish level with sill
  paving block in stack-bond
  base type-1 150 mm
  edges { right meets east
    the rest meets house-wall }
}`;
  const { findings } = await evaluated(job, { 'east.paving': east });
  // East sees only its own file: it may meet west, but be like nothing of it.
  expect([...new Set(findings.map(finding => `${finding.file} ${finding.id}`))]).toEqual(['east.paving unknown-name']);
  const inOne = await evaluated(job.replace('use "east.paving"', east));
  expect(inOne.findings).toEqual([]);
  expect(inOne.numbers!.quantities.totals.netArea).toBeCloseTo(24, 9);
});
