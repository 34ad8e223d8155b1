import { describe, expect, it } from 'vitest';
import { circleLoop, rectangleLoop, type Side, sideLength } from '../../language/geometry/index.ts';
import { leftOver, runsInRow } from '../../language/geometry/left-over.ts';
import { pointAlong, reversedLoop } from '../../language/geometry/outline.ts';
import { movedLoop, randomOutline, seededNumbers } from './random-outlines.ts';

const line = (x0: number, y0: number, x1: number, y1: number): Side => ({
  from: { x: x0, y: y0 },
  to: { x: x1, y: y1 }
});
const lengths = (sides: readonly Side[]): number[] => sides.map(side => Number(sideLength(side).toFixed(6)));

describe('what of a side lies on none of the others', () => {
  it('is told stretch by stretch, whichever way the others run', () => {
    const side = line(0, 0, 10, 0);
    expect(leftOver(side, [])).toEqual([side]);
    expect(leftOver(side, [line(12, 0, -1, 0)])).toEqual([]);
    expect(leftOver(side, [line(3, 0, 1, 0), line(3, 0, 4, 0)])).toEqual([line(0, 0, 1, 0), line(4, 0, 10, 0)]);
    // What crosses it, touches it with an end, or runs beside it a hair off covers nothing.
    expect(leftOver(side, [line(5, -1, 5, 1), line(2, 0, 2, 3), line(0, 0.001, 10, 0.001)])).toEqual([side]);
  });

  it('of an arc is an arc of the same circle', () => {
    const side = circleLoop({ x: 1, y: 2 }, 2)[0]!;
    const middle = pointAlong(side, 0.5);
    const half: Side = { from: side.from, to: middle, arc: { ...side.arc!, turn: side.arc!.turn / 2 } };
    const [left, ...more] = leftOver(side, [half]);
    expect(more).toEqual([]);
    expect(left?.arc?.turn).toBeCloseTo(side.arc!.turn / 2, 9);
    expect(leftOver(side, [line(side.from.x, side.from.y, middle.x, middle.y)])).toEqual([side]);
  });

  it('is nothing of an outline run the other way, and all of one moved a little', () => {
    const next = seededNumbers(17);
    for (let round = 0; round < 60; round++) {
      const loop = randomOutline(next, true);
      const moved = movedLoop(loop, { mirrored: false, turn: 0, move: { x: 0.013, y: 0.007 } });
      expect(loop.flatMap(side => leftOver(side, reversedLoop(loop)))).toEqual([]);
      expect(lengths(loop.flatMap(side => leftOver(side, moved)))).toEqual(lengths(loop));
    }
  });

  it('runs on in one line where sides follow each other', () => {
    const square = rectangleLoop(2, 2, { x: 0, y: 0 }, 0);
    expect(runsInRow([square[0]!, square[1]!, square[3]!]).map(run => run.length)).toEqual([2, 1]);
  });
});
