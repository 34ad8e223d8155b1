import { describe, expect, it } from 'vitest';
import {
  circleLoop,
  type Loop,
  rectangleLoop,
  type Region,
  regionArea,
  roundCorner
} from '../../language/geometry/index.ts';
import { reversedLoop } from '../../language/geometry/outline.ts';
import type { BorderCourse } from '../../language/laying/borders/border.ts';
import { layBorders } from '../../language/laying/borders/borders.ts';
import { loopOf } from '../geometry/feet.ts';
import { allRound, BLOCK, counts, exactly, faultOf, laidArea, laidBorders } from './laid-borders.ts';

const patio: Region = { outer: rectangleLoop(4, 3, { x: 0, y: 0 }, 0), holes: [] };

function sailor(outer: Loop, joint: number, corners: 'mitred' | 'butted'): BorderCourse {
  return { unit: BLOCK, lies: 'sailor', joint: exactly(joint), along: allRound(outer), corners };
}

function soldier(outer: Loop, joint: number, corners: 'mitred' | 'butted'): BorderCourse {
  return { ...sailor(outer, joint, corners), lies: 'soldier' };
}

function fieldArea(field: readonly Region[]): number {
  return field.reduce((sum, region) => sum + regionArea(region), 0);
}

describe('borders of 4.0 by 3.0 m (worked by hand)', () => {
  it('sailor course, butted, no joints: 20 along each long side, 14 along each short one, field 3.8 by 2.8', () => {
    const laid = laidBorders(patio, [sailor(patio.outer, 0, 'butted')]);
    const [course] = laid.borders;
    expect(course && counts(course)).toEqual({ whole: 68, cut: 0 });
    expect(course?.runs.map(({ sides, units, fits }) => [sides[0], units, fits]).sort()).toEqual([
      [0, 20, true],
      [1, 14, true],
      [2, 20, true],
      [3, 14, true]
    ]);
    expect(course?.laid.jointArea).toBe(0);
    expect(course?.laid.clipped).toBe(0);
    expect(fieldArea(laid.field)).toBeCloseTo(3.8 * 2.8, 12);
    expect(laidArea(laid)).toBeCloseTo(12, 12);
  });

  it('mitred, no joints: 20 and 15 along the sides, one cut at each end of each', () => {
    const laid = laidBorders(patio, [sailor(patio.outer, 0, 'mitred')]);
    const [course] = laid.borders;
    expect(course && counts(course)).toEqual({ whole: 62, cut: 8 });
    // Each cut unit keeps its outer length and loses a triangle of 100 by 100 mm.
    for (const { pieces } of course?.laid.cuts ?? [])
      expect(pieces.map(({ area }) => area)).toEqual([expect.closeTo(0.015, 12)]);
    expect(laidArea(laid)).toBeCloseTo(12, 12);
  });

  it('joints of 3 mm', () => {
    const laid = laidBorders(patio, [sailor(patio.outer, 0.003, 'butted')]);
    const [course] = laid.borders;
    expect(fieldArea(laid.field)).toBeCloseTo((4 - 0.206) * (3 - 0.206), 12);
    expect(laidArea(laid)).toBeCloseTo(12, 12);
    // 4 m: 18 whole, 17 + 2 joints, and twice (4 - 18 x 0.203 - 0.003) / 2 = 0.1715.
    const long = course?.runs.find(({ sides }) => sides[0] === 0);
    expect(long).toMatchObject({ units: 20, joint: 0.003, fits: false });
    // Between the long courses and their joints 2.794 m: 12 whole, and twice (2.794 - 12 x 0.203 - 0.003) / 2 = 0.1775.
    expect(course && counts(course)).toEqual({ whole: 60, cut: 8 });
    const lengths = course?.laid.cuts.map(({ pieces }) => (pieces[0]?.area ?? 0) / 0.1) ?? [];
    expect(lengths.sort().map(length => length.toFixed(4))).toEqual([
      ...Array(4).fill('0.1715'),
      ...Array(4).fill('0.1775')
    ]);
  });

  it('the joint is adjusted within its limits so that whole units fit', () => {
    const limits = { least: 0.002, usual: 0.003, most: 0.017 };
    const laid = laidBorders(patio, [{ ...sailor(patio.outer, 0, 'butted'), joint: limits }]);
    const [course] = laid.borders;
    expect(course && counts(course).cut).toBe(0);
    const joints = course?.runs.map(({ sides, units, joint }) => [sides[0], units, joint]).sort();
    expect(joints).toEqual([
      [0, 19, expect.closeTo(0.2 / 18, 12)],
      [1, 13, expect.closeTo((2.794 - 2.6) / 12, 12)],
      [2, 19, expect.closeTo(0.2 / 18, 12)],
      [3, 13, expect.closeTo((2.794 - 2.6) / 12, 12)]
    ]);
    expect(laidArea(laid)).toBeCloseTo(12, 12);
  });

  it('a soldier and a sailor course one within the other, and one along two sides only', () => {
    const two = laidBorders(patio, [soldier(patio.outer, 0.003, 'butted'), sailor(patio.outer, 0.003, 'mitred')]);
    expect(fieldArea(two.field)).toBeCloseTo((4 - 0.612) * (3 - 0.612), 12);
    expect(laidArea(two)).toBeCloseTo(12, 12);
    const some = laidBorders(patio, [{ ...soldier(patio.outer, 0, 'butted'), along: [true, false, true, false] }]);
    expect(some.borders.map(counts)).toEqual([{ whole: 80, cut: 0 }]);
    expect(fieldArea(some.field)).toBeCloseTo(4 * 2.6, 12);
  });

  it('units lie with their length or end on the edge, face up and within the paving', () => {
    const [first] = laidBorders(patio, [sailor(patio.outer, 0, 'butted')]).borders;
    const near = first?.laid.wholes.find(({ first: at }) => Math.abs(at.y) < 1e-9 && at.direction === 0);
    expect(near).toMatchObject({ count: 20, first: { x: 0, y: 0 }, step: { x: expect.closeTo(0.2, 12), y: 0 } });
    const [upright] = laidBorders(patio, [soldier(patio.outer, 0, 'butted')]).borders;
    expect(
      upright?.laid.wholes.some(
        ({ first: at }) => Math.abs(at.x - 0.1) < 1e-9 && Math.abs(at.direction - Math.PI / 2) < 1e-9
      )
    ).toBe(true);
  });
});

describe('borders round corners, curves and holes', () => {
  const corner = loopOf([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]);

  it.each(['mitred', 'butted'] as const)('an L with its inner corner %s', corners => {
    for (const joint of [0, 0.003]) {
      const laid = laidBorders({ outer: corner, holes: [] }, [sailor(corner, joint, corners)]);
      const inset = 0.1 + joint;
      expect(fieldArea(laid.field)).toBeCloseTo((4 - 2 * inset) ** 2 - 4, 12);
      expect(laidArea(laid)).toBeCloseTo(12, 12);
    }
  });

  it('butted, no joints, the L: the longer side runs through, of two the same the first', () => {
    const [course] = laidBorders({ outer: corner, holes: [] }, [sailor(corner, 0, 'butted')]).borders;
    // Metres to fill: 4.0, 1.9 (8 whole and twice 0.15), 2.0, 2.0, 1.8, 3.9 (18 whole, twice 0.15); at the inner corner side 2 runs 0.1 on.
    expect(course?.runs.map(({ sides, units, fits }) => [sides[0], units, fits]).sort()).toEqual([
      [0, 20, true],
      [1, 10, false],
      [2, 10, true],
      [3, 10, true],
      [4, 9, true],
      [5, 20, false]
    ]);
    expect(course && counts(course)).toEqual({ whole: 75, cut: 4 });
  });

  it('a rounded corner: strips meet square, the curve opens outward and says so', () => {
    const [near, right, ...rest] = patio.outer;
    const rounded = near && right && roundCorner(near, right, 1);
    if (!rounded) throw new Error('it fits');
    const outer = [rounded.before, rounded.arc, rounded.after, ...rest];
    for (const corners of ['mitred', 'butted'] as const) {
      const laid = laidBorders({ outer, holes: [] }, [soldier(outer, 0.003, corners)]);
      expect(laidArea(laid)).toBeCloseTo(12 - (1 - Math.PI / 4), 11);
      const curve = laid.borders[0]?.runs.find(({ opening }) => opening);
      // From 0.8 m out to 1 m a unit of 0.1 m and its joint widen by about a quarter of 103 mm.
      expect(curve?.opening?.widest).toBeGreaterThan(0.025);
      expect(curve?.opening?.widest).toBeLessThan(0.033);
      expect(curve?.opening?.tooWide).toBe(true);
    }
  });

  it('a circle closes with whole units, as many as its inner circle holds', () => {
    const outer = circleLoop({ x: 1, y: 2 }, 2);
    const limits = { least: 0.002, usual: 0.004, most: 0.012 };
    const laid = laidBorders({ outer, holes: [] }, [{ ...soldier(outer, 0, 'mitred'), joint: limits }]);
    const [course] = laid.borders;
    const far = Math.sqrt(4 - 0.05 ** 2);
    const inner = far - 0.2;
    // 2 pi over the angle of a unit and its joint, seen where the units are nearest each other.
    const about = (2 * Math.PI) / (2 * Math.atan(0.05 / inner) + 0.004 / Math.hypot(inner, 0.05));
    expect(course?.runs[0]?.units).toBe(Math.round(about));
    expect(course && counts(course)).toEqual({ whole: Math.round(about), cut: 0 });
    expect(course?.laid.clipped).toBe(0);
    expect(fieldArea(laid.field)).toBeCloseTo(Math.PI * (inner - 0.004) ** 2, 9);
    expect(laidArea(laid)).toBeCloseTo(4 * Math.PI, 10);
  });

  it('a circle that whole units do not close is cut on both sides of one joint', () => {
    const outer = circleLoop({ x: 1, y: 2 }, 1.07);
    const laid = laidBorders({ outer, holes: [] }, [sailor(outer, 0.004, 'mitred')]);
    expect(laid.borders[0]?.runs[0]?.fits).toBe(false);
    expect(laid.borders[0]?.laid.cuts.length).toBe(2);
    expect(laidArea(laid)).toBeCloseTo(1.07 ** 2 * Math.PI, 10);
  });

  it('round a square box and a round pit, clipped where a border along the outline is in the way', () => {
    for (const hole of [
      rectangleLoop(0.6, 0.4, { x: 2, y: 1 }, 0.3),
      circleLoop({ x: 2, y: 1.4 }, 0.3),
      circleLoop({ x: 2, y: 0.55 }, 0.3)
    ]) {
      for (const turned of [hole, reversedLoop(hole)]) {
        const region = { outer: patio.outer, holes: [turned] };
        const round: BorderCourse = { ...soldier(hole, 0.003, 'mitred'), along: { hole: 0 } };
        const laid = laidBorders(region, [sailor(patio.outer, 0.003, 'butted'), round]);
        expect(laidArea(laid)).toBeCloseTo(regionArea(region), 10);
        expect(laid.borders[1]?.runs.every(run => run.hole === 0)).toBe(true);
      }
    }
  });

  it('a box in the border cuts units, with their joints', () => {
    const region = {
      outer: patio.outer,
      holes: [rectangleLoop(0.25, 0.15, { x: 1.05, y: 0.02 }, 0), circleLoop({ x: 4, y: 1.5 }, 0.4)]
    };
    const laid = laidBorders(region, [sailor(patio.outer, 0.003, 'butted'), soldier(patio.outer, 0.003, 'mitred')]);
    expect(laidArea(laid)).toBeCloseTo(12 - 0.25 * 0.15 - (Math.PI * 0.16) / 2, 10);
  });

  it('sides in one line are one run; where a course ends on one the strip ends square', () => {
    const split = loopOf([0, 0], [1.1, 0], [4, 0], [4, 3], [0, 3]);
    const whole = laidBorders({ outer: split, holes: [] }, [sailor(split, 0, 'butted')]);
    expect(whole.borders.map(counts)).toEqual([{ whole: 68, cut: 0 }]);
    expect(whole.borders[0]?.runs.some(({ sides }) => sides.join() === '0,1')).toBe(true);
    const part = laidBorders({ outer: split, holes: [] }, [
      { ...sailor(split, 0, 'butted'), along: [false, true, false, false, false] }
    ]);
    expect(fieldArea(part.field)).toBeCloseTo(12 - 0.29, 12);
    expect(part.field[0]?.outer.length).toBe(6);
  });
});

describe('bands (worked by hand)', () => {
  it('across the middle: the field is in two, whole units between', () => {
    const band = { unit: BLOCK, lies: 'soldier' as const, joint: exactly(0), from: { x: 2, y: 0 }, to: { x: 2, y: 3 } };
    const laid = laidBorders(patio, [], [band]);
    expect(laid.bands.map(counts)).toEqual([{ whole: 30, cut: 0 }]);
    expect(laid.field.length).toBe(2);
    expect(fieldArea(laid.field)).toBeCloseTo(3.8 * 3, 12);
    const jointed = laidBorders(patio, [sailor(patio.outer, 0.003, 'butted')], [{ ...band, joint: exactly(0.003) }]);
    expect(fieldArea(jointed.field)).toBeCloseTo((4 - 0.206 - 0.206) * (3 - 0.206), 12);
    expect(laidArea(jointed)).toBeCloseTo(12, 12);
  });

  it('only where its line runs: one arm of a U', () => {
    const outer = loopOf([0, 0], [5, 0], [5, 4], [3, 4], [3, 2], [2, 2], [2, 4], [0, 4]);
    const band = { unit: BLOCK, lies: 'sailor' as const, joint: exactly(0), from: { x: 0, y: 3 }, to: { x: 2, y: 3 } };
    const laid = laidBorders({ outer, holes: [] }, [], [band]);
    expect(laid.bands.map(counts)).toEqual([{ whole: 10, cut: 0 }]);
    expect(laid.field.length).toBe(2);
  });

  it('two that cross: the second lies between the first and the edges', () => {
    const up = {
      unit: BLOCK,
      lies: 'sailor' as const,
      joint: exactly(0.003),
      from: { x: 2, y: 0 },
      to: { x: 2, y: 3 }
    };
    const laid = laidBorders(patio, [], [up, { ...up, from: { x: 0, y: 1 }, to: { x: 4, y: 1.2 } }]);
    expect(laid.bands[1]?.runs.length).toBe(2);
    expect(laid.field.length).toBe(4);
    expect(laidArea(laid)).toBeCloseTo(12, 11);
  });
});

describe('borders that cannot be laid', () => {
  it('paving too narrow, a curve too tight, no size', () => {
    const narrow = { outer: rectangleLoop(4, 0.35, { x: 0, y: 0 }, 0), holes: [] };
    expect(faultOf(narrow, [soldier(narrow.outer, 0, 'butted')])).toMatchObject({ fault: 'too-narrow', course: 0 });
    expect(
      faultOf(patio, [
        sailor(patio.outer, 0, 'butted'),
        { ...soldier(patio.outer, 0, 'butted'), unit: { key: 'slab', length: 2, width: 1 } }
      ])
    ).toMatchObject({
      fault: 'too-narrow',
      course: 1
    });
    const small = { outer: circleLoop({ x: 0, y: 0 }, 0.15), holes: [] };
    expect(faultOf(small, [soldier(small.outer, 0, 'butted')])).toEqual({
      fault: 'too-tight',
      of: 'borders',
      course: 0,
      side: 0
    });
    expect(faultOf(patio, [sailor(patio.outer, NaN, 'butted')])).toMatchObject({ fault: 'not-a-size' });
  });

  it('nothing drawn makes it fail', () => {
    const course = (outer: Loop) => [sailor(outer, 0.003, 'mitred')];
    for (const outer of [
      [],
      loopOf([1, 1], [1, 1]),
      loopOf([0, 0], [NaN, 1], [2, 2]),
      loopOf([0, 0], [1e300, 0], [1e300, 1e300]),
      loopOf([0, 0], [4, 3], [4, 0], [0, 3])
    ]) {
      const laying = layBorders(
        { outer, holes: [outer] },
        [...course(outer), { ...course(outer)[0]!, along: { hole: 0 } }],
        []
      );
      const step = laying.next();
      if (step.done) expect('field' in step.value || 'fault' in step.value || 'tooMany' in step.value).toBe(true);
    }
  });

  it('more units than are laid one by one are told at once', () => {
    const outer = rectangleLoop(40_000, 40_000, { x: 0, y: 0 }, 0);
    const laying = layBorders({ outer, holes: [] }, [sailor(outer, 0, 'butted')], []).next();
    expect(laying.value).toEqual({ tooMany: 800_000 });
  });

  it('a neck between two parts is named by a side at it', () => {
    const outer = loopOf(
      [0, 0],
      [2, 0],
      [2, 0.9],
      [3, 0.9],
      [3, 0],
      [5, 0],
      [5, 2],
      [3, 2],
      [3, 1.1],
      [2, 1.1],
      [2, 2],
      [0, 2]
    );
    const fault = faultOf({ outer, holes: [] }, [soldier(outer, 0.003, 'mitred')]);
    expect(fault?.fault).toBe('too-narrow');
    expect([1, 2, 3, 7, 8, 9]).toContain(fault?.side);
  });
});
