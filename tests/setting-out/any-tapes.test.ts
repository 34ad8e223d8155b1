// What holds of tapes whatever they read, and a second opinion on the fit.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, type Point } from '../../language/geometry/index.ts';
import { type FreePoint, pointsFromTapes, type Tape, type TapedPoints } from '../../language/setting-out/tapes.ts';
import { WEAK_ANGLE } from '../../language/setting-out/weak-points.ts';
import { found } from './taped.ts';

const place = fc.record({
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  y: fc.double({ min: -20, max: 20, noNaN: true })
});
const FIXED = ['A', 'B', 'K'];
const FREE = ['P', 'Q', 'R', 'S'];
const LEAST_TAPED = 0.5;

/** A survey as one would take it: each point from two that are there already and cross well, on its side; spare tapes. */
const surveys = fc
  .record({
    places: fc.array(place, { minLength: FIXED.length + FREE.length, maxLength: FIXED.length + FREE.length }),
    choices: fc.array(fc.nat(), { minLength: FREE.length, maxLength: FREE.length }),
    spare: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 6 }),
    errors: fc.array(fc.double({ min: -0.01, max: 0.01, noNaN: true }), { minLength: 14, maxLength: 14 })
  })
  .map(({ places, choices, spare, errors }) => {
    const keys = [...FIXED, ...FREE];
    const at = (key: string): Point => places[keys.indexOf(key)]!;
    const free = FREE.flatMap((key, index): FreePoint[] => {
      const before = keys.slice(0, FIXED.length + index);
      const good = before
        .flatMap(from => before.map(to => ({ from, to, left: area(at(from), at(to), at(key)) > 0 })))
        .filter(({ from, to }) => crossing(at(from), at(key), at(to)) > 2 * WEAK_ANGLE);
      return good.length > 0 ? [{ key, side: good[choices[index]! % good.length]! }] : [];
    });
    const pairs = free.flatMap(({ key, side }) => [side!.from, side!.to].map(from => ({ from, to: key })));
    for (const [one, other] of spare) {
      const pair = { from: keys[one % keys.length]!, to: FREE[other % FREE.length]! };
      if (distance(at(pair.from), at(pair.to)) > LEAST_TAPED) pairs.push(pair);
    }
    const tapes = pairs.map(({ from, to }, index): Tape => {
      return { key: `${from}${to}${index}`, from, to, read: distance(at(from), at(to)) };
    });
    return { at, free, tapes, errors, fixed: FIXED.map(key => ({ key, ...at(key) })) };
  })
  .filter(({ free }) => free.length === FREE.length);

function area(one: Point, other: Point, third: Point): number {
  return (other.x - one.x) * (third.y - one.y) - (other.y - one.y) * (third.x - one.x);
}

/** Angle, from nought to a right one, at which the tapes cross at the middle point. */
function crossing(one: Point, middle: Point, other: Point): number {
  const [near, far] = [distance(one, middle), distance(middle, other)];
  return Math.min(near, far) < LEAST_TAPED
    ? 0
    : Math.asin(Math.min(1, Math.abs(area(one, middle, other)) / (near * far)));
}

describe('Any survey', () => {
  test('with exact tapes gives the points it was taken of', () => {
    fc.assert(
      fc.property(surveys, ({ at, fixed, free, tapes }) => {
        const result = pointsFromTapes({ fixed, free, tapes });
        expect(result.faults).toEqual([]);
        expect(result.worst).toEqual([]);
        for (const point of result.points) expect(distance(point, at(point.key))).toBeLessThan(1e-7);
      }),
      { numRuns: 150, seed: 6 }
    );
  });

  test('read with errors of up to 10 mm: fits as least squares by differences of the sum do', () => {
    fc.assert(
      fc.property(surveys, ({ fixed, free, tapes, errors }) => {
        const survey = { fixed, free, tapes: tapes.map((tape, at) => ({ ...tape, read: tape.read + errors[at]! })) };
        const result = pointsFromTapes(survey);
        fc.pre(result.faults.length === 0);
        const places = found(result) as Record<string, Point>;
        const others = byDifferences(survey, places);
        expect(sumAt(survey, places)).toBeLessThan(sumAt(survey, others) + 1e-13);
        for (const point of result.points) expect(distance(point, others[point.key]!)).toBeLessThan(1e-6);
      }),
      { numRuns: 60, seed: 6 }
    );
  });

  test('stated in another order, tapes taken from the other end: the same', () => {
    const stated = surveys.chain(survey =>
      fc.record({
        survey: fc.constant(survey),
        tapes: fc.shuffledSubarray(survey.tapes, { minLength: survey.tapes.length }),
        free: fc.shuffledSubarray(survey.free, { minLength: survey.free.length }),
        fixed: fc.shuffledSubarray(survey.fixed, { minLength: survey.fixed.length })
      })
    );
    fc.assert(
      fc.property(stated, ({ survey: { errors, ...survey }, tapes, free, fixed }) => {
        const errorOf = new Map(survey.tapes.map(({ key }, index) => [key, errors[index]!]));
        const misread = (tape: Tape): Tape => ({ ...tape, read: tape.read + errorOf.get(tape.key)! });
        const one = pointsFromTapes({ ...survey, tapes: survey.tapes.map(misread) });
        const turned = tapes.map(tape => ({ ...misread(tape), from: tape.to, to: tape.from }));
        const other = pointsFromTapes({ fixed, free, tapes: turned });
        expect(other.points).toHaveLength(one.points.length);
        for (const point of one.points) expect(distance(point, found(other)[point.key]!)).toBeLessThan(1e-9);
        expect([...other.worst].sort()).toEqual([...one.worst].sort());
        expect(new Set(other.faults)).toEqual(new Set(one.faults));
      }),
      { numRuns: 60, seed: 6 }
    );
  });
});

function sumAt({ fixed, tapes }: TapedPoints, places: Readonly<Record<string, Point>>): number {
  const at = { ...Object.fromEntries(fixed.map(point => [point.key, point])), ...places };
  return tapes.reduce((sum, { from, to, read }) => sum + (distance(at[from]!, at[to]!) - read) ** 2, 0);
}

/** Newton's method with all derivatives taken by differences of the sum itself, from some way off. */
function byDifferences(survey: TapedPoints, start: Readonly<Record<string, Point>>): Record<string, Point> {
  const keys = Object.keys(start);
  const placesOf = (values: readonly number[]): Record<string, Point> =>
    Object.fromEntries(keys.map((key, index) => [key, { x: values[2 * index]!, y: values[2 * index + 1]! }]));
  const sumOf = (values: readonly number[], ...moved: readonly (readonly [number, number])[]): number => {
    const there = [...values];
    for (const [unknown, by] of moved) there[unknown]! += by;
    return sumAt(survey, placesOf(there));
  };
  const h = 1e-4;
  let values = keys.flatMap(key => [start[key]!.x + 0.004, start[key]!.y - 0.003]);
  for (let round = 0; round < 12; round++) {
    const rows = values.map((_, i) => [
      ...values.map((_, j) => {
        const [further, nearer] = [sumOf(values, [i, h], [j, h]), sumOf(values, [i, -h], [j, -h])];
        return (further + nearer - sumOf(values, [i, h], [j, -h]) - sumOf(values, [i, -h], [j, h])) / (4 * h * h);
      }),
      (sumOf(values, [i, -h]) - sumOf(values, [i, h])) / (2 * h)
    ]);
    const move = eliminated(rows);
    values = values.map((value, index) => value + move[index]!);
  }
  return placesOf(values);
}

/** Gauss and Jordan's elimination; each row ends with its right-hand side. */
function eliminated(rows: number[][]): number[] {
  for (const [column] of rows.entries()) {
    const below = rows.slice(column).sort((one, other) => Math.abs(other[column]!) - Math.abs(one[column]!));
    rows.splice(column, below.length, ...below);
    const pivot = rows[column]!.map(value => value / rows[column]![column]!);
    rows = rows.map((row, index) =>
      index === column ? pivot : row.map((value, at) => value - row[column]! * pivot[at]!)
    );
  }
  return rows.map(row => row.at(-1)!);
}

describe('Any tapes whatever', () => {
  const keys = [...FIXED, ...FREE];
  const anyKey = fc.constantFrom(...keys, 'unknown');
  const coordinate = fc.oneof(fc.constantFrom(0, 1, 3, 4), fc.double({ min: -1e5, max: 1e5, noNaN: true }));
  const read = fc.oneof(
    fc.constantFrom(1, 3, 4, 5, 1e5, 1e-9),
    fc.double({ min: 0.5, max: 10, noNaN: true }),
    fc.double({ min: 1e-6, max: 1e5, noNaN: true })
  );
  const given = fc.record({
    places: fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: FIXED.length, maxLength: FIXED.length }),
    sides: fc.array(fc.option(fc.record({ from: anyKey, to: anyKey, left: fc.boolean() }), { nil: undefined }), {
      minLength: FREE.length,
      maxLength: FREE.length
    }),
    tapes: fc.array(fc.record({ from: anyKey, to: anyKey, read }), { maxLength: 20 })
  });

  test('give each point a place or a fault, never both, and only numbers', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(given, ({ places, sides, tapes }) => {
        const result = pointsFromTapes({
          fixed: FIXED.map((key, index) => ({ key, ...places[index]! })),
          free: FREE.map((key, index) => ({ key, ...(sides[index] && { side: sides[index] }) })),
          tapes: tapes.map((tape, index) => ({ ...tape, key: `${index}` }))
        });
        const faulty = result.faults
          .filter(({ kind }) => kind !== 'tape-from-itself')
          .flatMap(fault => ('points' in fault ? fault.points : [fault.point]));
        expect([...faulty, ...result.points.map(({ key }) => key)].sort()).toEqual(FREE);
        const numbers = [...result.points, ...result.tapes, ...result.weak, ...result.faults].flatMap(one =>
          Object.values(one).filter(value => typeof value === 'number')
        );
        expect(numbers.every(Number.isFinite)).toBe(true);
        for (const { kind } of result.faults) kinds.add(kind);
        if (result.points.length > 0) kinds.add('placed');
      }),
      { numRuns: 1500, seed: 6 }
    );
    // The draw reaches what it is to try.
    expect([...kinds].sort()).toEqual([
      'no-fit',
      'not-fixed-in-place',
      'others-not-found',
      'placed',
      'side-does-not-tell',
      'side-not-said',
      'tape-from-itself',
      'too-few-tapes',
      'triangle-does-not-close',
      'wrong-side'
    ]);
  });
});
