// Heights and slopes of finished surfaces, against formulas, differences and a drive worked by hand.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance } from '../../language/geometry/index.ts';
import { bestPlane } from '../../language/levels/best-plane.ts';
import { foldAlong } from '../../language/levels/fold.ts';
import { combinedFalls, planeAlong, planeRising, planeThrough, twistOf } from '../../language/levels/planes.ts';
import { gradientAt, heightAt, type Surface } from '../../language/levels/surface.ts';
import { twistedSurface } from '../../language/levels/twisted.ts';
import { stationOf } from '../../language/setting-out/stationed-line.ts';
import {
  anyAlong,
  anyPlane,
  anyPoint,
  anySurface,
  anyTwisted,
  anyWideTwist,
  bentLine,
  drive,
  sound
} from './surfaces.ts';

const SEED = 2604;

function steepness({ x, y }: { x: number; y: number }): number {
  return Math.hypot(x, y);
}

describe('planes', () => {
  test('through any three points: all three lie on it, and it is the best plane through them', () => {
    const levelled = fc.record({ point: anyPoint, height: fc.double({ min: -3, max: 3, noNaN: true }) });
    fc.assert(
      fc.property(anyPlane, levelled, levelled, levelled, (plane, ...points) => {
        const onPlane = points.map(({ point }) => ({ point, height: heightAt({ kind: 'plane', plane }, point) }));
        const [a, b, c] = onPlane;
        const through = planeThrough(a!, b!, c!);
        if ('fault' in through) return;
        for (const { point, height } of onPlane) {
          expect(heightAt({ kind: 'plane', plane: through }, point)).toBeCloseTo(height, 9);
        }
        const best = bestPlane(
          onPlane.map(({ point }) => point),
          onPlane.map(({ height }) => height)
        );
        if ('fault' in best) return;
        expect(best.deviation).toBeCloseTo(0, 9);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  test('points in one line, or on one spot, are told', () => {
    const at = (x: number, y: number): Parameters<typeof planeThrough>[0] => ({ point: { x, y }, height: 1 });
    expect(planeThrough(at(0, 0), at(1, 1), at(5, 5))).toEqual({ fault: 'in-one-line' });
    expect(planeThrough(at(2, 2), at(2, 2), at(2, 2))).toEqual({ fault: 'in-one-line' });
    expect(bestPlane([], [])).toEqual({ fault: 'in-one-line' });
    expect(planeAlong(at(1, 1), at(1, 1), 0.02, 'left')).toEqual({ fault: 'no-length' });
  });

  test('heights along a line and a fall square to it', () => {
    const from = { point: { x: 1, y: 1 }, height: 10 };
    const to = { point: { x: 4, y: 5 }, height: 10.1 };
    const plane = sound(planeAlong(from, to, 1 / 40, 'right'));
    const surface: Surface = { kind: 'plane', plane };
    expect(heightAt(surface, to.point)).toBeCloseTo(10.1, 12);
    // Five metres square to the line, to its right.
    expect(heightAt(surface, { x: 1 + 4, y: 1 - 3 })).toBeCloseTo(10 - 5 / 40, 12);
    const left = sound(planeAlong(from, to, 1 / 40, 'left'));
    expect(heightAt({ kind: 'plane', plane: left }, { x: 1 - 4, y: 1 + 3 })).toBeCloseTo(10 - 5 / 40, 12);
  });

  test('1/4 in per ft is 2.083 % (BIA Technical Note 14A)', () => {
    const perFoot = 0.25 / 12;
    const slope = combinedFalls([{ direction: { x: 0, y: 3 }, fall: perFoot }]);
    expect(100 * steepness(sound(slope))).toBeCloseTo(2.083, 3);
  });

  test('1:40 across and 1:80 along together fall 1:35.8 (arithmetic)', () => {
    const slope = sound(
      combinedFalls([
        { direction: { x: 2, y: 0 }, fall: 1 / 40 },
        { direction: { x: 0, y: -1 }, fall: 1 / 80 }
      ])
    );
    expect(1 / steepness(slope)).toBeCloseTo(35.8, 1);
    expect(slope).toEqual({ x: -1 / 40, y: 1 / 80 });
  });

  test('two falls in any directions both come out as said; a third must agree', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, anyPlane, (a, b, c, { alongX, alongY }) => {
        const falls = [a, b, c].map(direction => ({
          direction,
          fall: -(alongX * direction.x + alongY * direction.y) / Math.max(1e-300, steepness(direction))
        }));
        const slope = combinedFalls(falls);
        if ('fault' in slope) return;
        for (const { direction, fall } of falls) {
          expect((slope.x * direction.x + slope.y * direction.y) / steepness(direction)).toBeCloseTo(-fall, 5);
        }
      }),
      { seed: SEED }
    );
    const along = { direction: { x: 1, y: 0 }, fall: 0.01 };
    expect(combinedFalls([along, { direction: { x: -2, y: 0 }, fall: 0.01 }])).toEqual({
      fault: 'falls-disagree',
      index: 1
    });
    expect(combinedFalls([along, { direction: { x: 0, y: 0 }, fall: 0.01 }])).toEqual({ fault: 'no-length', index: 1 });
    expect(combinedFalls([])).toEqual({ x: 0, y: 0 });
  });

  test('a plane carried on from two heights of a drive, rising 1:50 away: steepest 1:29', () => {
    const t1 = { point: { x: 5.2, y: 4 }, height: heightAt(drive, { x: 5.2, y: 4 }) };
    const t4 = { point: { x: 5.2, y: 9.5 }, height: heightAt(drive, { x: 5.2, y: 9.5 }) };
    const plane = sound(planeAlong(t1, t4, -1 / 50, 'right'));
    expect(heightAt({ kind: 'plane', plane }, { x: 9.4, y: 4 })).toBeCloseTo(10.179, 3);
    expect(heightAt({ kind: 'plane', plane }, { x: 9.4, y: 9.5 })).toBeCloseTo(10.33, 3);
    expect(1 / steepness(gradientAt({ kind: 'plane', plane }, t1.point))).toBeCloseTo(29.4, 1);
  });
});

describe('four corners that lie in no plane', () => {
  const levelled = drive.corners.map((point, index) => ({ point, height: drive.heights[index]! }));

  test('the twist of a drive is 14 mm', () => {
    const [a, b, c, d] = levelled;
    expect(twistOf([a!, b!, c!, d!])).toBeCloseTo(0.014, 12);
    expect(bestPlane(drive.corners, drive.heights)).toMatchObject({ deviation: expect.closeTo(-0.0035, 9) as number });
  });

  test('heights in between are bilinear', () => {
    expect(heightAt(drive, { x: 3.1, y: 6.2 })).toBeCloseTo(10.158, 3);
    expect(heightAt(drive, { x: 5.2, y: 4 })).toBeCloseTo(10.095, 3);
    expect(heightAt(drive, { x: 5.2, y: 9.5 })).toBeCloseTo(10.246, 3);
    expect(1 / gradientAt(drive, { x: 0, y: 3 }).y).toBeCloseTo(34.9, 1);
    expect(1 / gradientAt(drive, { x: 5.2, y: 3 }).y).toBeCloseTo(36.4, 1);
  });

  test('any quadrilateral takes its heights at its corners, straight along its sides and across its middle', () => {
    fc.assert(
      fc.property(anyTwisted, fc.double({ min: 0, max: 1, noNaN: true }), ({ corners, heights }, share) => {
        const surface = twistedSurface(corners, heights);
        if ('fault' in surface) return;
        for (const [index, from] of corners.entries()) {
          const next = (index + 1) % 4;
          const to = corners[next]!;
          const on = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
          const expected = heights[index]! + share * (heights[next]! - heights[index]!);
          expect(heightAt(surface, on)).toBeCloseTo(expected, 6);
        }
        const mean = (numbers: number[]): number => numbers.reduce((sum, number) => sum + number, 0) / 4;
        const middle = { x: mean(corners.map(({ x }) => x)), y: mean(corners.map(({ y }) => y)) };
        expect(heightAt(surface, middle)).toBeCloseTo(mean([...heights]), 6);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  test('heights of a plane stay on it everywhere, however far beyond the corners', () => {
    fc.assert(
      fc.property(anyTwisted, anyPlane, anyPoint, ({ corners }, plane, point) => {
        const flat: Surface = { kind: 'plane', plane };
        const [a, b, c, d] = corners.map(corner => heightAt(flat, corner));
        const surface = twistedSurface(corners, [a!, b!, c!, d!]);
        if ('fault' in surface) return;
        const far = { x: 30 * point.x, y: 30 * point.y };
        expect(heightAt(surface, far)).toBeCloseTo(heightAt(flat, far), 4);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  test('corners of a trapezium whose sides meet: the surface runs on by its tangent, without a jump', () => {
    const surface = sound(
      twistedSurface(
        [
          { x: 0, y: 0 },
          { x: 4, y: 0 },
          { x: 3, y: 2 },
          { x: 1, y: 2 }
        ],
        [0, 0, 0.1, 0.2]
      )
    );
    // The sides meet at (2, 4), where every line between them would.
    for (let y = 1; y < 20; y += 0.01) {
      const step = Math.abs(heightAt(surface, { x: 2.3, y: y + 0.01 }) - heightAt(surface, { x: 2.3, y }));
      expect(step).toBeLessThan(0.003);
    }
  });

  test('corners that go round no outward area are told', () => {
    const [a, b, c, d] = drive.corners;
    expect(twistedSurface([a, c, b, d], drive.heights)).toEqual({ fault: 'no-quadrilateral' });
    expect(twistedSurface([a, b, { x: 2, y: 1 }, d], drive.heights)).toEqual({ fault: 'no-quadrilateral' });
    expect(twistedSurface([a, a, a, a], drive.heights)).toEqual({ fault: 'no-quadrilateral' });
    expect('fault' in twistedSurface([d, c, b, a], drive.heights)).toBe(false);
  });

  test('a fold from corner to corner: both triangles pass through their corners', () => {
    const folded = sound(foldAlong(levelled, 3, 1));
    for (const { point, height } of levelled) expect(heightAt(folded, point)).toBeCloseTo(height, 12);
    // On the fold it is straight: half of both ends, not the mean of all four corners.
    expect(heightAt(folded, { x: 2.6, y: 5.7 })).toBeCloseTo((9.985 + 10.312) / 2, 9);
  });

  test('a side of a fold with more corners must be flat to half a millimetre', () => {
    const five = (lift: number): typeof levelled => [
      { point: { x: 0, y: 0 }, height: 0 },
      { point: { x: 4, y: 0 }, height: 0 },
      { point: { x: 4, y: 3 }, height: 0.06 },
      { point: { x: 0, y: 3 }, height: 0.06 + lift },
      { point: { x: -2, y: 1.5 }, height: 0.1 }
    ];
    expect('fault' in foldAlong(five(0), 0, 3)).toBe(false);
    expect(foldAlong(five(0.01), 0, 3)).toMatchObject({
      fault: 'not-flat',
      deviation: expect.closeTo(0.005, 9) as number
    });
    expect(foldAlong(five(0), 0, 1)).toEqual({ fault: 'no-fold' });
    expect(foldAlong(five(0), 2, 2)).toEqual({ fault: 'no-fold' });
    expect(foldAlong(five(0), 0, 7)).toEqual({ fault: 'no-fold' });
  });
});

describe('a surface along a line', () => {
  const line = bentLine();
  const stations = [
    { at: 0, height: 10 },
    { at: 6, height: 10.06 },
    { at: line.length, height: 10.06 }
  ];

  test('height straight between stations, on arcs too, and the last grade prolonged', () => {
    const surface: Surface = { kind: 'along', line, stations, across: { kind: 'fall', toLeft: 0.02 } };
    expect(heightAt(surface, { x: 3, y: 0 })).toBeCloseTo(10.03, 12);
    expect(heightAt(surface, { x: 3, y: 1 })).toBeCloseTo(10.01, 12);
    expect(heightAt(surface, { x: 3, y: -1 })).toBeCloseTo(10.05, 12);
    expect(heightAt(surface, { x: -2, y: 0 })).toBeCloseTo(9.98, 12);
    const round = { x: 6 + 3 * Math.SQRT1_2, y: 4 - 3 * Math.SQRT1_2 };
    expect(heightAt(surface, round)).toBeCloseTo(10.06 - 0.02, 12);
  });

  test('a camber falls to both sides', () => {
    const surface: Surface = { kind: 'along', line, stations, across: { kind: 'camber', fall: 0.025 } };
    for (const y of [2, -2]) expect(heightAt(surface, { x: 3, y })).toBeCloseTo(10.03 - 0.05, 12);
  });
});

describe('any surface', () => {
  const wild = fc.double({ min: -1e5, max: 1e5, noNaN: true });

  test('has a height and a slope wherever it is asked, whatever it was given', () => {
    const spot = fc.oneof(anyPoint, fc.constant({ x: 0, y: 0 }), fc.record({ x: wild, y: wild }));
    const degenerate = fc
      .tuple(fc.array(fc.constantFrom(0, 1, 1 + 1e-9, 1e5), { minLength: 8, maxLength: 8 }), anyTwisted)
      .map(([n, { heights }]): Surface => {
        const corner = (index: number): { x: number; y: number } => ({ x: n[index]!, y: n[index + 1]! });
        return { kind: 'twisted', corners: [corner(0), corner(2), corner(4), corner(6)], heights };
      });
    fc.assert(
      fc.property(fc.oneof(anySurface, degenerate), spot, (surface, point) => {
        const { x, y } = gradientAt(surface, point);
        expect([heightAt(surface, point), x, y].every(Number.isFinite)).toBe(true);
      }),
      { seed: SEED, numRuns: 3000 }
    );
  });

  test('its slope is the rise per metre, wherever it has no bend', () => {
    const step = 1e-5;
    let compared = 0;
    fc.assert(
      fc.property(fc.oneof(anyWideTwist, anyAlong), anyPoint, (surface, point) => {
        const rise = (by: { x: number; y: number }): number =>
          heightAt(surface, { x: point.x + by.x, y: point.y + by.y }) - heightAt(surface, point);
        const ahead = { x: rise({ x: step, y: 0 }) / step, y: rise({ x: 0, y: step }) / step };
        const back = { x: -rise({ x: -step, y: 0 }) / step, y: -rise({ x: 0, y: -step }) / step };
        // A bend or a jump shows in the difference between forward and back.
        if (distance(ahead, back) > 1e-3 * (1 + steepness(ahead))) return;
        compared++;
        const { x, y } = gradientAt(surface, point);
        const tolerance = 2e-3 * (1 + steepness({ x, y }));
        expect(Math.abs(x - (ahead.x + back.x) / 2)).toBeLessThan(tolerance);
        expect(Math.abs(y - (ahead.y + back.y) / 2)).toBeLessThan(tolerance);
      }),
      { seed: SEED, numRuns: 2000 }
    );
    expect(compared).toBeGreaterThan(1500);
  });

  test('a slope pointing uphill through a point', () => {
    const plane = planeRising({ point: { x: 3, y: 4 }, height: 2 }, { x: 0.1, y: -0.2 });
    expect(heightAt({ kind: 'plane', plane }, { x: 4, y: 6 })).toBeCloseTo(2 + 0.1 - 0.4, 12);
    expect(stationOf(bentLine(), { x: 1, y: 1 })).toEqual({ at: 1, off: 1 });
  });
});
