import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordCorners, insideCorners } from '../../language/drawing/chord-corners.ts';
import { formOf, loopOnPlan } from '../../language/drawing/on-plan.ts';
import { roomFor } from '../../language/drawing/room.ts';
import { circleLoop, cornerLoop, type Point, signedAreaOf } from '../../language/geometry/index.ts';

const square = [
  { x: 0, y: 0 },
  { x: 4, y: 0 },
  { x: 4, y: 4 },
  { x: 0, y: 4 }
];

describe('room for a text in a shape', () => {
  it('is the middle of a rectangle, and all of it', () => {
    const room = roomFor([square], { width: 2, height: 1 }, 0)!;
    expect(room.at).toEqual({ x: 2, y: 2 });
    expect(room.times).toBeCloseTo(2, 12);
  });

  it('turns with the text', () => {
    const turn = Math.PI / 4;
    const turned = chordCorners(loopOnPlan(cornerLoop(square), { x: 1, y: 1, direction: turn }));
    const room = roomFor([turned], { width: 1, height: 1 }, turn)!;
    expect(room.times).toBeCloseTo(4, 9);
    expect(room.at.x).toBeCloseTo(1, 9);
    expect(room.at.y).toBeCloseTo(1 + Math.sqrt(8), 9);
  });

  it('leaves a hole aside', () => {
    const hole = chordCorners(circleLoop({ x: 2, y: 2 }, 1));
    const room = roomFor([square, hole], { width: 1, height: 1 }, 0)!;
    // Between the corner of the square and the circle: its corner touches the circle at 45 degrees.
    expect(room.times).toBeGreaterThan((2 - Math.SQRT1_2) * 0.95);
    expect(room.times).toBeLessThanOrEqual(2 - Math.SQRT1_2 + 0.01);
  });

  it('is none where there is no shape', () => {
    expect(roomFor([], { width: 1, height: 1 }, 0)).toBeUndefined();
    expect(roomFor([[square[0]!, square[1]!]], { width: 1, height: 1 }, 0)).toBeUndefined();
  });

  it('holds its box, and no place has much more room', () => {
    const number = fc.integer({ min: 0, max: 1000 }).map(whole => whole / 100);
    const corners = fc.array(fc.record({ x: number, y: number }), { minLength: 3, maxLength: 3 });
    const box = fc.record({ width: fc.constantFrom(0.5, 1, 2), height: fc.constantFrom(0.5, 1) });
    fc.assert(
      fc.property(corners, box, fc.constantFrom(0, 0.3, -1), corners, (triangle, size, turn, tries) => {
        fc.pre(Math.abs(signedAreaOf(cornerLoop(triangle))) > 1);
        const room = roomFor([triangle], size, turn)!;
        const smaller = 0.999 * room.times;
        expect(cornersOf(room.at, size, smaller, turn).every(point => insideCorners([triangle], point))).toBe(true);
        // A triangle is convex: a box lies in it where its corners do.
        for (const at of tries) {
          const larger = cornersOf(at, size, room.times * 1.15, turn);
          expect(larger.every(point => insideCorners([triangle], point))).toBe(false);
        }
      }),
      { seed: 5, numRuns: 300 }
    );
  });
});

function cornersOf(at: Point, size: { width: number; height: number }, times: number, turn: number): Point[] {
  const loop = formOf({ length: size.width * times, width: size.height * times, shape: 'rectangle' });
  const centred = loop.map(({ from }) => ({
    x: from.x - (size.width * times) / 2,
    y: from.y - (size.height * times) / 2
  }));
  return centred.map(({ x, y }) => ({
    x: at.x + x * Math.cos(turn) - y * Math.sin(turn),
    y: at.y + x * Math.sin(turn) + y * Math.cos(turn)
  }));
}

describe('the outline of a unit', () => {
  it('is its hexagon, across corners by across flats', () => {
    const hexagon = formOf({ length: 0.2, width: Math.sqrt(3) * 0.1, shape: 'hexagon' });
    const sides = hexagon.map(({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y));
    for (const side of sides) expect(side).toBeCloseTo(0.1, 12);
    // Three halves of the root of three times the square of the side.
    expect(signedAreaOf(hexagon)).toBeCloseTo(1.5 * Math.sqrt(3) * 0.01, 12);
  });
});
