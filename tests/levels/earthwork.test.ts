import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areaOf,
  circleLoop,
  cornerLoop,
  firstMomentOf,
  inside,
  type Loop,
  type Point,
  rectangleLoop,
  regionArea,
  reversedLoop
} from '../../language/geometry/index.ts';
import { loopsOf } from '../../language/geometry/regions-of.ts';
import { type GroundSurface, groundThrough } from '../../language/levels/ground.ts';
import type { Spot } from '../../language/levels/spots.ts';
import { heightAt, type Surface } from '../../language/levels/surface.ts';
import { FOOT, loopOf, SQUARE_FOOT } from '../geometry/feet.ts';
import {
  curvedRegions,
  moved,
  type Motion,
  movedLoop,
  randomOutline,
  seededNumbers
} from '../geometry/random-outlines.ts';
import { digTo, expectClose, groundOf, planeOf, spotsAt } from './spots.ts';

const origin = { x: 0, y: 0 };
const CUBIC_FOOT = FOOT * SQUARE_FOOT;
const CUBIC_YARD = 27 * CUBIC_FOOT;

function rectangle(long: number, wide: number, corner: Point = origin): Loop[] {
  return [rectangleLoop(long, wide, corner, 0)];
}

describe('dig volumes with a known answer', () => {
  it('level ground, formation falling 1:50 along 10 m from 0.10 to 0.30 below it, 4 m wide: 8 m³ (arithmetic)', () => {
    const dig = digTo(rectangle(10, 4), groundOf(spotsAt([0, 0, 0])), planeOf(-0.1, -0.02));
    expectClose(dig.cut, 8);
    expect(dig.fill).toBe(0);
    expect(dig.deepest?.depth).toBeCloseTo(0.3, 12);
    expect(dig.shallowest?.depth).toBeCloseTo(0.1, 12);
    expect([dig.deepest?.at.x, dig.shallowest?.at.x]).toEqual([10, 0]);
  });

  it('10 m square, ground tilted about its midline from 0.2 above to 0.2 below: 5 m³ cut, 5 m³ fill (arithmetic)', () => {
    // Over each half of 50 m² the depth runs from 0 to 0.2 m: 0.1 m on average.
    const ground = groundOf(spotsAt([0, 0, -0.2], [10, 0, 0.2], [10, 10, 0.2], [0, 10, -0.2]));
    const dig = digTo(rectangle(10, 10), ground, planeOf(0));
    expectClose(dig.cut, 5);
    expectClose(dig.fill, 5);
    expectClose(dig.notThrough.area, 50);
    expect(dig.notThrough.most).toBeCloseTo(0.2, 12);
  });

  it('topsoil is stripped everywhere and made up where the underside does not get under it (arithmetic)', () => {
    // Along 10 m the underside lies 0 to 0.4 below the ground, topsoil 0.1: short of it over the first 2.5 m, by 0.05 m.
    const dig = digTo(rectangle(10, 4), groundOf(spotsAt([0, 0, 0])), planeOf(0.15, -0.04), {
      depth: 0.15,
      strip: 0.1
    });
    expectClose(dig.notThrough.area, 10);
    expect(dig.notThrough.most).toBeCloseTo(0.1, 12);
    expectClose(dig.fill, 0.5);
    expectClose(dig.cut, 1 + 30 * 0.25);
    expect(dig.shallowest?.depth).toBeCloseTo(0, 12);
  });

  it('O-29: grid cell cut 1.4, 1.4, 1.2 and 1.3 ft over 2500 ft²: 3312.5 ft³, 123 yd³ (construction estimating textbook, ch. 9, ex. 9-8)', () => {
    const volume = gridVolume(50 * FOOT, [1.4, 1.4, 1.2, 1.3], 0);
    expectClose(volume / CUBIC_FOOT, 3312.5);
    expect(Math.round(volume / CUBIC_YARD)).toBe(123);
  });

  it('O-34: borrow grid cell 87.6, 87.6, 87.6 and 88.6 down from 90 ft, 50 ft square: 199 yd³, 2.15 ft on average (secondary source, unnamed)', () => {
    const volume = gridVolume(50 * FOOT, [90 - 87.6, 90 - 87.6, 90 - 87.6, 90 - 88.6], 0);
    expectClose(volume / CUBIC_FOOT / 2500, 2.15);
    expect(Math.round(volume / CUBIC_YARD)).toBe(199);
  });

  it('offsets 0, 2.5, 3.5, 5.0, 4.6, 3.2 and 0 every 15 m: 282 m² (arithmetic)', () => {
    const offsets = [0, 2.5, 3.5, 5, 4.6, 3.2, 0];
    const outer = cornerLoop(offsets.map((y, index) => ({ x: 15 * index, y })));
    expectClose(regionArea({ outer, holes: [] }), 282);
  });

  it('round, with a round hole, on a plane: depth at the middle times the area, and the extremes on the rim', () => {
    const region = [circleLoop({ x: 3, y: 1 }, 2), reversedLoop(circleLoop({ x: 3, y: 1 }, 0.5))];
    const dig = digTo(region, groundOf(spotsAt([0, 0, 1])), planeOf(0.2, 0.03, 0.04));
    expectClose(dig.cut, Math.PI * 3.75 * (0.8 - 0.09 - 0.04));
    expect(dig.deepest?.depth).toBeCloseTo(0.67 + 0.1, 12);
    expect(dig.deepest?.at.x).toBeCloseTo(3 - 1.2, 9);
    expect(dig.shallowest?.at.y).toBeCloseTo(1 + 1.6, 9);
  });
});

/** The mean of the two ways to part a square cell; each is a third of the diagonal's ends and a sixth of the others. */
function gridVolume(side: number, depths: readonly [number, number, number, number], surface: number): number {
  const [a, b, c, d] = depths.map(depth => depth * FOOT) as [number, number, number, number];
  const cell = spotsAt([0, 0, a], [side, 0, b], [side, side, c], [0, side, d]);
  const volumes = [
    digTo(rectangle(side, side), groundOf(cell), planeOf(surface)).cut,
    digTo(rectangle(side, side), groundOf([...cell.slice(1), cell[0]!]), planeOf(surface)).cut
  ] as const;
  expectClose(volumes[0], side * side * ((b + d) / 3 + (a + c) / 6));
  expectClose(volumes[1], side * side * ((a + c) / 3 + (b + d) / 6));
  expectClose(digTo(rectangle(side, side), groundOf(cell, [[0, 2]]), planeOf(surface)).cut, volumes[1]);
  return (volumes[0] + volumes[1]) / 2;
}

describe('volumes against other ways to reckon them', () => {
  it('random planes under random curved outlines: area times the depth at its middle', () => {
    const next = seededNumbers(31);
    for (const { region } of curvedRegions(60, 17)) {
      const loops = loopsOf(region);
      const plane = { at: -1 - next(), alongX: 0.1 * (next() - 0.5), alongY: 0.1 * (next() - 0.5) };
      const spots = Array.from({ length: 12 }, () => {
        const [x, y] = [10 * (next() - 0.5), 10 * (next() - 0.5)];
        return { x, y, z: 0.3 + 0.02 * x - 0.03 * y };
      });
      // Far past the outline, so that all of it lies between spots.
      for (const [x, y] of [
        [-9, -9],
        [9, -9],
        [9, 9],
        [-9, 9]
      ] as const)
        spots.push({ x, y, z: 0.3 + 0.02 * x - 0.03 * y });
      const dig = digTo(loops, groundOf(spots), { kind: 'plane', plane }, { depth: 0.2 });
      const { x, y } = loops.map(firstMomentOf).reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }));
      const area = regionArea(region);
      expectClose(dig.area, area);
      expectClose(dig.cut, (0.5 - plane.at) * area + (0.02 - plane.alongX) * x + (-0.03 - plane.alongY) * y);
      expect([dig.fill, dig.beyond, dig.notThrough.area]).toEqual([0, 0, 0]);
    }
  });

  it('uneven ground under planes, folds and twists: a fine grid of points comes to the same', () => {
    const next = seededNumbers(5);
    for (const surface of someSurfaces(next)) {
      const spots = Array.from({ length: 25 }, () => ({ x: 9 * next() - 3, y: 9 * next() - 3, z: 0.4 * next() }));
      const ground = groundOf(spots);
      const region = randomOutline(next, true);
      const dig = digTo([region], ground, surface, { depth: 0.1, strip: 0.12 });
      const counted = countedOn(region, ground, surface, 0.1, 0.12);
      expectClose(dig.area, areaOf(region));
      for (const key of ['cut', 'fill', 'shallowArea', 'beyond'] as const) {
        const value = key === 'shallowArea' ? dig.notThrough.area : dig[key];
        expect(Math.abs(value - counted[key])).toBeLessThan(3e-3 * dig.area);
      }
      expect(dig.deepest!.depth).toBeGreaterThan(counted.deepest - 1e-9);
      expect(dig.deepest!.depth).toBeLessThan(counted.deepest + 0.02);
      expect(dig.shallowest!.depth).toBeLessThan(counted.shallowest + 1e-9);
      expect(dig.shallowest!.depth).toBeGreaterThan(counted.shallowest - 0.02);
      for (const { depth, at } of [dig.deepest!, dig.shallowest!]) {
        expect(inside(region, at)).toBe(true);
        expectClose(ground.heightAt(at) - heightAt(surface, at) + 0.1, depth, 1e-6);
      }
    }
  });

  it('a twisted rectangle under level ground: closed formulas', () => {
    // z = 0.1 xy on 2 m × 2 m: mean 0.1. Half a metre below ground all is cut.
    const twist: Surface = {
      kind: 'twisted',
      corners: [origin, { x: 2, y: 0 }, { x: 2, y: 2 }, { x: 0, y: 2 }],
      heights: [0, 0, 0.4, 0]
    };
    const below = digTo(rectangle(2, 2), groundOf(spotsAt([0, 0, 0.5])), twist);
    expectClose(below.cut, 4 * (0.5 - 0.1));
    // Ground at 0.1: cut where xy < 1, which is 1 + 2 ln 2 over 4 of it.
    const across = digTo(rectangle(2, 2), groundOf(spotsAt([0, 0, 0.1])), twist);
    const log = Math.log(2);
    expectClose(across.notThrough.area, 3 - 2 * log);
    expectClose(across.cut - across.fill, 0);
    // The integral of 1 − xy: up to x = 1/2 over all of y, ∫ 2 − 2x = 3/4; past it up to y = 1/x, ∫ 1/2x = ln 2.
    expectClose(across.cut, 0.1 * (0.75 + log));
    expect([across.deepest?.depth, across.shallowest?.depth].map(depth => depth?.toFixed(9))).toEqual([
      '0.100000000',
      '-0.300000000'
    ]);
  });

  it('a quadrilateral a hair from a parallelogram, sampled, comes to the same as the exact one', () => {
    const heights = [0, 0.1, -0.1, 0.3] as const;
    const corners = [origin, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }] as const;
    const [a, b, c, d] = corners;
    const ground = groundOf(spotsAt([0, 0, -0.2], [10, 0, 0.2], [10, 10, 0.2], [0, 10, -0.2], [4, 7, 0.4]));
    const region = [circleLoop({ x: 5, y: 5 }, 6), reversedLoop(circleLoop({ x: 6, y: 5 }, 2))];
    const exact = digTo(region, ground, { kind: 'twisted', corners, heights }, { depth: 0.1, strip: 0.1 });
    const hair = { ...c, x: c.x + 1e-7 };
    const near = digTo(
      region,
      ground,
      { kind: 'twisted', corners: [a, b, hair, d], heights },
      { depth: 0.1, strip: 0.1 }
    );
    expect(near.triangles).toBeGreaterThan(0);
    expect(near.triangles).toBeLessThan(4000);
    expect(near.error).toBeLessThan(1e-6 * near.area);
    expect(Math.abs(near.cut - exact.cut)).toBeLessThan(near.error);
    expectClose(near.cut, exact.cut, 1e-6);
    expectClose(near.fill, exact.fill, 1e-6);
    expectClose(near.notThrough.area, exact.notThrough.area, 1e-4);
    expectClose(near.deepest!.depth, exact.deepest!.depth, 1e-6);
    expectClose(near.shallowest!.depth, exact.shallowest!.depth, 1e-6);
  });

  it('arcs over a twist: many chords come to the same', () => {
    const corners = [
      { x: -3, y: -2 },
      { x: 3, y: -2 },
      { x: 4, y: 2 },
      { x: -2, y: 2 }
    ] as const;
    const surface: Surface = { kind: 'twisted', corners, heights: [0, 0.2, -0.1, 0.1] };
    const ground = groundOf(spotsAt([0, 0, 0.08]));
    const circle = circleLoop(origin, 1.5);
    const count = 10_000;
    const chords = cornerLoop(
      Array.from({ length: count }, (_, index) => {
        const angle = (2 * Math.PI * index) / count;
        return { x: 1.5 * Math.cos(angle), y: 1.5 * Math.sin(angle) };
      })
    );
    const [round, chorded] = [digTo([circle], ground, surface), digTo([chords], ground, surface)];
    expect(round.fill).toBeGreaterThan(1e-3);
    expectClose(round.cut, chorded.cut, 1e-7);
    expectClose(round.fill, chorded.fill, 1e-6, 0);
    expectClose(round.deepest!.depth, chorded.deepest!.depth, 1e-7);
  });
});

function someSurfaces(next: () => number): Surface[] {
  const height = (): number => 0.3 * next();
  const plane = () => ({ at: height(), alongX: 0.04 * (next() - 0.5), alongY: 0.04 * (next() - 0.5) });
  return Array.from({ length: 12 }, (_, index): Surface => {
    if (index % 3 === 0) return { kind: 'plane', plane: plane() };
    if (index % 3 === 1) {
      const left = plane();
      // Both planes pass through the fold, the y axis.
      return { kind: 'folded', from: origin, to: { x: 0, y: 1 }, left, right: { ...left, alongX: -left.alongX } };
    }
    const skew = next();
    const corners = [
      { x: -6, y: -6 },
      { x: 6, y: -6 },
      { x: 6 + skew, y: 6 },
      { x: -6 + skew, y: 6 }
    ] as const;
    return { kind: 'twisted', corners, heights: [height(), height(), height(), height()] };
  });
}

function countedOn(region: Loop, ground: GroundSurface, surface: Surface, depth: number, strip: number) {
  const step = 0.08;
  const found = { cut: 0, fill: 0, shallowArea: 0, beyond: 0, deepest: -Infinity, shallowest: Infinity };
  for (let x = -7 + step / 2; x < 7; x += step) {
    for (let y = -7 + step / 2; y < 7; y += step) {
      const at = { x, y };
      if (!inside(region, at)) continue;
      const deep = ground.heightAt(at) - heightAt(surface, at) + depth;
      found.cut += step * step * Math.max(deep, strip);
      found.fill += step * step * Math.max(0, strip - deep);
      found.shallowArea += deep < strip ? step * step : 0;
      found.beyond += ground.beyond(at) ? step * step : 0;
      found.deepest = Math.max(found.deepest, deep);
      found.shallowest = Math.min(found.shallowest, deep);
    }
  }
  return found;
}

describe('laws of dig volumes', () => {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const spot = fc.record({ x: number(-10, 10), y: number(-10, 10), z: number(-0.5, 0.5) });
  const somePlane = fc.record({ at: number(-0.5, 0.5), alongX: number(-0.1, 0.1), alongY: number(-0.1, 0.1) });
  const someTwist = fc.tuple(number(-0.5, 0.5), number(-0.5, 0.5), number(-0.5, 0.5), number(-0.5, 0.5));
  const surfaceFrom = (
    plane: { at: number; alongX: number; alongY: number },
    heights: [number, number, number, number],
    twisted: boolean
  ): Surface =>
    twisted
      ? {
          kind: 'twisted',
          corners: [
            { x: -4, y: -5 },
            { x: 5, y: -4 },
            { x: 6, y: 5 },
            { x: -3, y: 4 }
          ],
          heights
        }
      : { kind: 'plane', plane };

  it('a region in two parts comes to the sum of its parts, and cut less fill to the mean depth', () => {
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 1, maxLength: 20 }),
        somePlane,
        someTwist,
        fc.boolean(),
        number(-4, 4),
        number(0, 0.2),
        (spots, plane, heights, twisted, at, strip) => {
          const ground = groundOf(spots.map((spot, index) => ({ ...spot, x: spot.x + index * 1e-3 })));
          const surface = surfaceFrom(plane, heights, twisted);
          const corner = { x: -5, y: -3 };
          const whole = digTo(rectangle(10, 7, corner), ground, surface, { depth: 0.1, strip });
          const left = digTo(rectangle(at + 5, 7, corner), ground, surface, { depth: 0.1, strip });
          const right = digTo(rectangle(5 - at, 7, { x: at, y: -3 }), ground, surface, { depth: 0.1, strip });
          for (const key of ['area', 'cut', 'fill', 'beyond'] as const)
            expectClose(left[key] + right[key], whole[key], 1e-9, 10);
          expectClose(left.notThrough.area + right.notThrough.area, whole.notThrough.area, 1e-7, 10);
          expectClose(Math.max(left.deepest!.depth, right.deepest!.depth), whole.deepest!.depth, 1e-8);
          expectClose(Math.min(left.shallowest!.depth, right.shallowest!.depth), whole.shallowest!.depth, 1e-8);
          expect(whole.cut - strip * whole.area).toBeGreaterThanOrEqual(-1e-9);
          expect(whole.fill).toBeLessThanOrEqual((whole.notThrough.most + 1e-9) * (whole.notThrough.area + 1e-6));
        }
      ),
      { seed: 7, numRuns: 200 }
    );
  });

  it('moved and turned as a whole, a dig stays the same', () => {
    const next = seededNumbers(23);
    for (let round = 0; round < 40; round++) {
      const spots = Array.from({ length: 15 }, () => ({ x: 9 * next() - 4, y: 9 * next() - 4, z: 0.5 * next() }));
      const corners = [
        { x: -4, y: -5 },
        { x: 5, y: -4 },
        { x: 6, y: 5 },
        { x: -3, y: 4 }
      ] as const;
      const heights = [next(), next(), next(), next()] as const;
      const region = randomOutline(next, true);
      const motion: Motion = { mirrored: false, turn: 7 * next(), move: { x: 500 * next(), y: -900 * next() } };
      const [a, b, c, d] = corners.map(corner => moved(corner, motion)) as [Point, Point, Point, Point];
      const here = digTo([region], groundOf(spots), { kind: 'twisted', corners, heights }, { strip: 0.1 });
      const there = digTo(
        [movedLoop(region, motion)],
        groundOf(spots.map((spot): Spot => ({ ...moved(spot, motion), z: spot.z }))),
        { kind: 'twisted', corners: [a, b, c, d], heights },
        { strip: 0.1 }
      );
      for (const key of ['area', 'cut', 'fill', 'beyond'] as const) expectClose(there[key], here[key], 1e-7);
      expectClose(there.deepest!.depth, here.deepest!.depth, 1e-6);
      expectClose(there.shallowest!.depth, here.shallowest!.depth, 1e-6);
    }
  });

  it('any ground, far off, huge, tiny or thin: finite figures that fit together', () => {
    const next = seededNumbers(77);
    for (let round = 0; round < 1500; round++) {
      const size = 10 ** (Math.floor(6 * next()) - 2);
      const thin = next() < 0.4 ? 10 ** -Math.floor(9 * next()) : 1;
      const far = next() < 0.5 ? 0 : 1e5 * next();
      const motion: Motion = { mirrored: false, turn: 7 * next(), move: { x: far, y: -far } };
      const place = (x: number, y: number): Point => moved({ x, y }, motion);
      const spots = Array.from({ length: 1 + Math.floor(14 * next()) }, () => {
        const [x, y] = next() < 0.5 ? [next(), next()] : [Math.round(4 * next()) / 4, Math.round(4 * next()) / 4];
        return { ...place(size * x, size * thin * y), z: next() };
      });
      const ground = groundThrough(spots);
      if (ground.kind !== 'ground') continue;
      const [skew, reach] = [size * next(), size * 3 ** (4 * next() - 3)];
      const middle = place(size * next(), size * next());
      const region =
        next() < 0.5 ? circleLoop(middle, reach) : rectangleLoop(reach, reach * Math.max(thin, 1e-3), middle, next());
      const plane = { at: next(), alongX: next() - 0.5, alongY: next() - 0.5 };
      const corners = [place(0, 0), place(size, 0), place(size + skew, size), place(skew, size)] as const;
      const surfaces: Surface[] = [
        { kind: 'plane', plane },
        { kind: 'folded', from: middle, to: place(0, 0), left: plane, right: { ...plane, alongX: 0 } },
        { kind: 'twisted', corners, heights: [next(), next(), next(), next()] }
      ];
      const dig = digTo([region], ground, surfaces[round % 3]!, { strip: 0.1 });
      const { area, cut, fill, beyond, notThrough, deepest, shallowest } = dig;
      expectClose(area, areaOf(region), 1e-9, 0);
      expect(beyond).toBeLessThanOrEqual(area * (1 + 1e-9));
      expect(notThrough.area).toBeLessThanOrEqual(area * (1 + 1e-6));
      expect(Math.min(fill, notThrough.area, notThrough.most)).toBeGreaterThanOrEqual(0);
      const mean = (cut - fill) / area;
      const slack = 1e-7 * (1 + Math.abs(mean));
      expect(mean).toBeGreaterThanOrEqual(shallowest!.depth - slack);
      expect(mean).toBeLessThanOrEqual(deepest!.depth + slack);
    }
  });

  it('ground along a line of spots: a prism (arithmetic)', () => {
    // Up from 0 to 1 over 5 m and level after: over 10 m the mean is 0.75, 2 m to either side.
    const ground = groundOf(spotsAt([0, 0, 0], [5, 0, 1]));
    const dig = digTo(rectangle(10, 4, { x: 0, y: -2 }), ground, planeOf(0));
    expectClose(dig.cut, 40 * 0.75);
    expectClose(dig.beyond, 40);
  });

  it('no region, or one of no size, is no earthwork; a region all beyond the spots says so', () => {
    const ground = groundOf(spotsAt([0, 0, 0], [1, 0, 0], [0, 1, 0]));
    expect(digTo([], ground, planeOf(0))).toMatchObject({ area: 0, cut: 0, deepest: undefined });
    expect(digTo([loopOf([1, 1], [1, 1], [1, 1])], ground, planeOf(0)).cut).toBe(0);
    const away = digTo(rectangle(2, 2, { x: 5, y: 5 }), ground, planeOf(-1));
    expectClose(away.beyond, 4);
    // Two rim edges on the edges of the triangle are not beyond it.
    expect(digTo([loopOf([0, 0], [1, 0], [0, 1])], ground, planeOf(-1)).beyond).toBe(0);
  });
});
