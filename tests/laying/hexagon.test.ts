import { describe, expect, it } from 'vitest';
import { MOST_UNITS, rectangleLoop, regionArea, type Region } from '../../language/geometry/index.ts';
import { layHexagons, type Hexagons } from '../../language/laying/bonds/hexagon.ts';
import { loopOf } from '../geometry/feet.ts';
import { moved, movedRegion } from '../geometry/random-outlines.ts';
import { laidBy, onPlan, randomRegions, wholeCount, wholePlaces } from './laid-on-plan.ts';

const origin = { x: 0, y: 0 };
const ROOT_3 = Math.sqrt(3);

/** Across corners 200 mm: sides of 100 mm, area 3 × root 3 / 2 × 0.1². */
const hexagon: Hexagons = {
  unit: 'hex',
  origin,
  direction: 0,
  mirrored: false,
  acrossCorners: 0.2,
  acrossFlats: 0.1 * ROOT_3,
  joint: 0
};
const HEXAGON_AREA = (3 * ROOT_3) / 200;

function patio(width: number, depth: number, corner = origin): Region {
  return { outer: rectangleLoop(width, depth, corner, 0), holes: [] };
}

function someHexagons(next: () => number): Hexagons {
  const acrossCorners = 0.2 + 0.3 * next();
  return {
    ...hexagon,
    origin: { x: 3 * next(), y: 3 * next() },
    direction: 6 * next(),
    mirrored: next() < 0.5,
    acrossCorners,
    // As measured: not quite regular.
    acrossFlats: (acrossCorners * ROOT_3 * (0.98 + 0.04 * next())) / 2,
    joint: next() < 0.3 ? 0 : 0.02 * next()
  };
}

function shapeOf({ acrossCorners: long, acrossFlats: wide }: Hexagons) {
  const corners = [
    [long / 4, 0],
    [(3 * long) / 4, 0],
    [long, wide / 2],
    [(3 * long) / 4, wide],
    [long / 4, wide],
    [0, wide / 2]
  ] as const;
  return { hex: loopOf(...corners).map(({ from }) => from) };
}

describe('hexagons', () => {
  it('two units and the notches between them (by hand)', () => {
    // A box of two units side by side, 2 × 173.2 by 200 mm: 2 whole. Below and above the middle each a unit of the next
    // course pokes in: a triangle 173.2 mm wide and 50 mm high. At the four corners half of one: 86.6 by 50 mm.
    const laid = laidBy(layHexagons(patio(0.2 * ROOT_3, 0.2), hexagon));
    expect(wholeCount(laid)).toBe(2);
    const areas = laid.cuts.map(({ pieces }) => pieces[0]?.area ?? NaN).sort((a, b) => a - b);
    const half = (0.05 * ROOT_3 * 0.05) / 2;
    expect(areas).toEqual([half, half, half, half, 2 * half, 2 * half].map(area => expect.closeTo(area, 12)));
    expect(laid.unitArea).toBeCloseTo(0.04 * ROOT_3, 12);
    expect(laid.jointArea).toBe(0);
  });

  it('a unit sawn through its corners is a trapezium in its own frame (by hand)', () => {
    // The right half of the first unit along its courses is the lower half across its own width: own y runs left.
    const laid = laidBy(
      layHexagons(patio(0.05 * ROOT_3, 0.2, { x: 0.05 * ROOT_3, y: 0 }), { ...hexagon, joint: 0.05 })
    );
    const own = laid.cuts.find(({ at }) => Math.abs(at.y) < 1e-9 && Math.abs(at.x - 0.1 * ROOT_3) < 1e-9);
    const corners = (own?.pieces[0]?.outline ?? []).map(({ from }) => [from.x, from.y]);
    expect(own?.at.direction).toBeCloseTo(Math.PI / 2, 12);
    for (const corner of [
      [0, 0.05 * ROOT_3],
      [0.05, 0],
      [0.15, 0],
      [0.2, 0.05 * ROOT_3]
    ]) {
      expect(corners).toContainEqual(corner.map(value => expect.closeTo(value, 9)));
    }
    expect(corners).toHaveLength(4);
    expect(own?.pieces[0]?.area).toBeCloseTo(HEXAGON_AREA / 2, 12);
  });

  it('10 mm joints: one cell of the pattern, joints by hand', () => {
    // A parallelogram from unit to unit: pitch 183.2 mm along, 150 + 10 × root 3 / 2 = 158.66 mm across. It holds what
    // goes with one unit: three joints 100 by 10 mm and two equilateral triangles 10 mm to a side.
    const along = 0.1 * ROOT_3 + 0.01;
    const across = 0.15 + 0.005 * ROOT_3;
    const cell = loopOf([0, 0], [along, 0], [1.5 * along, across], [along / 2, across]);
    const laid = laidBy(
      layHexagons({ outer: cell, holes: [] }, { ...hexagon, origin: { x: 0.31, y: -0.27 }, joint: 0.01 })
    );
    expect(laid.jointArea).toBeCloseTo(3 * 0.1 * 0.01 + (2 * ROOT_3 * 0.01 ** 2) / 4, 12);
    expect(laid.unitArea).toBeCloseTo(HEXAGON_AREA, 12);
  });

  it('rows stand half a unit on, and all units lie one way', () => {
    const laid = laidBy(layHexagons(patio(3, 3), hexagon));
    const places = wholePlaces(laid).map(({ at }) => at);
    expect(new Set(places.map(({ direction }) => direction))).toEqual(new Set([Math.PI / 2]));
    // Own nought is the lower right corner of a unit's box as seen along the courses.
    const rows = places.map(({ x, y }) => [Math.round(y / 0.15) % 2, (x / (0.1 * ROOT_3)) % 1] as const);
    for (const [row, share] of rows)
      expect(row === 0 ? Math.cos(2 * Math.PI * share) : -Math.cos(2 * Math.PI * share)).toBeCloseTo(1, 6);
  });

  it('units and joints make up the region to 1e-9, and no piece lies on another', () => {
    for (const { region, next } of randomRegions(60, 411)) {
      const pattern = someHexagons(next);
      const laid = laidBy(layHexagons(region, pattern, 0));
      const area = regionArea(region);
      expect((laid.unitArea + laid.jointArea) / area).toBeCloseTo(1, 9);
      const plan = onPlan(laid, shapeOf(pattern), region);
      expect(Math.abs(plan.oneByOne - laid.unitArea)).toBeLessThan(1e-5 * area);
      expect(Math.abs(plan.together - plan.oneByOne)).toBeLessThan(1e-6 * area);
      expect(Math.abs(plan.inside - plan.oneByOne)).toBeLessThan(1e-5 * area);
    }
  });

  it('moved, turned and mirrored jobs give equal counts', () => {
    for (const { region, next } of randomRegions(40, 412)) {
      const pattern = someHexagons(next);
      const motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 300 * next(), y: -200 * next() } };
      const there = laidBy(
        layHexagons(movedRegion(region, motion), {
          ...pattern,
          origin: moved(pattern.origin, motion),
          direction: motion.turn + (motion.mirrored ? -pattern.direction : pattern.direction),
          mirrored: motion.mirrored !== pattern.mirrored
        })
      );
      const here = laidBy(layHexagons(region, pattern));
      expect([wholeCount(there), there.cuts.length]).toEqual([wholeCount(here), here.cuts.length]);
      expect(there.jointArea).toBeCloseTo(here.jointArea, 8);
    }
  });

  it('a miss of half a millimetre is laid whole, a piece as narrow is not laid', () => {
    // Standing on a flat side: the courses run up the plan. The region's left edge takes a slip off the first course.
    const upright = { ...hexagon, direction: Math.PI / 2, origin: { x: 0.2, y: 0 } };
    const one = (width: number): readonly [number, number] => {
      const laid = laidBy(
        layHexagons(patio(width, 0.1 * ROOT_3, { x: 0.2 - width, y: 0 }), { ...upright, joint: 0.3 })
      );
      return [wholeCount(laid), laid.cuts.length];
    };
    expect(one(0.2)).toEqual([1, 0]);
    expect(one(0.1995)).toEqual([1, 0]);
    expect(one(0.1994)).toEqual([0, 1]);
    expect(one(0.0005)).toEqual([0, 0]);
  });

  it('clips along the border only, and stops when there are too many', () => {
    const coarse = laidBy(
      layHexagons(patio(40, 30), { ...hexagon, direction: 0.3, acrossCorners: 0.4, acrossFlats: 0.2 * ROOT_3 })
    );
    const shrink = 1 / Math.sqrt(5);
    const fine = laidBy(
      layHexagons(patio(40, 30), {
        ...hexagon,
        direction: 0.3,
        acrossCorners: 0.4 * shrink,
        acrossFlats: 0.2 * ROOT_3 * shrink
      })
    );
    expect(wholeCount(fine) / wholeCount(coarse)).toBeGreaterThan(4.8);
    expect(fine.clipped / coarse.clipped).toBeLessThan(2.5);
    const first = layHexagons(patio(40, 30), { ...hexagon, acrossCorners: 0.002, acrossFlats: 0.001 * ROOT_3 }).next();
    expect(first.done && 'tooMany' in first.value && first.value.tooMany).toBeGreaterThan(MOST_UNITS);
    expect(laidBy(layHexagons(patio(40, 30), { ...hexagon, acrossFlats: 0 })).unitArea).toBe(0);
  });
});
