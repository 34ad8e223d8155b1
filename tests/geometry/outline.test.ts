import { describe, expect, it } from 'vitest';
import {
  arcByBow,
  arcByRadius,
  arcThrough,
  areaOf,
  circleLoop,
  inside,
  isDegenerate,
  loopWithin,
  overlapArea,
  perimeterOf,
  rectangleLoop,
  regionArea,
  roundCorner,
  selfCrossing,
  sharedLength,
  sideLength,
  signedAreaOf,
  type Loop,
  type Side
} from '../../language/geometry/index.ts';
import { FOOT, loopOf, SQUARE_FOOT } from './feet.ts';
import { movedLoop, randomOutline, seededNumbers } from './random-outlines.ts';

const origin = { x: 0, y: 0 };
const fullTurn: Loop = [{ from: { x: 2, y: 0 }, to: { x: 2, y: 0 }, arc: { centre: origin, turn: -2 * Math.PI } }];

function reversed(loop: Loop): Loop {
  return loop
    .map(({ from, to, arc }): Side =>
      arc ? { from: to, to: from, arc: { ...arc, turn: -arc.turn } } : { from: to, to: from }
    )
    .reverse();
}

function bowed(rise: number, bulge: 'left' | 'right'): Loop {
  const [near, ...rest] = rectangleLoop(4, 3, origin, 0);
  const arc = near && arcByBow(near.from, near.to, rise, bulge);
  return arc ? [arc, ...rest] : [];
}

describe('areas and lengths', () => {
  it('polygon by coordinates: 140,494 square feet (open-access university surveying courseware, chapter Area)', () => {
    const loop = loopOf([1259.97, 406.31], [1489.47, 235.12], [1126.4, 65.81], [942.04, 317.89], [1282.54, 675.32]);
    expect(Math.abs(areaOf(loop) - 140_494)).toBeLessThan(2);
  });

  it('segment a quarter of the diameter high: 0.153546 of its square (mensuration tables, from memory)', () => {
    const arc = arcByBow({ x: 0, y: 0 }, { x: 2 * Math.sqrt(0.1875), y: 0 }, 0.25, 'left');
    expect(arc && areaOf([arc, { from: arc.to, to: arc.from }])).toBeCloseTo(0.153546, 6);
    const more = arcByBow({ x: 0, y: 0 }, { x: 2 * Math.sqrt(0.1875), y: 0 }, 0.75, 'right');
    expect(more && areaOf([more, { from: more.to, to: more.from }])).toBeCloseTo(Math.PI / 4 - 0.153546, 6);
  });

  it('random bowed outlines equal their polygon and the closed formula of each segment (exact arithmetic)', () => {
    const next = seededNumbers(11);
    for (let round = 0; round < 200; round++) {
      const flat = randomOutline(next, false);
      let expected = areaOf(flat);
      let around = perimeterOf(flat);
      const loop = flat.map(side => {
        const rise = 0.05 + next();
        const out = next() < 0.5;
        const half = sideLength(side) / 2;
        const radius = (half * half + rise * rise) / (2 * rise);
        const overhang = radius - rise;
        const segment = radius * radius * Math.acos(overhang / radius) - overhang * half;
        expected += out ? segment : -segment;
        around += 2 * radius * Math.acos(overhang / radius) - 2 * half;
        return arcByBow(side.from, side.to, rise, out ? 'right' : 'left') ?? side;
      });
      expect(areaOf(loop) / expected).toBeCloseTo(1, 9);
      expect(perimeterOf(loop) / around).toBeCloseTo(1, 9);
      const far = movedLoop(loop, { mirrored: true, turn: 1, move: { x: 50_000, y: -80_000 } });
      expect(areaOf(far) / expected).toBeCloseTo(1, 9);
    }
  });

  it('full turns, either way round, repeated points and holes', () => {
    expect(areaOf(fullTurn)).toBeCloseTo(4 * Math.PI, 12);
    expect(signedAreaOf(fullTurn)).toBeLessThan(0);
    expect(perimeterOf(fullTurn)).toBeCloseTo(perimeterOf(circleLoop(origin, 2)), 12);
    expect(areaOf(loopOf([0, 0], [0, 0], [2, 0], [2, 1], [2, 1], [0, 1]))).toBe(2);
    const region = { outer: rectangleLoop(6, 5, { x: -3, y: -2.5 }, 1), holes: [fullTurn] };
    expect(regionArea(region)).toBeCloseTo(30 - 4 * Math.PI, 12);
    expect(areaOf([])).toBe(0);
  });

  it('a nearly flat arc keeps its digits: rise 10 micrometres over 10 m is two thirds of rise by chord', () => {
    const arc = arcByBow(origin, { x: 10, y: 0 }, 1e-5, 'left');
    expect(arc && areaOf([arc, { from: arc.to, to: arc.from }]) / ((2 / 3) * 1e-4)).toBeCloseTo(1, 9);
  });
});

describe('making sides', () => {
  it('arcs by bow, third point and radius agree, on both sides of the chord', () => {
    const from = { x: 1, y: 2 };
    const to = { x: 5, y: 2 };
    for (const bulge of ['left', 'right'] as const) {
      const byBow = arcByBow(from, to, 1, bulge);
      const through = arcThrough(from, to, { x: 3, y: bulge === 'left' ? 3 : 1 });
      const byRadius = arcByRadius(from, to, 2.5, bulge);
      for (const side of [through, byRadius]) {
        expect(side?.arc?.turn).toBeCloseTo(byBow?.arc?.turn ?? NaN, 12);
        expect(side?.arc?.centre.y).toBeCloseTo(byBow?.arc?.centre.y ?? NaN, 12);
      }
      expect(Math.sign(byBow?.arc?.turn ?? 0)).toBe(bulge === 'right' ? 1 : -1);
    }
    expect(sideLength(arcThrough(from, to, { x: 3, y: 7 }) ?? { from, to })).toBeCloseTo(
      2.9 * (2 * Math.PI - 2 * Math.asin(2 / 2.9)),
      12
    );
  });

  it('arcs that cannot be are undefined', () => {
    const to = { x: 4, y: 0 };
    expect(arcThrough(origin, to, { x: 2, y: 0 })).toBeUndefined();
    expect(arcThrough(origin, to, { x: 9, y: 0 })).toBeUndefined();
    expect(arcByRadius(origin, to, 1.99, 'left')).toBeUndefined();
    expect(arcByRadius(origin, to, 2, 'left')?.arc?.turn).toBeCloseTo(-Math.PI, 7);
    expect(arcByBow(origin, to, 0, 'left')).toBeUndefined();
    expect(arcByBow(origin, origin, 1, 'left')).toBeUndefined();
  });

  it('a rounded square corner takes off radius squared by 1 - pi/4, and must fit (exact arithmetic)', () => {
    const loop = rectangleLoop(4, 3, { x: 7, y: 7 }, 0.3);
    for (const sides of [loop, reversed(loop)]) {
      const [first, second, ...rest] = sides;
      if (!first || !second) throw new Error('a rectangle has four sides');
      const rounded = roundCorner(first, second, 3);
      if (!rounded) throw new Error('it fits');
      const area = areaOf([rounded.before, rounded.arc, rounded.after, ...rest]);
      expect(area).toBeCloseTo(12 - 9 * (1 - Math.PI / 4), 9);
      expect(roundCorner(first, second, 3.01)).toBeUndefined();
      expect(roundCorner(first, { from: first.to, to: first.from }, 0.1)).toBeUndefined();
    }
  });
});

describe('faults', () => {
  it('finds crossings, touches and folds, and leaves good outlines alone', () => {
    expect(selfCrossing(loopOf([0, 0], [4, 3], [4, 0], [0, 3]))).toEqual({ first: 0, second: 2, at: { x: 2, y: 1.5 } });
    expect(selfCrossing(loopOf([0, 0], [4, 0], [4, 3], [2, 0], [0, 3]))).toMatchObject({ first: 0 });
    expect(selfCrossing(loopOf([0, 0], [4, 0], [2, 0], [2, 3]))).toMatchObject({ first: 0, second: 1 });
    expect(selfCrossing(loopOf([0, 0], [4, 0]))).toBeDefined();
    expect(selfCrossing(loopOf([0, 0], [2, 0], [2, 0], [2, 2], [0, 2], [0, 2]))).toBeUndefined();
    expect(selfCrossing(bowed(1.9, 'left'))).toBeUndefined();
    // More than a half turn: the arc bellies out beyond the sides next to it.
    expect(selfCrossing(bowed(2.9, 'left'))).toMatchObject({ first: 0, second: 1 });
    expect(selfCrossing(bowed(2.9, 'right'))).toBeUndefined();
    const [near, ...rest] = rectangleLoop(8, 3, origin, 0);
    const touching = near && arcByBow(near.from, near.to, 3, 'left');
    expect(touching && selfCrossing([touching, ...rest])).toMatchObject({ first: 0, second: 2 });
    for (const loop of [fullTurn, circleLoop(origin, 3), [], rectangleLoop(1, 1, origin, 1)]) {
      expect(selfCrossing(loop)).toBeUndefined();
    }
  });

  it('tangent neighbours do not cross', () => {
    const next = seededNumbers(5);
    for (let round = 0; round < 300; round++) {
      const loop = movedLoop(rectangleLoop(4, 3, origin, 0), {
        mirrored: false,
        turn: 7 * next(),
        move: { x: 900, y: 9 }
      });
      const [first, second, ...rest] = loop;
      const rounded = first && second && roundCorner(first, second, 0.001 + 2.9 * next());
      expect(rounded && selfCrossing([rounded.before, rounded.arc, rounded.after, ...rest])).toBeUndefined();
    }
  });

  it('outlines without area are degenerate', () => {
    expect(isDegenerate(loopOf([0, 0], [4, 0], [9, 0]))).toBe(true);
    expect(isDegenerate([])).toBe(true);
    expect(isDegenerate(loopOf([0, 0], [NaN, 0], [1, 1]))).toBe(true);
    expect(isDegenerate(rectangleLoop(0.01, 0.01, { x: 1e5, y: 1e5 }, 1))).toBe(false);
  });

  it('inside and within, arcs and touching edges included', () => {
    const bowl = bowed(2, 'right');
    expect(inside(bowl, { x: 2, y: -1.9 })).toBe(true);
    expect(inside(bowl, { x: 0.2, y: -1.9 })).toBe(false);
    expect(inside(bowl, { x: 2, y: -2 })).toBe(true);
    expect(inside(fullTurn, { x: 0, y: 0 })).toBe(true);
    expect(loopWithin(circleLoop({ x: 2, y: 0 }, 2), bowl)).toBe(true);
    expect(loopWithin(circleLoop({ x: 2, y: 0 }, 2.001), bowl)).toBe(false);
    expect(loopWithin(rectangleLoop(4, 3, origin, 0), rectangleLoop(4, 3, origin, 0))).toBe(true);
    expect(loopWithin(rectangleLoop(9, 9, { x: -3, y: -3 }, 0), bowl)).toBe(false);
    // Round a notch: every corner is inside, the side between leaves.
    const notched = loopOf([0, 0], [5, 0], [5, 4], [3, 4], [3, 2], [2, 2], [2, 4], [0, 4]);
    expect(loopWithin(rectangleLoop(4, 2, { x: 0.5, y: 1.5 }, 0), notched)).toBe(false);
    expect(loopWithin(rectangleLoop(4, 1, { x: 0.5, y: 1 }, 0), notched)).toBe(true);
  });

  it('shared areas: lens of two circles by the closed formula; nought along a common side, straight or arc', () => {
    const lens = 25 * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2);
    expect(overlapArea(circleLoop(origin, 5), circleLoop({ x: 5, y: 0 }, 5)) / lens).toBeCloseTo(1, 6);
    const far = { x: 12_345.678, y: -9876.5 };
    expect(overlapArea(rectangleLoop(3, 2, far, 0), rectangleLoop(3, 2, { x: far.x + 3, y: far.y }, 0))).toBe(0);
    expect(overlapArea(bowed(1, 'right'), loopOf([0, 0], [4, 0], [4, -3], [0, -3]))).toBeGreaterThan(1);
    const [arc] = bowed(1, 'right');
    const below = arc ? [...reversed([arc]), ...loopOf([0, 0], [0, -3], [4, -3], [4, 0]).slice(0, 3)] : [];
    expect(overlapArea(bowed(1, 'right'), below)).toBe(0);
    expect(overlapArea(fullTurn, circleLoop(origin, 2)) / (4 * Math.PI)).toBeCloseTo(1, 6);
    expect(overlapArea([], fullTurn)).toBe(0);
  });

  it('sides on top of each other count once, to a millimetre', () => {
    const house = rectangleLoop(10, 4, origin, 0);
    expect(sharedLength(house, rectangleLoop(6, 3, { x: 7, y: 4.0009 }, 0))).toBeCloseTo(3, 9);
    expect(sharedLength(house, rectangleLoop(6, 3, { x: 7, y: 4.0011 }, 0))).toBe(0);
    expect(sharedLength(house, house)).toBeCloseTo(28, 9);
    expect(sharedLength(house, rectangleLoop(3, 3, { x: 10, y: 4 }, 0))).toBe(0);
    expect(sharedLength(house, loopOf([0, 4], [10, 4], [2, 4], [2, 5]))).toBeCloseTo(10, 9);
  });
});

it('feet are converted exactly', () => {
  expect(areaOf(rectangleLoop(10 * FOOT, 10 * FOOT, origin, 0)) / SQUARE_FOOT).toBeCloseTo(100, 10);
});
