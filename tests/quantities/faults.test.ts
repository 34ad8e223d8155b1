import { describe, expect, it } from 'vitest';
import { LARGEST_OUTLINE } from '../../language/findings/outline-faults.ts';
import type { Area } from '../../language/job/job.ts';
import {
  area,
  type AreaWords,
  box,
  corners,
  HEIGHTS,
  job,
  layer,
  LEVEL_SITE,
  material,
  meeting,
  numbersOf,
  paving,
  rectangle,
  unit
} from './jobs.ts';

const sound = area(rectangle(2, 2, 50, 50), { name: 'sound' });

it.each([
  ['outline-crosses-itself', area(corners([0, 0], [2, 2], [2, 0], [0, 2]))],
  ['outline-without-area', area(corners([0, 0], [2, 0], [1, 0]))],
  ['out-of-range', area(rectangle(LARGEST_OUTLINE / 10_000, 10_001))],
  ['kept-out-outside-area', area(rectangle(3, 3), { keptOut: [box('lid', rectangle(1, 1, 2.5, 1))] })],
  [
    'kept-out-twice',
    area(rectangle(3, 3), { keptOut: [box('lid', rectangle(1, 1, 1, 1)), box('tree', rectangle(1, 1, 1.5, 1), 'pit')] })
  ],
  ['outline-without-area', area(rectangle(3, 3), { keptOut: [box('lid', corners([1, 1], [2, 1], [1.5, 1]))] })]
])('%s: the area has no numbers, the others keep theirs', (id, faulty) => {
  const { quantities, findings } = numbersOf(job([faulty, sound]));
  expect(findings.map(finding => finding.id)).toEqual([id]);
  expect(quantities.complete).toBe(false);
  expect(quantities.missing).toEqual(['area:a']);
  expect(quantities.areas).toEqual(numbersOf(job([sound])).quantities.areas);
});

it('an outline of the largest area has numbers', () => {
  expect(numbersOf(job([area(rectangle(LARGEST_OUTLINE / 10_000, 10_000))])).findings).toEqual([]);
});

it('areas-overlap: told once, the ground counted once; a shared side is no overlap', () => {
  const { quantities, findings } = numbersOf(job([area(rectangle(3, 3)), area(rectangle(3, 3, 2, 0), { name: 'b' })]));
  expect(findings.map(({ id, message }) => [id, message])).toEqual([
    ['areas-overlap', 'The areas a and b overlap by 3.00 m2.']
  ]);
  expect(quantities.totals.netArea).toBeCloseTo(15, 9);
  const beside = area(rectangle(3, 3, 3, 0), { name: 'b' }, [{}, {}, {}, { meets: meeting('a') }]);
  expect(numbersOf(job([area(rectangle(3, 3), {}, [{}, { meets: meeting('b') }]), beside])).findings).toEqual([]);
});

it('areas-overlap: an area within a pit of another is none', () => {
  const outer = area(rectangle(9, 9), { keptOut: [box('yard', rectangle(3, 3, 3, 3), 'pit')] });
  const all = Array.from({ length: 4 }, () => ({ meets: meeting('a') }));
  expect(numbersOf(job([outer, area(rectangle(3, 3, 3, 3), { name: 'b' }, all)])).findings).toEqual([]);
});

it('too-many-units: the rest of the area keeps its numbers', () => {
  const small = paving(unit(0.01, 0.01, 0.06), 0);
  const { quantities, findings } = numbersOf(job([area(rectangle(50, 50), { ...HEIGHTS, paving: small })]));
  expect(findings.map(finding => finding.id)).toEqual(['too-many-units']);
  expect(quantities.missing).toEqual(['area:a/laying']);
  expect(quantities.areas[0]!.netArea).toBeCloseTo(2500, 9);
  expect(quantities.areas[0]).not.toHaveProperty('laying');
  expect(quantities.areas[0]).not.toHaveProperty('joints');
});

it('edge-not-said; a material without densities has no mass and no loose volume', () => {
  const silent = area(rectangle(2, 2), {
    ...HEIGHTS,
    layers: [layer('base', 0.1, { material: material('rubble', 'base') })]
  });
  const [first, ...others] = silent.edges;
  const { meets: _, ...unsaid } = first!;
  const { quantities, findings } = numbersOf(job([{ ...silent, edges: [unsaid, ...others] }]));
  expect(findings.map(({ id, message }) => [id, message])).toEqual([
    [
      'edge-not-said',
      'Nothing is said of side side 1 of a: say what stands there. Until then no base is taken past it.'
    ]
  ]);
  expect(quantities.areas[0]!.edges[0]!.overhang).toBe(0);
  expect(quantities.areas[0]!.layers[0]).not.toHaveProperty('mass');
  expect(quantities.areas[0]!.layers[0]).not.toHaveProperty('looseVolume');
});

describe('heights that are not said', () => {
  const dug = (name: string, more: AreaWords = {}) =>
    area(rectangle(2, 2, name.charCodeAt(0) * 10, 0), { name, layers: [layer('base', 0.1)], ...more });
  const told = (areas: readonly Area[]) => numbersOf(job(areas)).findings.map(({ id, target }) => [id, target]);

  it('a note for each area without a finish, one for the ground of all', () => {
    expect(told([dug('a'), dug('b')])).toEqual([
      ['finish-not-said', 'area:a'],
      ['finish-not-said', 'area:b'],
      ['ground-not-said', 'site']
    ]);
    expect(told([dug('a', HEIGHTS), dug('b', { site: LEVEL_SITE })])).toEqual([['finish-not-said', 'area:b']]);
    expect(told([dug('a', HEIGHTS), dug('b', HEIGHTS)])).toEqual([]);
  });

  it('nothing where nothing is dug', () => {
    expect(told([area(rectangle(2, 2))])).toEqual([]);
  });
});

it('an outline as small as a coin is told without a word of boxes', () => {
  const { findings } = numbersOf(job([area(rectangle(0.01, 0.01), { name: 'speck' })]));
  expect(findings.map(({ id, message }) => [id, message])).toEqual([
    ['outline-without-area', 'The outline of speck encloses next to nothing.']
  ]);
});

it('a box that takes up all of its area leaves nothing to pave', () => {
  const full = area(rectangle(2, 2), { keptOut: [box('tank', rectangle(2, 2))] });
  const { quantities, findings } = numbersOf(job([full]));
  expect(findings.map(({ id }) => id)).toContain('outline-without-area');
  expect(quantities.areas).toEqual([]);
  expect(quantities.complete).toBe(false);
});
