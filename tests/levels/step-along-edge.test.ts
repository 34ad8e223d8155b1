// Steps along an edge two surfaces share.
import { describe, expect, test } from 'vitest';
import { arcByBow, type Point, type Side } from '../../language/geometry/index.ts';
import { LEVEL_STEP, stepsAlong } from '../../language/levels/step-along-edge.ts';
import { FOOT, INCH } from './surfaces.ts';

const edge: Side[] = [{ from: { x: 0, y: 0 }, to: { x: 4, y: 0 } }];

describe('the step along an edge', () => {
  test('between a new terrace and an old walk with one low place: flush at the house, 7/16 in up in the middle', () => {
    const length = 12 * FOOT + 8.625 * INCH;
    const side: Side[] = [{ from: { x: 0, y: length }, to: { x: 0, y: 0 } }];
    const finish = ({ y }: Point): number => -2.5 * INCH - (0.25 / 12) * y;
    // Measured at both ends and half way, straight in between.
    const walk = ({ y }: Point): number =>
      y > length / 2
        ? -3.625 * INCH - 2 * INCH * ((2 * y) / length - 1)
        : -2.5 * INCH - 1.125 * INCH * ((2 * y) / length);
    const steps = stepsAlong(side, finish, walk, [length / 2]);
    expect(Math.round((16 * steps.up!.difference) / INCH)).toBe(7);
    expect(steps.up!.at).toBeCloseTo(length / 2, 9);
    expect(steps.places.map(({ difference }) => Math.round((16 * difference) / INCH))).toEqual([1, 7, 0]);
    expect(steps.down).toBeUndefined();
    expect(steps.level).toEqual([expect.closeTo(length, 9)]);
  });

  test('up, down and level on one edge, the most of a bow between breaks', () => {
    const steps = stepsAlong(
      edge,
      () => 0,
      ({ x }) => 0.01 * Math.sin((x * Math.PI) / 2),
      []
    );
    expect(steps.up).toMatchObject({
      at: expect.closeTo(1, 6) as number,
      difference: expect.closeTo(0.01, 12) as number
    });
    expect(steps.down).toMatchObject({ at: expect.closeTo(3, 6) as number });
    expect(steps.level).toEqual([0, 2, 4].map(at => expect.closeTo(at, 6) as number));
  });

  test('along an arc, distances run on the arc', () => {
    const arc = arcByBow({ x: 0, y: 0 }, { x: 2, y: 0 }, 1, 'left')!;
    const steps = stepsAlong(
      [arc],
      () => 0,
      ({ y }) => y,
      []
    );
    expect(steps.up!.at).toBeCloseTo(Math.PI / 2, 6);
    expect(steps.places[steps.places.length - 1]!.at).toBeCloseTo(Math.PI, 9);
  });

  test('flush within a micrometre is level; an edge of no length has no places', () => {
    const flush = stepsAlong(
      edge,
      () => 1,
      () => 1 + LEVEL_STEP / 2,
      [1]
    );
    expect(flush).toMatchObject({ level: [0, 1, 4] });
    expect('up' in flush || 'down' in flush).toBe(false);
    const spot = { from: { x: 1, y: 1 }, to: { x: 1, y: 1 } };
    expect(
      stepsAlong(
        [spot],
        () => 1,
        () => 2,
        []
      )
    ).toEqual({ places: [], level: [] });
    expect(
      stepsAlong(
        [],
        () => 1,
        () => 2,
        []
      )
    ).toEqual({ places: [], level: [] });
    expect(
      stepsAlong(
        [spot, ...edge, spot],
        () => 1,
        () => 2,
        []
      ).places.map(({ at }) => at)
    ).toEqual([0, 4]);
  });
});
