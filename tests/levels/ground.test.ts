import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../language/geometry/index.ts';
import { groundThrough } from '../../language/levels/ground.ts';
import type { Spot } from '../../language/levels/spots.ts';
import { seededNumbers } from '../geometry/random-outlines.ts';
import { expectClose, groundOf, onPlaneThrough, spotsAt } from './spots.ts';

const unitSquare = spotsAt([0, 0, 0], [1, 0, 0], [1, 1, 1], [0, 1, 0]);
const middle = { x: 0.5, y: 0.5 };

describe('the ground between spots', () => {
  it('four corners of a rectangle: the diagonal does not start at the corner named first', () => {
    expect(groundOf(unitSquare).heightAt(middle)).toBeCloseTo(0, 12);
    const [a, b, c, d] = unitSquare as [Spot, Spot, Spot, Spot];
    expect(groundOf([b, c, d, a]).heightAt(middle)).toBeCloseTo(0.5, 12);
    expect(groundOf([b, a, c, d]).heightAt(middle)).toBeCloseTo(0.5, 12);
    expect(groundOf([c, a, d, b]).heightAt(middle)).toBeCloseTo(0, 12);
  });

  it('the same wherever the rectangle lies and however it is turned', () => {
    const next = seededNumbers(3);
    for (let round = 0; round < 300; round++) {
      const [turn, x, y, long] = [7 * next(), 1000 * next(), -1000 * next(), 0.5 + 9 * next()];
      const place = (p: Point): Point => ({
        x: x + long * p.x * Math.cos(turn) - p.y * Math.sin(turn),
        y: y + long * p.x * Math.sin(turn) + p.y * Math.cos(turn)
      });
      const spots = unitSquare.map(spot => ({ ...place(spot), z: spot.z }));
      expect(groundOf(spots).heightAt(place(middle))).toBeCloseTo(0, 9);
      expect(groundOf([...spots.slice(1), spots[0]!]).heightAt(place(middle))).toBeCloseTo(0.5, 9);
    }
  });

  it('a grid: in each square the diagonal leaves out the corner named first', () => {
    const spots = Array.from({ length: 25 }, (_, index) => {
      const [x, y] = [index % 5, Math.floor(index / 5)];
      return { x, y, z: x === 2 && y === 2 ? 1 : 0 };
    });
    const ground = groundOf(spots);
    expect(ground.heightAt({ x: 2.5, y: 2.5 })).toBeCloseTo(0, 12);
    expect(ground.heightAt({ x: 1.5, y: 1.5 })).toBeCloseTo(0, 12);
    expect(ground.heightAt({ x: 2.5, y: 1.5 })).toBeCloseTo(0.5, 12);
    expect(ground.heightAt({ x: 1.5, y: 2.5 })).toBeCloseTo(0.5, 12);
  });

  it('six spots round a circle: the corner named first is cut off, then the next', () => {
    const spots = Array.from({ length: 6 }, (_, index) => {
      const angle = (index * Math.PI) / 3;
      return { x: Math.cos(angle), y: Math.sin(angle), z: index === 0 ? 1 : 0 };
    });
    // Between spots 1 and 5 runs an edge: behind it all is level.
    expect(groundOf(spots).heightAt({ x: 0.49, y: 0 })).toBeCloseTo(0, 9);
    expect(groundOf(spots).heightAt({ x: 0.75, y: 0 })).toBeCloseTo(0.5, 9);
  });

  it('follows break lines, also through other spots', () => {
    expect(groundOf(unitSquare, [[0, 2]]).heightAt(middle)).toBeCloseTo(0.5, 12);
    expect(groundOf(unitSquare, [[1, 3]]).heightAt(middle)).toBeCloseTo(0, 12);
    // A ditch from end to end, with a spot on the way: without the line the banks join across it.
    const banks = spotsAt([0, -1, 0], [10, -1, 0], [0, 1, 0], [10, 1, 0], [5, 1, 0], [5, -1, 0], [4, -1, 0], [4, 1, 0]);
    const ditch = [...banks, ...spotsAt([-9, 0, -1], [5, 0, -1], [19, 0, -1])];
    expect(groundOf(ditch).heightAt({ x: 9, y: 0 })).toBeGreaterThan(-0.5);
    const along = groundOf(ditch, [[8, 10]]);
    for (const x of [-8, 0, 3, 5, 9, 18]) expect(along.heightAt({ x, y: 0 })).toBeCloseTo(-1, 9);
  });

  it('break lines that cross, name no spot, or repeat each other', () => {
    expect(
      groundThrough(unitSquare, [
        [0, 1, 3],
        [0, 2]
      ])
    ).toEqual({
      kind: 'break-lines-cross',
      first: { line: 0, from: 1, to: 3 },
      second: { line: 1, from: 0, to: 2 }
    });
    expect(groundThrough(unitSquare, [[0, 9]])).toEqual({ kind: 'no-such-spot', line: 0, spot: 9 });
    expect(groundThrough(unitSquare, [[0, 2, 0, 0], [2, 0], [1], []]).kind).toBe('ground');
  });

  it('a spot named twice: once when the heights agree, a fault when not', () => {
    const twice = [...unitSquare, { x: 1, y: 1, z: 1 }];
    expect(groundOf(twice, [[0, 4]]).heightAt(middle)).toBeCloseTo(0.5, 12);
    expect(groundThrough([...unitSquare, { x: 1, y: 1, z: 1.01 }])).toEqual({
      kind: 'two-heights',
      first: 2,
      second: 4
    });
    expect(groundThrough([])).toEqual({ kind: 'no-spots' });
  });

  it('one spot is level ground, spots in one line give the nearest height on it', () => {
    const level = groundOf(spotsAt([3, 4, 1.5]));
    expect(level.heightAt({ x: -800, y: 3 })).toBe(1.5);
    expect(level.beyond({ x: 3, y: 4.1 })).toBe(true);
    const line = groundOf(spotsAt([0, 0, 0], [10, 10, 1], [5, 5, 3]), [[0, 1]]);
    expect(line.heightAt({ x: 2.5 - 7, y: 2.5 + 7 })).toBeCloseTo(1.5, 12);
    expect(line.heightAt({ x: 7.5 + 7, y: 7.5 - 7 })).toBeCloseTo(2, 12);
    expect(line.heightAt({ x: 20, y: 30 })).toBeCloseTo(1, 12);
    expect(line.heightAt({ x: -20, y: -1 })).toBeCloseTo(0, 12);
    expect([line.beyond({ x: 1, y: 1 }), line.beyond({ x: 1, y: 1.01 })]).toEqual([false, true]);
  });

  it('beyond the spots: as high as the nearest place of their hull', () => {
    const ground = groundOf(spotsAt([0, 0, 0], [10, 0, 1], [10, 8, 2], [0, 8, 3], [4, 4, 9]));
    expect(ground.heightAt({ x: 5, y: -6 })).toBeCloseTo(0.5, 12);
    expect(ground.heightAt({ x: 17, y: 2 })).toBeCloseTo(1.25, 12);
    expect(ground.heightAt({ x: 11, y: 30 })).toBeCloseTo(2, 12);
    expect(ground.beyond({ x: 5, y: -2e-6 })).toBe(true);
    expect([ground.beyond({ x: 5, y: 0 }), ground.beyond({ x: 5, y: -5e-7 })]).toEqual([false, false]);
  });

  it('a spot on a straight rim gives the height beyond it, a hair inside or out', () => {
    for (const hair of [0, 1e-16, -1e-16, 1e-9, -1e-9, 9e-7, -9e-7]) {
      const ground = groundOf(spotsAt([0, 0, 0], [5, hair, 1], [10, 0, 0], [10, 8, 0], [0, 8, 0]));
      expect(ground.heightAt({ x: 5, y: -3 })).toBeCloseTo(1, 5);
      expect(ground.heightAt({ x: 2.5, y: -3 })).toBeCloseTo(0.5, 5);
    }
  });
});

describe('the ground as a whole', () => {
  const coordinate = fc.oneof(
    fc.integer({ min: -3, max: 3 }),
    fc.double({ min: -20, max: 20, noNaN: true }),
    fc.double({ min: -1e5, max: 1e5, noNaN: true }),
    fc.integer({ min: -5, max: 5 }).map(n => n * 1e-7),
    fc.integer({ min: -5, max: 5 }).map(n => 1 + n * 1e-13)
  );
  const spot = fc.record({ x: coordinate, y: coordinate, z: fc.integer({ min: -2, max: 2 }) });
  const spots = fc.array(spot, { maxLength: 25 });
  const inLine = fc
    .tuple(fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { maxLength: 12 }), coordinate, coordinate)
    .map(([shares, x, y]) => shares.map(share => ({ x: share * x, y: share * y + 0.1, z: Math.round(share) % 3 })));
  const lines = fc.array(fc.array(fc.nat({ max: 12 }), { maxLength: 5 }), { maxLength: 3 });

  it('any spots and break lines give ground or a fault, and every height lies between those of the spots', () => {
    fc.assert(
      fc.property(fc.oneof(spots, inLine), lines, coordinate, coordinate, (spots, lines, x, y) => {
        const ground = groundThrough(spots, lines);
        if (ground.kind !== 'ground') return;
        const heights = spots.map(({ z }) => z);
        for (const at of [{ x, y }, ...spots]) {
          const height = ground.heightAt(at);
          expect(height).toBeGreaterThanOrEqual(Math.min(...heights) - 1e-3);
          expect(height).toBeLessThanOrEqual(Math.max(...heights) + 1e-3);
        }
      }),
      { seed: 41, numRuns: 4000 }
    );
  });

  it('passes through its spots, and its parts fill any box once', () => {
    const next = seededNumbers(8);
    for (let round = 0; round < 100; round++) {
      const spots = randomSpots(next, 3 + Math.floor(next() * 40));
      const ground = groundOf(spots);
      for (const spot of spots) expectClose(ground.heightAt(spot), spot.z);
      const box = { left: -15 * next(), right: 12 * next() + 1, bottom: -4, top: 9 };
      const parts = ground.partsWithin(box);
      expectClose(
        parts.reduce((sum, { corners }) => sum + areaOf(corners), 0),
        (box.right - box.left) * (box.top - box.bottom)
      );
    }
  });

  it('is the triangulation whose circles hold no other spot (found by trying all triples)', () => {
    const next = seededNumbers(12);
    for (let round = 0; round < 20; round++) {
      const spots = randomSpots(next, 14);
      const ground = groundOf(spots);
      for (const triple of emptyCircles(spots)) {
        const share = [next(), next(), next()];
        const sum = share[0]! + share[1]! + share[2]!;
        const at = triple.reduce(
          ({ x, y }, spot, index) => ({ x: x + (spot.x * share[index]!) / sum, y: y + (spot.y * share[index]!) / sum }),
          { x: 0, y: 0 }
        );
        expectClose(ground.heightAt(at), onPlaneThrough(triple, at), 1e-8);
      }
    }
  });
});

function randomSpots(next: () => number, count: number): Spot[] {
  return Array.from({ length: count }, () => ({ x: 10 * next(), y: 8 * next(), z: next() }));
}

function areaOf(corners: readonly Point[]): number {
  return corners.reduce((sum, { x, y }, index) => {
    const next = corners[(index + 1) % corners.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

function emptyCircles(spots: readonly Spot[]): [Spot, Spot, Spot][] {
  const found: [Spot, Spot, Spot][] = [];
  for (const [i, a] of spots.entries()) {
    for (const [j, b] of spots.slice(i + 1).entries()) {
      for (const c of spots.slice(i + j + 2)) {
        const twice = 2 * ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y));
        const [p, q] = [(b.x - a.x) ** 2 + (b.y - a.y) ** 2, (c.x - a.x) ** 2 + (c.y - a.y) ** 2];
        const centre = {
          x: a.x + ((c.y - a.y) * p - (b.y - a.y) * q) / twice,
          y: a.y + ((b.x - a.x) * q - (c.x - a.x) * p) / twice
        };
        const reach = Math.hypot(a.x - centre.x, a.y - centre.y);
        const isEmpty = spots.every(
          spot => spot === a || spot === b || spot === c || Math.hypot(spot.x - centre.x, spot.y - centre.y) > reach
        );
        if (isEmpty) found.push([a, b, c]);
      }
    }
  }
  return found;
}
