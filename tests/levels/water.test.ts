// Where water runs over a finish: worked shapes, random outlines, and a valley.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaOf,
  circleLoop,
  cornerLoop,
  inside,
  type Loop,
  type Point,
  rectangleLoop,
  selfCrossing
} from '../../language/geometry/index.ts';
import { loopsOf, runAs } from '../../language/geometry/regions-of.ts';
import { signedAreaOf } from '../../language/geometry/outline.ts';
import { drainageOf, LOOKED_UP_TOLERANCE } from '../../language/levels/drainage.ts';
import { fallFromSide } from '../../language/levels/fall-from-side.ts';
import { heightAt, type Surface } from '../../language/levels/surface.ts';
import { steepestFrom } from '../../language/levels/steepest.ts';
import { randomOutline, seededNumbers } from '../geometry/random-outlines.ts';
import { anySurface, drive, sound } from './surfaces.ts';

const SEED = 811;
const square = [rectangleLoop(4, 4, { x: 0, y: 0 }, 0)];

function falling(alongX: number, alongY: number): Surface {
  return { kind: 'plane', plane: { at: 1, alongX, alongY } };
}

/** A valley along y = 2 that falls to the right. */
const valley: Surface = {
  kind: 'folded',
  from: { x: 0, y: 2 },
  to: { x: 4, y: 2 },
  left: { at: -0.06, alongX: -0.01, alongY: 0.03 },
  right: { at: 0.06, alongX: -0.01, alongY: -0.03 }
};

/** The same as a dished surface along a line. */
const dish: Surface = {
  kind: 'along',
  line: { parts: [{ side: { from: { x: 0, y: 2 }, to: { x: 4, y: 2 } }, start: 0, length: 4 }], length: 4 },
  stations: [
    { at: 0, height: 0 },
    { at: 4, height: -0.04 }
  ],
  across: { kind: 'camber', fall: -0.03 }
};

describe('the steepest line', () => {
  test('on a plane is straight, to the edge it leaves over', () => {
    const line = steepestFrom(falling(0.01, 0.02), square, { x: 2, y: 1 });
    expect(line.path).toHaveLength(2);
    expect(line.end).toMatchObject({ kind: 'leaves', loop: 0, side: 0 });
    expect(line.path[1]).toEqual({ x: expect.closeTo(1.5, 9) as number, y: expect.closeTo(0, 9) as number });
  });

  test('from an edge it falls to, along an edge, from a corner', () => {
    expect(steepestFrom(falling(0, 0.02), square, { x: 1, y: 0 }).end).toMatchObject({ kind: 'leaves', side: 0 });
    const along = steepestFrom(falling(0, 0.02), square, { x: 0, y: 3 });
    expect(along.end).toMatchObject({ kind: 'leaves', side: 0, at: { x: 0, y: expect.closeTo(0, 5) as number } });
    expect(steepestFrom(falling(-0.01, 0.02), square, { x: 4, y: 0 }).end).toMatchObject({ kind: 'leaves', side: 0 });
    expect(steepestFrom(falling(0, 0.02), square, { x: 9, y: 0 }).end).toEqual({ kind: 'outside' });
    expect(steepestFrom(falling(0, 0.02), [], { x: 9, y: 0 }).end).toEqual({ kind: 'outside' });
    expect(steepestFrom(falling(0, 0), square, { x: 1, y: 1 }).end).toEqual({ kind: 'rests', at: { x: 1, y: 1 } });
  });

  test('into a hole it leaves over the side of the hole', () => {
    const holed = loopsOf({ outer: square[0]!, holes: [rectangleLoop(1, 1, { x: 1.5, y: 1.5 }, 0)] });
    const { end } = steepestFrom(falling(0, 0.02), holed, { x: 2, y: 3.5 });
    expect(end).toMatchObject({ kind: 'leaves', loop: 1, at: { x: 2, y: expect.closeTo(2.5, 9) as number } });
  });

  test('down a valley it runs to the fold and out along it', () => {
    const { path, end } = steepestFrom(valley, square, { x: 0.5, y: 3.5 });
    expect(path).toHaveLength(3);
    expect(path[1]).toEqual({ x: expect.closeTo(1, 9) as number, y: expect.closeTo(2, 9) as number });
    expect(end).toMatchObject({ kind: 'leaves', side: 1, at: { x: 4, y: expect.closeTo(2, 9) as number } });
    const dished = steepestFrom(dish, square, { x: 0.5, y: 3.5 }).end;
    expect(dished).toMatchObject({ kind: 'leaves', side: 1 });
    expect((dished as { at: Point }).at.y).toBeCloseTo(2, 1);
  });

  test('over a twisted drive every step leads down, and out over the channel', () => {
    const region = [cornerLoop(drive.corners)];
    const { path, end } = steepestFrom(drive, region, { x: 1, y: 10 });
    const heights = path.map(point => heightAt(drive, point));
    for (const [index, height] of heights.slice(1).entries()) expect(height).toBeLessThan(heights[index]!);
    expect(end).toMatchObject({ kind: 'leaves', side: 0 });
  });
});

describe('where an area drains to', () => {
  test('all to the low side, or by halves to two', () => {
    expect(drainageOf(falling(0, 0.02), square).sides).toEqual([
      { loop: 0, side: 0, area: expect.closeTo(16, 9) as number }
    ]);
    expect(drainageOf(falling(0.02, 0.02), square).sides).toEqual([
      { loop: 0, side: 0, area: expect.closeTo(8, 9) as number },
      { loop: 0, side: 3, area: expect.closeTo(8, 9) as number }
    ]);
  });

  test('what lies uphill of a round hole drains into it', () => {
    const holed = loopsOf({ outer: square[0]!, holes: [circleLoop({ x: 2, y: 2 }, 1)] });
    const { sides } = drainageOf(falling(0, -0.02), holed);
    // Falling to the far side, side 2: uphill of the hole lies a strip 2 m wide and 2 m long, less half the circle.
    expect(sides).toEqual([
      { loop: 0, side: 2, area: expect.closeTo(12 - Math.PI / 2, 9) as number },
      { loop: 1, side: 0, area: expect.closeTo(4 - Math.PI / 2, 9) as number }
    ]);
  });

  test('random outlines with arcs, any fall: the shares are the whole area, and water traced goes the same way', () => {
    const next = seededNumbers(SEED);
    for (let round = 0; round < 15; round++) {
      const outline: Loop = runAs(randomOutline(next, true), 'outer');
      if (selfCrossing(outline)) continue;
      const turn = 6 * next();
      const surface = falling(0.02 * Math.cos(turn), 0.02 * Math.sin(turn));
      const { sides } = drainageOf(surface, [outline]);
      expect(sides.reduce((sum, { area }) => sum + area, 0) / areaOf(outline)).toBeCloseTo(1, 9);
      const counts = new Map<number, number>();
      let all = 0;
      for (let x = -6; x <= 6; x += 0.25) {
        for (let y = -6; y <= 6; y += 0.25) {
          const { end } = steepestFrom(surface, [outline], { x, y });
          if (end.kind !== 'leaves') continue;
          all++;
          counts.set(end.side, (counts.get(end.side) ?? 0) + 1);
        }
      }
      for (const [side, count] of counts) {
        const share = (sides.find(one => one.side === side)?.area ?? 0) / areaOf(outline);
        expect(Math.abs(share - count / all)).toBeLessThan(0.03);
      }
    }
  });

  test('a surface that bends drains as its planes do, within the tolerance said', () => {
    const { sides, tolerance } = drainageOf(valley, square);
    expect(tolerance).toBe(LOOKED_UP_TOLERANCE);
    // But for what reaches the right side before the fold, all of it comes out at the fold's end: the same side.
    expect(sides).toEqual([{ loop: 0, side: 1, area: expect.closeTo(16, 6) as number }]);
    const next = seededNumbers(SEED);
    for (let round = 0; round < 20; round++) {
      const outline: Loop = runAs(randomOutline(next, true), 'outer');
      if (selfCrossing(outline)) continue;
      const turn = 6 * next();
      const flat = falling(0.02 * Math.cos(turn), 0.02 * Math.sin(turn));
      const heights = drive.corners.map(corner => heightAt(flat, corner)) as [number, number, number, number];
      const found = drainageOf({ ...drive, heights }, [outline]).sides;
      for (const { side, area } of drainageOf(flat, [outline]).sides) {
        const share = found.find(one => one.side === side)?.area ?? 0;
        expect(Math.abs(share - area)).toBeLessThan(areaOf(outline) * LOOKED_UP_TOLERANCE);
      }
    }
  });

  test('a dip within an area holds what runs to it', () => {
    const dip: Surface = {
      ...dish,
      kind: 'along',
      stations: [
        { at: 0, height: 0 },
        { at: 2, height: -0.05 },
        { at: 4, height: 0 }
      ]
    } as Surface;
    const { sides, lowPlaces } = drainageOf(dip, square);
    expect(sides).toEqual([]);
    expect(lowPlaces.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(16, 6);
    for (const { at } of lowPlaces) expect(Math.hypot(at.x - 2, at.y - 2)).toBeLessThan(0.15);
    expect(drainageOf(falling(0, 0), square)).toMatchObject({ sides: [] });
  });

  test('any surface over a square: nothing is lost', () => {
    fc.assert(
      fc.property(anySurface, surface => {
        const { sides, lowPlaces } = drainageOf(surface, square);
        const total = [...sides, ...lowPlaces].reduce((sum, { area }) => sum + area, 0);
        expect(total).toBeCloseTo(signedAreaOf(square[0]!), 6);
        for (const { at } of lowPlaces) expect(inside(square[0]!, at)).toBe(true);
      }),
      { seed: SEED, numRuns: 30 }
    );
    expect(drainageOf(drive, [])).toMatchObject({ sides: [], lowPlaces: [] });
    expect(drainageOf(falling(0, 1), [])).toMatchObject({ sides: [], lowPlaces: [] });
    expect(drainageOf(drive, [cornerLoop([{ x: 0, y: 0 }])])).toMatchObject({ sides: [], lowPlaces: [] });
  });
});

describe('the fall away from a side', () => {
  const house = { from: { x: 0, y: 0 }, to: { x: 4, y: 0 } };

  test('of a plane: as said, the same all along', () => {
    const fall = sound(fallFromSide(falling(0, -1 / 48), house, 'left'));
    expect(fall.least.value).toBeCloseTo(1 / 48, 12);
    expect(fall.most.value).toBeCloseTo(1 / 48, 12);
    expect(sound(fallFromSide(falling(0, -1 / 48), house, 'right')).least.value).toBeCloseTo(-1 / 48, 12);
    expect(fallFromSide(falling(0, 1), { from: house.from, to: house.from }, 'left')).toEqual({ fault: 'no-length' });
  });

  test('of a twisted drive towards its channel, from 1:35 to 1:36, and heights at the far side', () => {
    const [g1, g2, r2, r1] = drive.corners;
    const channel = sound(fallFromSide(drive, { from: g1, to: g2 }, 'left'));
    expect(1 / channel.least.value).toBeCloseTo(-34.9, 1);
    expect(1 / channel.most.value).toBeCloseTo(-36.4, 1);
    const footway = sound(fallFromSide(drive, { from: r2, to: r1 }, 'left'));
    expect(footway).toMatchObject({ lowest: { at: 0 }, start: expect.closeTo(10.298, 12) as number });
    expect(footway.highest.at).toBeCloseTo(5.2, 9);
    expect(footway.highest.value).toBeCloseTo(10.312, 12);
  });

  test('across a fold, both falls; heights are extreme at the fold', () => {
    const fall = sound(fallFromSide(valley, { from: { x: 0, y: 4 }, to: { x: 0, y: 0 } }, 'left'));
    expect(fall.lowest).toEqual({ at: expect.closeTo(2, 9) as number, value: expect.closeTo(0, 9) as number });
    expect(fall.start).toBeCloseTo(0.06, 12);
    expect(fall.least.value).toBeCloseTo(0.01, 12);
  });
});
