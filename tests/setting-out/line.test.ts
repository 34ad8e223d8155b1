// Lines with stations and strips along them, against formulas for straights and arcs.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaOf, distance, distanceToSide, inside, type Side } from '../../language/geometry/index.ts';
import { signedAreaOf } from '../../language/geometry/outline.ts';
import {
  directionAt,
  lengthOf,
  pointAt,
  stationedLine,
  stationOf,
  type StationedLine
} from '../../language/setting-out/stationed-line.ts';
import { loopOfStrip, stripOutline } from '../../language/setting-out/strip-outline.ts';
import { anyPoint, bentLine, sound } from '../levels/surfaces.ts';

const SEED = 3107;

function lineThrough(...points: readonly (readonly [number, number])[]): StationedLine {
  const path = points.slice(1).map(([x, y], index): Side => {
    const [fromX, fromY] = points[index]!;
    return { from: { x: fromX, y: fromY }, to: { x, y } };
  });
  return sound(stationedLine(path));
}

describe('a line with stations', () => {
  test('the station of a point is that of the nearest place on the line', () => {
    const line = bentLine();
    fc.assert(
      fc.property(anyPoint, point => {
        const { at, off } = stationOf(line, point);
        const nearest = Math.min(...line.parts.map(({ side }) => distanceToSide(side, point)));
        const on = pointAt(line, at, 0);
        if (at >= 0 && at <= line.length) {
          expect(distance(on, point)).toBeCloseTo(nearest, 9);
          expect(Math.abs(off)).toBeCloseTo(nearest, 9);
        } else expect(distance(on, point)).toBeLessThanOrEqual(nearest + 1e-9);
      }),
      { seed: SEED, numRuns: 1000 }
    );
  });

  test('a place by station and offset is found again, near the line and beyond its ends', () => {
    const line = bentLine();
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: line.length + 5, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (at, off) => {
          const bend = line.parts[3]!.start;
          if (Math.abs(at - bend) < 2) return;
          const found = stationOf(line, pointAt(line, at, off));
          expect(found.at).toBeCloseTo(at, 9);
          expect(found.off).toBeCloseTo(off, 9);
        }
      ),
      { seed: SEED, numRuns: 1000 }
    );
  });

  test('left is left and the way turns with the arc', () => {
    const line = bentLine();
    expect(lengthOf(line)).toBeCloseTo(6 + 2 * Math.PI + 5 + Math.hypot(6, 3), 12);
    expect(directionAt(line, 3)).toEqual({ x: 1, y: 0 });
    const { x, y } = directionAt(line, 6 + Math.PI);
    expect([x, y]).toEqual([expect.closeTo(Math.SQRT1_2, 12), expect.closeTo(Math.SQRT1_2, 12)]);
    expect(stationOf(line, { x: 6, y: 4 })).toEqual({ at: 6, off: 4 });
    // Outside a bend to the right the nearest place is the bend itself, and the point lies to its left.
    const outside = stationOf(lineThrough([0, 0], [4, 0], [4, -4]), { x: 5, y: 1 });
    expect(outside).toEqual({ at: 4, off: Math.SQRT2 });
    expect(stationOf(lineThrough([0, 0], [4, 0], [0, 0]), { x: 6, y: 0 }).at).toBe(4);
  });

  test('sides that do not follow each other, or have no length, are told', () => {
    const from = { x: 0, y: 0 };
    const to = { x: 1, y: 0 };
    expect(stationedLine([])).toEqual({ fault: 'no-length' });
    expect(stationedLine([{ from, to: from }])).toEqual({ fault: 'no-length' });
    expect(
      stationedLine([
        { from, to },
        { from: { x: 1.1, y: 0 }, to }
      ])
    ).toEqual({ fault: 'gap', side: 1 });
  });
});

describe('a strip along a line', () => {
  test('of one width: its area is width times length, exactly, along straights, arcs and bends', () => {
    const line = bentLine();
    const sides = sound(stripOutline(line, [{ at: 0, width: 3 }]));
    const loop = loopOfStrip(sides);
    expect(signedAreaOf(loop) / (3 * line.length)).toBeCloseTo(1, 12);
    expect(loop.filter(side => side.arc)).toHaveLength(2);
    expect(sides.map(({ name }) => name).join(' ')).toBe('right right right right end left left left left start');
    for (const [index, side] of loop.entries()) expect(loop[(index + 1) % loop.length]!.from).toEqual(side.to);
  });

  test('of changing width: its area is the width summed along the line', () => {
    const widths = [
      { at: 0, width: 2 },
      { at: 4, width: 2 },
      { at: 13, width: 4 },
      { at: 17, width: 3 }
    ];
    const line = sound(
      stationedLine(
        bentLine()
          .parts.slice(0, 3)
          .map(({ side }) => side)
      )
    );
    const expected = 4 * 2 + 9 * 3 + 4 * 3.5 + (line.length - 17) * 3;
    const loop = loopOfStrip(sound(stripOutline(line, widths)));
    expect(signedAreaOf(loop) / expected).toBeCloseTo(1, 7);
    for (let at = 0.5; at < line.length; at += 0.25) {
      const half = at < 4 ? 1 : at < 13 ? 1 + (at - 4) / 9 : at < 17 ? 2 - (at - 13) / 8 : 1.5;
      for (const off of [half, -half]) {
        const edge = pointAt(line, at, off);
        expect(Math.min(...loop.map(side => distanceToSide(side, edge)))).toBeLessThan(1e-5);
      }
    }
    expect(inside(loop, pointAt(line, 8.5, 1.49))).toBe(true);
    expect(inside(loop, pointAt(line, 8.5, -1.51))).toBe(false);
  });

  test('that narrows to a point has no side there', () => {
    const tapered = sound(
      stripOutline(lineThrough([0, 0], [5, 0]), [
        { at: 0, width: 2 },
        { at: 5, width: 0 }
      ])
    );
    expect(tapered.map(({ name }) => name)).toEqual(['right', 'left', 'start']);
    expect(areaOf(loopOfStrip(tapered))).toBeCloseTo(5, 12);
  });

  test('a bend tighter than half the width is told, at half the width it is a corner', () => {
    expect(stripOutline(bentLine(1.4), [{ at: 0, width: 3 }])).toEqual({ fault: 'too-tight', at: 6 });
    const pivot = loopOfStrip(sound(stripOutline(bentLine(1.5), [{ at: 0, width: 3 }])));
    expect(pivot.filter(side => side.arc)).toHaveLength(1);
    expect(areaOf(pivot) / (3 * bentLine(1.5).length)).toBeCloseTo(1, 12);
  });

  test('a strip that folds over itself, or has no width, is told', () => {
    expect(stripOutline(lineThrough([0, 0], [5, 0], [0, 0.5]), [{ at: 0, width: 2 }])).toMatchObject({
      fault: 'folds-over'
    });
    expect(stripOutline(lineThrough([0, 0], [5, 0], [5, 1], [0, 1]), [{ at: 0, width: 2 }])).toMatchObject({
      fault: 'folds-over'
    });
    for (const widths of [[], [{ at: 0, width: 0 }], [{ at: 0, width: -1 }]]) {
      expect(stripOutline(bentLine(), widths)).toEqual({ fault: 'no-width' });
    }
  });

  test('whatever the line and widths, there is an outline round an area, or a fault', () => {
    const width = fc.record({
      at: fc.double({ min: -5, max: 30, noNaN: true }),
      width: fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 3, noNaN: true }))
    });
    const spot = fc.record({ x: fc.integer({ min: 0, max: 9 }), y: fc.integer({ min: 0, max: 9 }) });
    let made = 0;
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 2, maxLength: 4 }),
        fc.array(width, { maxLength: 4 }),
        (spots, widths) => {
          const line = stationedLine(spots.slice(1).map((to, index) => ({ from: spots[index]!, to })));
          if ('fault' in line) return;
          const strip = stripOutline(
            line,
            widths.sort((a, b) => a.at - b.at)
          );
          if ('fault' in strip) return;
          made++;
          const area = signedAreaOf(loopOfStrip(strip));
          expect(area).toBeGreaterThan(0);
          expect(area).toBeLessThan(1e4);
        }
      ),
      { seed: SEED, numRuns: 2000 }
    );
    expect(made).toBeGreaterThan(200);
  });
});
