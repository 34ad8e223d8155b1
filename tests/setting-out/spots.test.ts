import { describe, expect, test } from 'vitest';
import { distance, type Point } from '../../language/geometry/index.ts';
import { along, diagonals, halfway, polar, rightAngleAt, threeFourFive } from '../../language/setting-out/spots.ts';
import { FOOT, INCH } from '../geometry/feet.ts';

const from = { x: 1, y: 1 };
const to = { x: 4, y: 5 };

const near = ({ x, y }: Point) => ({ x: expect.closeTo(x, 9) as number, y: expect.closeTo(y, 9) as number });

describe('Spots', () => {
  test('along a line, out to the left, and back behind it', () => {
    expect(along(from, to, 10, 5)).toEqual(near({ x: 3, y: 12 }));
    expect(along(from, to, -5, -5)).toEqual(near({ x: 2, y: -6 }));
    expect(along(from, from, 1, 1)).toBeUndefined();
  });

  test('by distance and direction; halfway', () => {
    expect(polar(from, 2, Math.PI / 2)).toEqual(near({ x: 1, y: 3 }));
    expect(halfway(from, to)).toEqual({ x: 2.5, y: 3 });
  });

  test('diagonals of four corners; of more, each corner from the first side', () => {
    const four = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 3 },
      { x: 0, y: 3 }
    ];
    expect(diagonals(four)).toEqual([
      { from: 0, to: 2, length: 5 },
      { from: 1, to: 3, length: 5 }
    ]);
    expect(diagonals([...four, { x: -3, y: 4 }]).map(({ from, to }) => `${from}${to}`)).toEqual([
      '02',
      '12',
      '03',
      '13',
      '04',
      '14'
    ]);
    expect(diagonals(four.slice(0, 3)).map(({ length }) => length)).toEqual([5, 3]);
    expect(diagonals(four.slice(0, 2))).toEqual([]);
  });
});

describe('3-4-5', () => {
  const inFeet = (length: number) => {
    const triangle = threeFourFive(length, 'imperial');
    return triangle && [triangle.along, triangle.out, triangle.across].map(side => Number((side / FOOT).toFixed(6)));
  };

  test.each([
    [18.5, [16, 12, 20]],
    [16, [16, 12, 20]],
    [15.99, [12, 9, 15]],
    [4, [4, 3, 5]],
    [3.5, [3, 2.25, 3.75]],
    [0.9, undefined]
  ])('on %s ft', (feet, sides) => {
    expect(inFeet(feet * FOOT)).toEqual(sides);
  });

  test('in metres: tenths, on short lines hundredths', () => {
    const sides = (length: number) => Object.values(threeFourFive(length, 'metric') ?? {}).map(side => side.toFixed(6));
    expect(sides(2.75)).toEqual(['2.400000', '1.800000', '3.000000']);
    expect(sides(4)).toEqual(['4.000000', '3.000000', '5.000000']);
    expect(sides(0.25)).toEqual(['0.240000', '0.180000', '0.300000']);
    expect(sides(0.03)).toEqual([]);
    expect(sides(-3)).toEqual([]);
  });

  test('a right angle at the end of a line, to either side', () => {
    const triangle = threeFourFive(18 * FOOT + 6 * INCH, 'imperial')!;
    const end = { x: 18.5 * FOOT, y: 0 };
    const { onLine, out } = rightAngleAt(end, { x: 0, y: 0 }, true, triangle)!;
    expect(onLine).toEqual(near({ x: 2.5 * FOOT, y: 0 }));
    expect(out).toEqual(near({ x: 18.5 * FOOT, y: 12 * FOOT }));
    expect(distance(onLine, out)).toBeCloseTo(20 * FOOT, 9);
    expect(rightAngleAt(end, { x: 0, y: 0 }, false, triangle)!.out.y).toBeCloseTo(-12 * FOOT, 9);
    expect(rightAngleAt(end, end, true, triangle)).toBeUndefined();
  });
});
