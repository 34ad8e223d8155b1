import { describe, expect, it } from 'vitest';
import {
  arcByBow,
  areaOf,
  baseOut,
  circleLoop,
  inside,
  loopWithin,
  rectangleLoop,
  regionArea,
  selfCrossing,
  sideLength,
  type Loop
} from '../../language/geometry/index.ts';
import { reversedLoop } from '../../language/geometry/outline.ts';
import { FOOT, INCH, loopOf, SQUARE_FOOT } from './feet.ts';
import { randomOutline, seededNumbers } from './random-outlines.ts';

const origin = { x: 0, y: 0 };

function evenly(loop: Loop, distance: number): number[] {
  return loop.map(() => distance);
}

describe('base moved out (exact arithmetic)', () => {
  it('two patios along a common side: 42.745 and 32.445, together 75.19 square metres', () => {
    const wide = baseOut(rectangleLoop(10, 4, origin, 0), [0.15, 0.15, 0, 0.15]);
    const narrow = baseOut(rectangleLoop(10, 3, { x: 0, y: 4 }, 0), [0, 0.15, 0.15, 0.15]);
    expect(wide.area).toBeCloseTo(42.745, 9);
    expect(narrow.area).toBeCloseTo(32.445, 9);
    expect(wide.area + narrow.area).toBeCloseTo(75.19, 9);
    expect(wide.exact && narrow.exact).toBe(true);
  });

  it('a terrace between house walls: 235.67 square feet, its base less a 20 by 14 inch box 249.63', () => {
    const loop = loopOf(
      [0, 0],
      [18 * FOOT + 6 * INCH, 0],
      [18 * FOOT + 5.4375 * INCH, 12 * FOOT + 7.875 * INCH],
      [-2.375 * INCH, 12 * FOOT + 8.625 * INCH]
    );
    expect(areaOf(loop) / SQUARE_FOOT).toBeCloseTo(235.67, 2);
    const base = baseOut(loop, [0, 6 * INCH, 6 * INCH, 0]);
    expect((base.area - 20 * INCH * 14 * INCH) / SQUARE_FOOT).toBeCloseTo(249.63, 2);
    const other = baseOut(reversedLoop(loop), [0, 6 * INCH, 6 * INCH, 0]);
    expect(other.area).toBeCloseTo(base.area, 9);
  });

  it('a circle out by d is a circle of radius r + d, in one side, two, or clockwise', () => {
    const [right, left] = [
      { x: 2, y: 0 },
      { x: -2, y: 0 }
    ];
    const arc = { centre: origin, turn: Math.PI };
    const halves: Loop = [
      { from: right, to: left, arc },
      { from: left, to: right, arc }
    ];
    for (const loop of [circleLoop(origin, 2), reversedLoop(circleLoop(origin, 2)), halves]) {
      const base = baseOut(loop, evenly(loop, 0.3));
      expect(base.area).toBeCloseTo(Math.PI * 2.3 ** 2, 9);
      expect(base.exact).toBe(true);
    }
    const stepped = baseOut(halves, [0.3, 0.1]);
    expect(stepped.area).toBeCloseTo((Math.PI * (2.3 ** 2 + 2.1 ** 2)) / 2, 9);
    expect(stepped.exact).toBe(true);
  });

  it('an inner corner counts once, an outer corner is filled, collinear neighbours make a square step', () => {
    const corner = loopOf([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]);
    expect(baseOut(corner, evenly(corner, 0.5)).area).toBeCloseTo(25 - 4, 9);
    // A strip along the inner wall only, up to the other wall.
    expect(baseOut(corner, [0, 0, 0, 0.5, 0, 0]).area).toBeCloseTo(12 + 1, 9);
    const split = loopOf([0, 0], [1, 0], [4, 0], [4, 2], [0, 2]);
    const stepped = baseOut(split, [0.2, 0.5, 0, 0, 0]);
    expect(stepped.area).toBeCloseTo(8 + 0.2 + 1.5, 9);
    expect(stepped.exact).toBe(true);
    const even = baseOut(split, [0.2, 0.2, 0, 0, 0]);
    expect(even.loops[0]?.length).toBe(5);
    expect(even.area).toBeCloseTo(8.8, 9);
  });

  it('beside a side with nought the strip ends on its prolonged line', () => {
    // Corners of 45 and 135 degrees at the closed side.
    const slanted = baseOut(loopOf([0, 0], [4, 0], [6, 2], [2, 2]), [0, 0.1, 0, 0.1]);
    expect(slanted.area).toBeCloseTo(8 + 2 * 2 * 0.1 * Math.SQRT2, 9);
    const reflex = baseOut(loopOf([0, 0], [4, 0], [2, 2], [2, 4], [0, 4]), [0, 0, 0.1, 0, 0]);
    expect(reflex.exact).toBe(true);
    expect(reflex.area).toBeCloseTo(10 + 0.1 * 2 + (0.1 * 0.1) / 2, 9);
  });

  it('a corner sharper than the mitre limit is cut off square', () => {
    const needle = loopOf([0, 0], [10, 0], [0, 1]);
    const base = baseOut(needle, evenly(needle, 0.1));
    const slant = Math.hypot(10, 1);
    // Strips, a square corner, a mitred one, and the triangle between the ends of the strips at the needle's point.
    const turn = Math.PI / 2 + Math.atan(10);
    const mitred = 0.01 * Math.tan((Math.PI - Math.atan(10)) / 2);
    const point = (0.01 * Math.sin(turn)) / 2;
    expect(base.area).toBeCloseTo(5 + 0.1 * (11 + slant) + 0.01 + mitred + point, 9);
  });

  it('a notch narrower than twice the distance closes, one closed at its mouth keeps a gap within', () => {
    for (const width of [0.1, 0.2, 0.3]) {
      const notched = loopOf([0, 0], [5, 0], [5, 4], [3, 4], [3, 2], [3 - width, 2], [3 - width, 4], [0, 4]);
      const base = baseOut(notched, evenly(notched, 0.15));
      expect(base.area).toBeCloseTo(5.3 * 4.3, 6);
      expect(base.exact).toBe(false);
      expect(base.loops.length).toBe(1);
    }
    const bottle = loopOf(
      [0, 0],
      [6, 0],
      [6, 4],
      [3.1, 4],
      [3.1, 3],
      [5, 3],
      [5, 1],
      [1, 1],
      [1, 3],
      [2.9, 3],
      [2.9, 4],
      [0, 4]
    );
    const base = baseOut(bottle, evenly(bottle, 0.15));
    expect(base.loops.length).toBe(2);
    expect(base.area).toBeCloseTo(6.3 * 4.3 - 3.7 * 1.7, 6);
  });

  it('arcs move about their centre, and one bowed inward sharper than the distance fills up', () => {
    const [near, ...rest] = rectangleLoop(4, 3, origin, 0);
    if (!near) throw new Error('a rectangle has four sides');
    // A half circle against two walls: the strip keeps its width.
    const dome = arcByBow(near.from, near.to, 2, 'right');
    if (!dome) throw new Error('a half circle');
    const half = baseOut([dome, { from: near.to, to: near.from }], [0.2, 0]);
    expect(half.area).toBeCloseTo((Math.PI * 2.2 ** 2) / 2, 9);
    expect(half.exact).toBe(true);
    // Bowed in, its corners at the sides are sharp: the moved arc is prolonged to the moved sides.
    const dent = arcByBow(near.from, near.to, 0.1, 'left');
    const dented = dent && baseOut([dent, ...rest], [0.2, 0, 0, 0]);
    expect(dented?.exact).toBe(true);
    expect(dented?.area).toBeGreaterThan(12 - 0.27 + 0.75);
    const nick: Loop = [
      { from: origin, to: { x: 1.9, y: 0 } },
      { from: { x: 1.9, y: 0 }, to: { x: 2.1, y: 0 }, arc: { centre: { x: 2, y: 0 }, turn: -Math.PI } },
      { from: { x: 2.1, y: 0 }, to: { x: 4, y: 0 } },
      ...rest
    ];
    const filled = baseOut(nick, evenly(nick, 0.15));
    expect(filled.exact).toBe(false);
    expect(filled.area).toBeCloseTo(4.3 * 3.3, 6);
  });

  it('random distances, some nought: nothing of the outline is lost, either way round gives the same', () => {
    const next = seededNumbers(17);
    for (let round = 0; round < 150; round++) {
      const loop = randomOutline(next, true);
      if (selfCrossing(loop)) continue;
      const distances = loop.map(() => (next() < 0.3 ? 0 : 0.02 + 0.3 * next()));
      const base = baseOut(loop, distances);
      expect(baseOut(reversedLoop(loop), [...distances].reverse()).area).toBeCloseTo(base.area, 7);
      const strips = loop.reduce((sum, side, index) => sum + sideLength(side) * (distances[index] ?? 0), 0);
      expect(base.area).toBeGreaterThanOrEqual(areaOf(loop) - 1e-6);
      expect(base.area).toBeLessThan(areaOf(loop) + 1.5 * strips + 1);
      if (base.exact) expect(loopWithin(loop, base.loops[0] ?? [])).toBe(true);
    }
  });

  it('nothing drawn makes it fail', () => {
    const crossed = loopOf([0, 0], [4, 3], [4, 0], [0, 3]);
    expect(baseOut(crossed, evenly(crossed, 0.1)).area).toBeGreaterThan(6);
    expect(baseOut([], []).area).toBe(0);
    expect(baseOut(loopOf([1, 1], [1, 1]), [1, 1]).area).toBe(0);
    expect(baseOut(loopOf([0, 0], [NaN, 1], [2, 2]), [1, 1, 1]).area).toBeNaN();
    const repeated = loopOf([0, 0], [4, 0], [4, 0], [4, 3], [0, 3]);
    expect(baseOut(repeated, evenly(repeated, 0.1)).area).toBeCloseTo(4.2 * 3.2, 9);
    const base = baseOut(rectangleLoop(4, 3, origin, 0.4), [0, 0, 0, 0]);
    expect(regionArea({ outer: base.loops[0] ?? [], holes: [] })).toBeCloseTo(12, 12);
    expect(inside(base.loops[0] ?? [], { x: 2, y: 1.5 })).toBe(true);
  });
});
