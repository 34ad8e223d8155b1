// Widths and moments by textbook formulas.
import { describe, expect, test } from 'vitest';
import {
  arcByBow,
  areaOf,
  circleLoop,
  cornerLoop,
  firstMomentOf,
  narrowestWidth,
  narrowestWidthOf,
  rectangleLoop,
  reversedLoop
} from '../../language/geometry/index.ts';

describe('the narrowest width', () => {
  test('of a rectangle, however it is turned', () => {
    for (const turn of [0, 0.3, 1, 2.5]) {
      expect(narrowestWidthOf(rectangleLoop(0.4, 0.15, { x: 3, y: -2 }, turn))).toBeCloseTo(0.15, 12);
    }
  });

  test('of a right-angled triangle is the height on its longest side', () => {
    const triangle = cornerLoop([
      { x: 0, y: 0 },
      { x: 3, y: 0 },
      { x: 0, y: 4 }
    ]);
    expect(narrowestWidthOf(triangle)).toBeCloseTo(12 / 5, 12);
  });

  test('of an L is that of the lath laid round it', () => {
    const corners = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [0, 2]
    ].map(([x, y]) => ({ x: x!, y: y! }));
    expect(narrowestWidth(corners)).toBeCloseTo(2, 12);
    expect(narrowestWidth(corners.map(({ x, y }) => ({ x, y: y > 1 ? 1.2 : y })))).toBeCloseTo(1.2, 12);
  });

  test('of a circle is its diameter within a thousandth', () => {
    const width = narrowestWidthOf(circleLoop({ x: 1, y: 1 }, 0.5));
    expect(width).toBeLessThanOrEqual(1);
    expect(width).toBeGreaterThan(0.998);
  });

  test('of points in a line is nought', () => {
    expect(narrowestWidth([])).toBe(0);
    expect(narrowestWidth([0, 1, 2].map(at => ({ x: at, y: at })))).toBe(0);
  });
});

describe('first moments', () => {
  test('a rectangle balances in its middle', () => {
    const moment = firstMomentOf(rectangleLoop(0.4, 0.1, { x: 3, y: -2 }, 0));
    expect(moment.x).toBeCloseTo(0.04 * 3.2, 12);
    expect(moment.y).toBeCloseTo(0.04 * -1.95, 12);
  });

  test('a circle balances in its middle, and a hole in it takes its own off', () => {
    const hole = reversedLoop(circleLoop({ x: 2.2, y: 1 }, 0.1));
    const { x, y } = firstMomentOf([...circleLoop({ x: 2, y: 1 }, 0.5), ...hole]);
    expect(x).toBeCloseTo(Math.PI * (0.25 * 2 - 0.01 * 2.2), 12);
    expect(y).toBeCloseTo(Math.PI * (0.25 - 0.01), 12);
  });

  test('a half disc balances four thirds of the radius over pi off its straight side', () => {
    const [from, to] = [
      { x: 1, y: 0 },
      { x: -1, y: 0 }
    ];
    const half = [{ from: to, to: from }, arcByBow(from, to, 1, 'right')!];
    expect(firstMomentOf(half).x).toBeCloseTo(0, 12);
    expect(firstMomentOf(half).y / areaOf(half)).toBeCloseTo(4 / (3 * Math.PI), 12);
  });
});
