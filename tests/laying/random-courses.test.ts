import { describe, expect, it } from 'vitest';
import { MOST_UNITS, rectangleLoop, regionArea, type Region } from '../../language/geometry/index.ts';
import { layRandomCourses, type RandomCourses } from '../../language/laying/bonds/random-courses.ts';
import { randomShare } from '../../language/laying/bonds/random-numbers.ts';
import { moved, movedRegion, seededNumbers } from '../geometry/random-outlines.ts';
import { laidBy, layToEnd, onPlan, randomRegions, wholeCount, wholePlaces } from './laid-on-plan.ts';

const origin = { x: 0, y: 0 };

const planks: RandomCourses = {
  origin,
  direction: 0,
  mirrored: false,
  units: [
    { unit: 'short', length: 0.4 },
    { unit: 'middle', length: 0.6 },
    { unit: 'long', length: 0.9 }
  ],
  width: 0.2,
  joint: 0.004,
  seed: 7,
  jointsApart: 0.1
};

function patio(width: number, depth: number, corner = origin): Region {
  return { outer: rectangleLoop(width, depth, corner, 0), holes: [] };
}

function somePlanks(next: () => number): RandomCourses {
  const joint = next() < 0.3 ? 0 : 0.01 * next();
  const shortest = 0.25 + 0.3 * next();
  return {
    origin: { x: 3 * next(), y: 3 * next() },
    direction: 6 * next(),
    mirrored: next() < 0.5,
    units: [
      { unit: 'short', length: shortest },
      { unit: 'middle', length: shortest * (1.2 + 0.4 * next()) },
      { unit: 'long', length: shortest * (1.7 + next()) }
    ],
    width: 0.1 + 0.2 * next(),
    joint,
    seed: Math.floor(1000 * next()),
    jointsApart: 0.45 * shortest * next()
  };
}

function shapesOf({ units, width }: RandomCourses) {
  return Object.fromEntries(
    units.map(({ unit, length }) => [unit, rectangleLoop(length, width, origin, 0).map(({ from }) => from)])
  );
}

/** Starts of the units in each course along it, by course number, of courses laid from the origin straight on. */
function startsByCourse(pattern: RandomCourses, region: Region): Map<number, number[]> {
  const laid = laidBy(layRandomCourses(region, pattern));
  const starts = new Map<number, number[]>();
  for (const { at } of [...wholePlaces(laid), ...laid.cuts]) {
    const course = Math.round(at.y / (pattern.width + pattern.joint));
    starts.set(course, [...(starts.get(course) ?? []), at.x]);
  }
  return starts;
}

describe('random courses', () => {
  it('one length, joints half of it apart: half bond and nothing else is left (by hand)', () => {
    // 1.2 by 0.3 m, units 300 by 100 mm without joints: the courses are 4 whole; half, 3 whole, half; 4 whole.
    const only = { ...planks, units: [{ unit: 'block', length: 0.3 }], width: 0.1, joint: 0, jointsApart: 0.15 };
    const laid = laidBy(layRandomCourses(patio(1.2, 0.3), only));
    expect(wholeCount(laid)).toBe(11);
    expect(laid.cuts).toHaveLength(2);
    expect(laid.cuts.map(({ pieces }) => pieces.map(({ area }) => area))).toEqual([
      [expect.closeTo(0.015, 12)],
      [expect.closeTo(0.015, 12)]
    ]);
    // The left half is the right end of its unit, and the other way round.
    expect(laid.cuts.map(({ pieces }) => Math.min(...(pieces[0]?.outline ?? []).map(({ from }) => from.x)))).toEqual([
      expect.closeTo(0.15, 12),
      0
    ]);
    expect(laid.unitArea).toBeCloseTo(0.36, 12);
    // Two course joints of 1.2 m; 3 + 4 + 3 cross joints of 0.1 m.
    expect(laid.jointLength).toBeCloseTo(2 * 1.2 + 10 * 0.1, 12);
  });

  it('the same with 5 mm joints: units and joints by hand', () => {
    // 1.22 m is 4 units and 4 joints; 0.315 m is 3 courses and 3 joints. Half of a pitch of 305 mm is 152.5 mm.
    const only = { ...planks, units: [{ unit: 'block', length: 0.3 }], width: 0.1, joint: 0.005, jointsApart: 0.1525 };
    const laid = laidBy(layRandomCourses(patio(1.22, 0.315), only));
    expect([wholeCount(laid), laid.cuts.length]).toEqual([11, 2]);
    // The half units: 147.5 mm on the left, after a joint; 152.5 mm on the right.
    expect(laid.unitArea).toBeCloseTo(0.1 * (11 * 0.3 + 0.1475 + 0.1525), 12);
    // Three course joints, and in each course four cross joints.
    expect(laid.jointArea).toBeCloseTo(3 * 1.22 * 0.005 + 12 * 0.1 * 0.005, 12);
    expect(laid.unitArea + laid.jointArea).toBeCloseTo(1.22 * 0.315, 12);
    // The middles of the same joints; cross joints from one course joint's middle to the next.
    expect(laid.jointLength).toBeCloseTo(3 * 1.22 + 4 * 0.315, 12);
  });

  it('cross joints of neighbours are never nearer than the limit, and lengths have equal shares', () => {
    for (const jointsApart of [0, 0.05, 0.1, 0.15, 0.2]) {
      const starts = startsByCourse({ ...planks, jointsApart }, patio(60, 8, { x: -25, y: -3 }));
      expect(starts.size).toBeGreaterThan(39);
      for (const [course, places] of starts) {
        const above = starts.get(course + 1) ?? [];
        const gaps = places.map(place => Math.min(...above.map(other => Math.abs(place - other))));
        expect(Math.min(...gaps)).toBeGreaterThan(jointsApart - 1e-9);
      }
    }
    const laid = laidBy(layRandomCourses(patio(60, 8), planks));
    const counts = planks.units.map(
      ({ unit }) => wholePlaces(laid).filter(place => place.unit === unit).length / wholeCount(laid)
    );
    for (const share of counts) expect(share).toBeCloseTo(1 / 3, 1);
  });

  it('the same seed gives the same courses, whatever the region; another seed gives others', () => {
    const wide = laidBy(layRandomCourses(patio(30, 6, { x: -10, y: -2 }), planks));
    expect(laidBy(layRandomCourses(patio(30, 6, { x: -10, y: -2 }), planks))).toEqual(wide);
    const narrow = laidBy(layRandomCourses(patio(7, 3, { x: 5, y: -1 }), planks));
    const key = ({ unit, at }: { unit: string; at: { x: number; y: number } }): string =>
      `${unit} ${at.x.toFixed(6)} ${at.y.toFixed(6)}`;
    const inWide = new Set(wholePlaces(wide).map(key));
    expect(
      wholePlaces(narrow)
        .map(key)
        .filter(place => !inWide.has(place))
    ).toEqual([]);
    const other = laidBy(layRandomCourses(patio(30, 6, { x: -10, y: -2 }), { ...planks, seed: 8 }));
    const shared = wholePlaces(other)
      .map(key)
      .filter(place => inWide.has(place)).length;
    expect(shared / wholePlaces(other).length).toBeLessThan(0.1);
  });

  it('the first course starts with a whole unit at the start', () => {
    const laid = laidBy(layRandomCourses(patio(5, 0.2), planks));
    expect(laid.wholes[0]?.first).toEqual({ x: 0, y: 0, direction: 0 });
  });

  it('units and joints make up the region to 1e-9, and no piece lies on another', () => {
    for (const { region, next } of randomRegions(60, 401)) {
      const pattern = somePlanks(next);
      const laid = laidBy(layRandomCourses(region, pattern, 0));
      const area = regionArea(region);
      expect((laid.unitArea + laid.jointArea) / area).toBeCloseTo(1, 9);
      const plan = onPlan(laid, shapesOf(pattern), region);
      expect(Math.abs(plan.oneByOne - laid.unitArea)).toBeLessThan(1e-5 * area);
      expect(Math.abs(plan.together - plan.oneByOne)).toBeLessThan(1e-6 * area);
      expect(Math.abs(plan.inside - plan.oneByOne)).toBeLessThan(1e-5 * area);
    }
  });

  it('moved, turned and mirrored jobs give equal counts', () => {
    for (const { region, next } of randomRegions(40, 402)) {
      const pattern = somePlanks(next);
      const motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 300 * next(), y: -200 * next() } };
      const there = laidBy(
        layRandomCourses(movedRegion(region, motion), {
          ...pattern,
          origin: moved(pattern.origin, motion),
          direction: motion.turn + (motion.mirrored ? -pattern.direction : pattern.direction),
          mirrored: motion.mirrored !== pattern.mirrored
        })
      );
      const here = laidBy(layRandomCourses(region, pattern));
      expect([wholeCount(there), there.cuts.length]).toEqual([wholeCount(here), here.cuts.length]);
      expect(there.jointArea).toBeCloseTo(here.jointArea, 8);
      expect(there.jointLength).toBeCloseTo(here.jointLength ?? NaN, 6);
    }
  });

  it('clips along the border only', () => {
    const coarse = laidBy(layRandomCourses(patio(60, 40), { ...planks, direction: 0.3 }));
    const shrunk = planks.units.map(({ unit, length }) => ({ unit, length: length / Math.sqrt(5) }));
    const joint = planks.joint / Math.sqrt(5);
    const fine = laidBy(
      layRandomCourses(patio(60, 40), {
        ...planks,
        direction: 0.3,
        units: shrunk,
        width: planks.width / Math.sqrt(5),
        joint,
        jointsApart: 0.04
      })
    );
    expect(wholeCount(fine) / wholeCount(coarse)).toBeGreaterThan(4.8);
    expect(fine.clipped / coarse.clipped).toBeLessThan(2.5);
    expect(laidBy(layRandomCourses(patio(20, 4.08), planks)).clipped).toBeLessThan(50);
  });

  it('says so where no order keeps the joints apart, and where there are too many units', () => {
    expect(layToEnd(layRandomCourses(patio(5, 5), { ...planks, jointsApart: 0.5 }))).toEqual({ noOrderFor: 1 });
    const tiny = { ...planks, units: [{ unit: 'speck', length: 0.001 }], width: 0.001, jointsApart: 0 };
    const first = layRandomCourses(patio(40, 30), tiny).next();
    expect(first.done && 'tooMany' in first.value && first.value.tooMany).toBeGreaterThan(MOST_UNITS);
    const far = layRandomCourses(patio(5, 5, { x: 0, y: 1e6 }), planks).next();
    expect(far.done && 'tooMany' in far.value).toBe(true);
    expect(laidBy(layRandomCourses(patio(5, 5), { ...planks, units: [] })).wholes).toEqual([]);
    expect(laidBy(layRandomCourses(patio(5, NaN), planks)).wholes).toEqual([]);
  });

  it('draws the numbers of mulberry32 in any order', () => {
    const next = seededNumbers(7);
    const inOrder = Array.from({ length: 50 }, next);
    expect(Array.from({ length: 50 }, (_, place) => randomShare(7, place))).toEqual(inOrder);
  });
});
