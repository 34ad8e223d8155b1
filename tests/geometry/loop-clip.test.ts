import { describe, expect, it } from 'vitest';
import {
  areaOf,
  circleLoop,
  type Loop,
  overlapArea,
  rectangleLoop,
  selfCrossing
} from '../../language/geometry/index.ts';
import { differenceOf, intersectionOf } from '../../language/geometry/loop-clip.ts';
import { signedAreaOf } from '../../language/geometry/outline.ts';
import { regionsOf, runAs } from '../../language/geometry/regions-of.ts';
import { movedLoop, randomOutline, seededNumbers } from './random-outlines.ts';

const origin = { x: 0, y: 0 };

function area(loops: readonly Loop[]): number {
  return loops.reduce((sum, loop) => sum + signedAreaOf(loop), 0);
}

describe('areas in common and left over (exact arithmetic)', () => {
  it('random outlines with arcs: both together are the first, and agree with an independent library on chords', () => {
    const next = seededNumbers(91);
    for (let round = 0; round < 100; round++) {
      const one = runAs(randomOutline(next, true), 'outer');
      const move = { x: 3 * next(), y: 3 * next() };
      const other = runAs(movedLoop(randomOutline(next, true), { mirrored: false, turn: next(), move }), 'outer');
      if (selfCrossing(one) || selfCrossing(other)) continue;
      const common = area(intersectionOf([one], [other]));
      expect((common + area(differenceOf([one], [other]))) / areaOf(one)).toBeCloseTo(1, 9);
      expect(area(intersectionOf([other], [one])) / common).toBeCloseTo(1, 9);
      expect(common / overlapArea(one, other)).toBeCloseTo(1, 6);
    }
  });

  it('sides on top of each other, the same outline, one within the other, a shared corner', () => {
    const big = rectangleLoop(4, 3, origin, 0);
    const half = rectangleLoop(2, 3, { x: 2, y: 0 }, 0);
    expect(differenceOf([big], [half])).toEqual([expect.objectContaining({ length: 4 })]);
    expect(area(differenceOf([big], [half]))).toBe(6);
    expect(intersectionOf([big], [rectangleLoop(2, 3, { x: 4, y: 0 }, 0)])).toEqual([]);
    expect(differenceOf([big], [big])).toEqual([]);
    expect(area(intersectionOf([big], [big]))).toBe(12);
    const [holed] = regionsOf(differenceOf([big], [circleLoop({ x: 2, y: 1.5 }, 1)]));
    expect(holed?.holes.length).toBe(1);
    const corners = differenceOf([big], [rectangleLoop(2, 1.5, origin, 0), rectangleLoop(2, 1.5, { x: 2, y: 1.5 }, 0)]);
    expect(corners.map(areaOf)).toEqual([3, 3]);
  });

  it('a circle that touches sides from inside leaves four corners', () => {
    const square = rectangleLoop(2, 2, { x: -1, y: -1 }, 0);
    const turned = movedLoop(square, { mirrored: false, turn: 0.4, move: { x: 700, y: -300 } });
    for (const [outer, centre] of [[square, origin] as const, [turned, { x: 700, y: -300 }] as const]) {
      expect(area(differenceOf([outer], [circleLoop(centre, 1)]))).toBeCloseTo(4 - Math.PI, 9);
      expect(area(intersectionOf([outer], [circleLoop(centre, 1)]))).toBeCloseTo(Math.PI, 9);
    }
  });
});
