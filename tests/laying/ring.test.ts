import { describe, expect, it } from 'vitest';
import { circleLoop, MOST_UNITS, rectangleLoop, regionArea, type Region } from '../../language/geometry/index.ts';
import { layRings, type Rings } from '../../language/laying/bonds/ring.ts';
import { moved, movedRegion } from '../geometry/random-outlines.ts';
import { laidBy, layToEnd, onPlan, randomRegions, wholeCount, wholePlaces } from './laid-on-plan.ts';

const centre = { x: 0, y: 0 };

/** Blocks 200 by 100 mm, joints from 3 to 10 mm. */
const block: Rings = {
  unit: 'block',
  origin: centre,
  direction: 0,
  mirrored: false,
  length: 0.2,
  width: 0.1,
  joint: 0.003,
  mostJoint: 0.01
};

function circle(radius: number): Region {
  return { outer: circleLoop(centre, radius), holes: [] };
}

function someRings(next: () => number): Rings {
  const joint = next() < 0.2 ? 0 : 0.01 * next();
  const width = 0.1 + 0.1 * next();
  return {
    ...block,
    origin: { x: 3 * next() - 1.5, y: 3 * next() - 1.5 },
    direction: 6 * next(),
    mirrored: next() < 0.5,
    length: 0.1 + 0.2 * next(),
    width,
    joint,
    mostJoint: joint + 0.02 + 0.1 * next()
  };
}

function shapeOf({ length, width }: Rings) {
  return { block: rectangleLoop(length, width, centre, 0).map(({ from }) => from) };
}

describe('rings', () => {
  it('the first ring and the one about it (by hand)', () => {
    // Joints may open by 7 mm over 100 mm: half a step of at most asin(0.035) = 2.0058°, so 90 units of 4°, 2° each half.
    // Inner joint 3 mm: radius (3 + 200 cos 2°) / (2 sin 2°) mm = 2906.61 mm.
    const degree = Math.PI / 180;
    const radius = (0.003 + 0.2 * Math.cos(2 * degree)) / (2 * Math.sin(2 * degree));
    expect(radius).toBeCloseTo(2.90661, 5);
    // Outer corners at the root of 3006.61² + 100², a joint to the next ring: 3011.27 mm. 2π × 3011.27 / 203 is 93.2.
    const laid = laidBy(layRings(circle(3.2), { ...block, direction: 0.4 }));
    expect(laid.open.radius).toBeCloseTo(radius, 12);
    expect(laid.open.area).toBeCloseTo(Math.PI * radius ** 2, 9);
    const inRing = (ring: number): number =>
      wholePlaces(laid).filter(
        ({ at }) => Math.abs(Math.hypot(at.x, at.y) - [radius, 3.01127][ring - 1]! - 0.0017) < 0.002
      ).length;
    expect([inRing(1), inRing(2), wholeCount(laid)]).toEqual([90, 93, 183]);
    // The third ring starts at 3115.88 mm: its units, 96 of them, lose what is beyond 3.2 m.
    expect(laid.cuts).toHaveLength(96);
    const corner = Math.hypot(Math.hypot(radius + 0.1, 0.1) + 0.003 + 0.1, 0.1) + 0.003;
    const area = laid.cuts[0]?.pieces[0]?.area ?? NaN;
    // Its outline is a rectangle with a circle's arc for its outer face: strip of the circle over ±100 mm.
    const strip = 0.1 * Math.sqrt(3.2 ** 2 - 0.01) + 3.2 ** 2 * Math.asin(0.1 / 3.2);
    expect(area).toBeCloseTo(strip - 0.2 * corner, 9);
    expect(laid.cuts[0]?.pieces[0]?.outline.some(({ arc }) => arc !== undefined)).toBe(true);
    expect(laid.unitArea).toBeCloseTo(183 * 0.02 + 96 * area, 9);
    expect(laid.unitArea + laid.jointArea + laid.open.area).toBeCloseTo(Math.PI * 3.2 ** 2, 6);
  });

  it('one ring up to the next: nothing is cut, joints by hand', () => {
    // Cobbles 100 mm square with joints from 5 to 30 mm: half a step of at most asin(0.125) = 7.18°, so 26 units.
    const cobble = { ...block, length: 0.1, joint: 0.005, mostJoint: 0.03 };
    const half = Math.PI / 26;
    const radius = (0.005 + 0.1 * Math.cos(half)) / (2 * Math.sin(half));
    const next = Math.hypot(radius + 0.1, 0.05) + 0.005;
    const laid = laidBy(layRings(circle(next), cobble));
    expect([laid.open.radius, wholeCount(laid)]).toEqual([expect.closeTo(radius, 12), 26]);
    // The ring between the two circles less its cobbles.
    expect(laid.jointArea).toBeCloseTo(Math.PI * (next ** 2 - radius ** 2) - 26 * 0.01, 6);
  });

  it('tells rings whose joints open too far (by hand)', () => {
    // The second ring of the first test: 93 units, half a step of 1.9355°, outer faces at 3111.27 mm. Its joints open to
    // 2 × 3111.27 × sin 1.9355° - 200 × cos 1.9355° = 10.27 mm; the third's, 96 of 1.875° to 3215.88 mm, to 10.55 mm.
    const { wide } = laidBy(layRings(circle(3.2), block));
    expect(wide).toEqual([
      { ring: 2, opening: expect.closeTo(0.01027, 5) },
      { ring: 3, opening: expect.closeTo(0.01055, 5) }
    ]);
    expect(laidBy(layRings(circle(6), { ...block, mostJoint: 0.05 })).wide).toEqual([]);
    // Joints that may not open at all: no ring does that.
    expect(layToEnd(layRings(circle(6), { ...block, mostJoint: 0.003 }))).toEqual({ noRingWithin: 0.003 });
  });

  it('units, joints and the open disc make up the region to 1e-6, and no piece lies on another', () => {
    for (const { region, next } of randomRegions(40, 421)) {
      const pattern = someRings(next);
      const laid = laidBy(layRings(region, pattern, 0));
      const area = regionArea(region);
      expect((laid.unitArea + laid.jointArea + laid.open.area) / area).toBeCloseTo(1, 6);
      const plan = onPlan(laid, shapeOf(pattern), region);
      expect(Math.abs(plan.oneByOne - laid.unitArea)).toBeLessThan(1e-5 * area);
      expect(Math.abs(plan.together - plan.oneByOne)).toBeLessThan(1e-6 * area);
      expect(Math.abs(plan.inside - plan.oneByOne)).toBeLessThan(1e-5 * area);
    }
  });

  it('joints between neighbours keep to the least, and one unit more would not', () => {
    const laid = laidBy(layRings(circle(5), block));
    const rings = new Map<string, { x: number; y: number }[]>();
    for (const { at } of wholePlaces(laid)) {
      const reach = Math.hypot(at.x, at.y).toFixed(6);
      rings.set(reach, [...(rings.get(reach) ?? []), at]);
    }
    expect(rings.size).toBeGreaterThan(15);
    for (const [reach, places] of rings) {
      // Inner corners lie on a circle: chords of it alternate between a unit's length and a joint.
      const turn = 2 * Math.asin(0.1 / Number(reach));
      const gap = (count: number): number => 2 * Number(reach) * Math.sin(Math.PI / count - turn / 2);
      expect(gap(places.length)).toBeGreaterThan(0.003 - 1e-5);
      expect(gap(places.length + 1)).toBeLessThan(0.003);
    }
  });

  it('moved, turned and mirrored jobs give equal counts', () => {
    for (const { region, next } of randomRegions(25, 422)) {
      const pattern = someRings(next);
      const motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 300 * next(), y: -200 * next() } };
      const there = laidBy(
        layRings(movedRegion(region, motion), {
          ...pattern,
          origin: moved(pattern.origin, motion),
          direction: motion.turn + (motion.mirrored ? -pattern.direction : pattern.direction),
          mirrored: motion.mirrored !== pattern.mirrored
        })
      );
      const here = laidBy(layRings(region, pattern));
      expect([wholeCount(there), there.cuts.length]).toEqual([wholeCount(here), here.cuts.length]);
      expect(there.jointArea).toBeCloseTo(here.jointArea, 6);
      expect(there.open.area).toBeCloseTo(here.open.area, 6);
    }
  });

  it('a region beside the centre, a keep-out in it, and a ring of holes about the centre', () => {
    const beside = { outer: rectangleLoop(2, 1, { x: 10, y: -0.5 }, 0.3), holes: [circleLoop({ x: 11, y: 0 }, 0.2)] };
    const laid = laidBy(layRings(beside, block));
    expect(laid.open.area).toBe(0);
    expect(laid.unitArea + laid.jointArea).toBeCloseTo(2 - Math.PI * 0.04, 6);
    const round = { outer: circleLoop(centre, 4), holes: [circleLoop(centre, 3.5)] };
    const about = laidBy(layRings(round, block));
    expect(about.open.area).toBe(0);
    expect((about.unitArea + about.jointArea) / regionArea(round)).toBeCloseTo(1, 6);
  });

  it('clips along the border only, and stops when there are too many', () => {
    const sparse = { ...block, mostJoint: 0.03 };
    const region = { outer: rectangleLoop(20, 20, { x: -10, y: -10 }, 0), holes: [] };
    const coarse = laidBy(layRings(region, sparse));
    const shrink = 1 / Math.sqrt(5);
    const fine = laidBy(
      layRings(region, {
        ...sparse,
        length: 0.2 * shrink,
        width: 0.1 * shrink,
        joint: 0.003 * shrink,
        mostJoint: 0.03 * shrink
      })
    );
    expect(wholeCount(fine) / wholeCount(coarse)).toBeGreaterThan(4.8);
    expect(fine.clipped / coarse.clipped).toBeLessThan(2.5);
    const tiny = layRings(circle(30), { ...block, length: 0.002, width: 0.001 }).next();
    expect(tiny.done && 'tooMany' in tiny.value && tiny.value.tooMany).toBeGreaterThan(MOST_UNITS);
    expect(laidBy(layRings(circle(30), { ...block, width: 0 })).unitArea).toBe(0);
  });
});
