import { describe, expect, it } from 'vitest';
import { inFrame, shiftOf } from '../../language/geometry/grid-frame.ts';
import {
  circleLoop,
  jointLength,
  MOST_UNITS,
  rectangleLoop,
  regionArea,
  type Region,
  type UnitGrid
} from '../../language/geometry/index.ts';
import { FOOT, loopOf, SQUARE_FOOT } from './feet.ts';
import { layPattern } from '../../language/laying/bonds/lay-pattern.ts';
import { laid, patternOf } from './laid.ts';
import { chorded, curvedRegions, moved, movedRegion } from './random-outlines.ts';
import { lengthWithin, polygonOf } from './second-opinion.ts';

const origin = { x: 0, y: 0 };

/** In metres: no outline reaches further from a grid's origin. */
const REACH = 11;
const block: UnitGrid = { origin, direction: 0, mirrored: false, length: 0.2, width: 0.1, joint: 0, offset: 0 };

function patio(width: number, depth: number): Region {
  return { outer: rectangleLoop(width, depth, origin, 0), holes: [] };
}

function terrace(): Region {
  return {
    outer: loopOf([0, 0], [40, 0], [40, 50], [20, 50], [20, 80], [0, 80]),
    holes: [
      circleLoop({ x: 10, y: 10 }, 3),
      rectangleLoop(3, 4, { x: 25, y: 20 }, 0.4),
      circleLoop({ x: 10, y: 60 }, 2)
    ]
  };
}

function someGrid(next: () => number): UnitGrid {
  return {
    origin: { x: 3 * next(), y: 3 * next() },
    direction: 6 * next(),
    mirrored: next() < 0.5,
    length: 0.2 + next(),
    width: 0.1 + 0.5 * next(),
    joint: next() < 0.5 ? 0 : 0.02 * next(),
    offset: next()
  };
}

describe('laying units (exact arithmetic)', () => {
  it('4.0 by 3.0 m in half bond: 585 whole, 30 cut', () => {
    expect(laid(patio(4, 3), { ...block, offset: 0.5 })).toMatchObject({ whole: 585, cut: 30 });
  });

  it('4.05 by 3.0 m in stack bond: 600 whole, 30 cut, each piece a quarter of a unit', () => {
    const units = laid(patio(4.05, 3), block);
    expect(units).toMatchObject({ whole: 600, cut: 30 });
    expect(units.smallestPieceArea).toBeCloseTo(0.005, 12);
  });

  it('16 inch slabs on 100 square feet cover exactly that: the worth of 56.25 slabs', () => {
    const slab = (16 / 12) * FOOT;
    const units = laid(patio(10 * FOOT, 10 * FOOT), { ...block, length: slab, width: slab });
    expect(units.unitArea / SQUARE_FOOT).toBeCloseTo(100, 9);
    expect(units.unitArea / slab / slab).toBeCloseTo(56.25, 9);
    expect(units).toMatchObject({ whole: 49, cut: 15 });
  });

  it('a cut within the cutting tolerance is none, beyond it is one', () => {
    expect(laid(patio(4, 2.9995), block)).toMatchObject({ whole: 600, cut: 0 });
    expect(laid(patio(4, 2.9994), block)).toMatchObject({ whole: 580, cut: 20 });
    expect(laid(patio(4, 3.0005), block)).toMatchObject({ whole: 600, cut: 0 });
    expect(laid(patio(4, 3.0006), block)).toMatchObject({ whole: 600, cut: 20 });
    expect(laid(patio(4, 3.0005), block).unitArea).toBeCloseTo(12.002, 9);
  });

  it('a keep-out through the middle of a unit leaves two pieces of one unit', () => {
    const units = laid({ outer: patio(0.2, 0.1).outer, holes: [rectangleLoop(0.05, 0.1, { x: 0.1, y: 0 }, 0)] }, block);
    expect(units).toMatchObject({ whole: 0, cut: 1, clipped: 1 });
    expect(units.unitArea).toBeCloseTo(0.015, 12);
    expect(units.smallestPieceArea).toBeCloseTo(0.005, 12);
  });

  it('regions with arcs and holes: units without joints cover the region, closed formula, to 1e-9', () => {
    for (const { region, next } of curvedRegions(200, 71)) {
      const units = laid(region, { ...someGrid(next), joint: 0 });
      expect(units.unitArea / regionArea(region)).toBeCloseTo(1, 9);
    }
    const circle = { outer: circleLoop({ x: 7, y: -3 }, 2.5), holes: [circleLoop({ x: 7, y: -3 }, 1)] };
    expect(laid(circle, { ...block, direction: 0.7 }).unitArea).toBeCloseTo(Math.PI * 5.25, 9);
    // Segment a quarter of the diameter high, as one unit's share of a circle: the table's constant.
    const high = laid(
      { outer: circleLoop(origin, 0.5), holes: [] },
      { ...block, origin: { x: -1, y: 0.25 }, length: 2, width: 2 }
    );
    expect(high.smallestPieceArea).toBeCloseTo(0.153546, 6);
  });

  it('mirrored, moved and turned outlines give the same counts, areas and joints', () => {
    for (const { region, next } of curvedRegions(100, 72)) {
      const grid = someGrid(next);
      const motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 900 * next(), y: -400 * next() } };
      const turned = {
        ...grid,
        origin: moved(grid.origin, motion),
        direction: motion.turn + (motion.mirrored ? -grid.direction : grid.direction),
        mirrored: motion.mirrored !== grid.mirrored
      };
      const here = laid(region, grid);
      const there = laid(movedRegion(region, motion), turned);
      expect([there.whole, there.cut]).toEqual([here.whole, here.cut]);
      expect(there.unitArea / here.unitArea).toBeCloseTo(1, 9);
      const joints = jointLength(movedRegion(region, motion), turned) ?? NaN;
      expect(joints / (jointLength(region, grid) ?? NaN)).toBeCloseTo(1, 9);
    }
  });

  it('clips along the border only: five times the units, at most 2.5 times the work', () => {
    const coarse = laid(terrace(), { ...block, direction: 0.3, length: 0.5, width: 0.25, offset: 0.5 });
    const fine = laid(terrace(), {
      ...block,
      direction: 0.3,
      length: 0.5 / Math.sqrt(5),
      width: 0.25 / Math.sqrt(5),
      offset: 0.5
    });
    expect((fine.whole + fine.cut) / (coarse.whole + coarse.cut)).toBeGreaterThan(4.8);
    expect(fine.clipped / coarse.clipped).toBeLessThan(2.5);
    expect(fine.clipped).toBeGreaterThanOrEqual(fine.cut);
    expect(laid(patio(40, 30), block).clipped).toBe(0);
  });

  it('stops when there are too many, and can be abandoned between courses', () => {
    const tiny = { ...block, length: 0.001, width: 0.001 };
    const laying = layPattern(patio(40, 30), patternOf(tiny)).next();
    expect(laying.done && 'tooMany' in laying.value && laying.value.tooMany).toBeGreaterThan(MOST_UNITS);
    expect(jointLength(patio(40, 30), tiny)).toBeUndefined();
    const steps = [...layPattern(patio(4, 3), patternOf(block))];
    expect(steps.length).toBe(30);
  });

  it('units bigger than the region, offsets of many units, grids and regions that are none', () => {
    expect(laid(patio(0.1, 0.05), block)).toMatchObject({ whole: 0, cut: 1 });
    expect(laid(patio(4, 3), { ...block, offset: 12_345_678.5 })).toMatchObject({ whole: 585, cut: 30 });
    expect(laid(patio(4, 3), { ...block, offset: -0.5 })).toMatchObject({ whole: 585, cut: 30 });
    const nothing = { whole: 0, cut: 0, clipped: 0, unitArea: 0, jointArea: 0 };
    expect(laid(patio(4, 3), { ...block, width: 0 })).toEqual(nothing);
    expect(laid(patio(NaN, 3), block)).toEqual(nothing);
    expect(laid({ outer: [], holes: [] }, block)).toMatchObject({ whole: 0, cut: 0 });
    const flush = { outer: patio(4, 3).outer, holes: [rectangleLoop(1, 1, { x: 3, y: 2 }, 0)] };
    expect(laid(flush, block)).toMatchObject({ whole: 550, cut: 0 });
    const full = {
      outer: [{ from: { x: 2, y: 0 }, to: { x: 2, y: 0 }, arc: { centre: origin, turn: -2 * Math.PI } }],
      holes: []
    };
    expect(laid(full, block)).toMatchObject(laid({ outer: circleLoop(origin, 2), holes: [] }, block));
  });
});

describe('joints', () => {
  it('stack and half bond without joint width: lines inside only, the edge is none (exact arithmetic)', () => {
    expect(jointLength(patio(4, 3), block)).toBeCloseTo(29 * 4 + 19 * 3, 9);
    expect(jointLength(patio(4, 3), { ...block, offset: 0.5 })).toBeCloseTo(29 * 4 + 1.5 * 19 + 1.5 * 20, 9);
  });

  it('3 mm joints over a large area take the share that units leave, within 2 % (exact arithmetic)', () => {
    const share = ((jointLength(patio(30, 30), { ...block, joint: 0.003, offset: 0.5 }) ?? NaN) * 0.003) / 900;
    expect(share / (1 - (0.2 * 0.1) / (0.203 * 0.103))).toBeCloseTo(1, 1.7);
  });

  it('random outlines agree with an independent library, line by line', { timeout: 20_000 }, () => {
    for (const { region, next } of curvedRegions(4, 73)) {
      const straight = { outer: chorded(region.outer, 7), holes: region.holes.map(hole => chorded(hole, 7)) };
      const grid = someGrid(next);
      const [outer = [], ...holes] = inFrame(straight, grid);
      const polygon = polygonOf({ outer, holes });
      const along = grid.length + grid.joint;
      const across = grid.width + grid.joint;
      let expected = 0;
      for (let course = Math.floor(-REACH / across); course * across < REACH; course++) {
        const y = course * across - grid.joint / 2;
        expected += lengthWithin(polygon, { x: -REACH, y }, { x: REACH, y });
        for (let place = Math.floor(-REACH / along); place * along < REACH; place++) {
          const x = shiftOf(course, grid) + place * along - grid.joint / 2;
          expected += lengthWithin(polygon, { x, y }, { x, y: y + across });
        }
      }
      expect((jointLength(straight, grid) ?? NaN) / expected).toBeCloseTo(1, 9);
    }
  });

  it('a course line across a ring is its chords (exact arithmetic)', () => {
    const ring = { outer: circleLoop(origin, 2), holes: [circleLoop(origin, 1)] };
    const one = { ...block, origin: { x: 0.5, y: 0.5 }, length: 10, width: 10 };
    const chords = 2 * (Math.sqrt(4 - 0.25) - Math.sqrt(1 - 0.25));
    expect(jointLength(ring, one)).toBeCloseTo(2 * chords, 12);
  });
});
