import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsOf, cornerLoop, type Loop, outOfFrame } from '../../language/geometry/index.ts';
import type { AreaToLay } from '../../language/laying/area-to-lay.ts';
import {
  type BetterStarts,
  betterStarts,
  MOST_TRIED,
  type StartSearch
} from '../../language/laying/starts/better-starts.ts';
import { cuttingOf } from '../../language/laying/starts/cutting.ts';
import { byCutting } from '../../language/laying/starts/fewer-cuts.ts';
import { changedStart } from '../../language/laying/starts/start-change.ts';
import { drain } from '../../language/session/session.ts';
import { courses, laid, mm, rectangle } from './fields.ts';

const SEARCH: StartSearch = { shiftStep: 0.001, jointStep: 0.0001, mayTurn: true, mayJoint: true };
const JOINTS = { width: mm(5), least: mm(2), most: mm(8) };

const found = (area: AreaToLay, search: Partial<StartSearch> = {}): BetterStarts =>
  drain(betterStarts(area, { ...SEARCH, ...search }))!;

const points = (...all: readonly (readonly [number, number])[]): Loop =>
  cornerLoop(all.map(([x, y]) => ({ x: mm(x), y: mm(y) })));

describe('worked by hand', () => {
  test('nothing is cut: nothing is tried', () => {
    expect(found(courses(rectangle(1020, 520), [200, 100], 5))).toEqual({
      now: { cutUnits: 0, slivers: 0, sawLength: 0 },
      better: [],
      tried: 0
    });
  });

  test('what is cut now, counted on a strip', () => {
    // Two courses end in 20 x 100 mm; across nothing is cut.
    const { now } = found(courses(rectangle(1045, 205), [200, 100], 5));
    expect({ ...now, sawLength: Math.round(now.sawLength * 1e6), narrowest: Math.round(now.narrowest! * 1e6) }).toEqual(
      {
        cutUnits: 2,
        slivers: 2,
        sawLength: 200_000,
        narrowest: 20_000
      }
    );
  });

  test('begun where the units fit between two sides, past a bay', () => {
    const outline = points([0, 0], [1070, 0], [1070, 520], [50, 520], [50, 205], [0, 205]);
    const { better } = found(courses(outline, [200, 100], 5), { mayTurn: false });
    expect(better.map(({ change }) => change)).toEqual([{ shifted: { x: 0.05, y: 0 } }]);
    expect(better[0]!.cutting.cutUnits).toBe(2);
  });

  test('turned by a quarter where they fit that way', () => {
    const { better } = found(courses(rectangle(520, 1020), [200, 100], 5), { mayJoint: false });
    expect(
      better.map(({ change, cutting }) => [Math.round((change.turned! * 180) / Math.PI), cutting.cutUnits])
    ).toEqual([[90, 0]]);
  });

  test('joints within their limits, never wider than fits', () => {
    // Five units of 200 mm with four joints of 8 are 1032 mm. With 5 mm 12 are left: more than two joints would take up.
    const outline = rectangle(1032, 100);
    const with8 = found(courses(outline, [200, 100], 5, { joint: JOINTS }), { mayTurn: false });
    expect(with8.better).toEqual([
      { change: { joint: expect.closeTo(0.008, 9) as number }, cutting: { cutUnits: 0, slivers: 0, sawLength: 0 } }
    ]);
    const upTo6 = courses(outline, [200, 100], 5, { joint: { ...JOINTS, most: mm(6) } });
    expect(found(upTo6, { mayTurn: false }).better.filter(({ change }) => change.joint !== undefined)).toEqual([]);
    expect(
      found(courses(outline, [200, 100], 5, { joint: JOINTS }), { mayTurn: false, mayJoint: false }).better
    ).toEqual([]);
  });
});

// ---- what is said ----

/** Whether only whole units lie along a straight side: no piece touches it. */
function onlyWholeAlong(area: AreaToLay, side: number): boolean {
  const { from, to } = area.outline[side]!;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return laid(area).parts[0]!.laid.cuts.every(({ at, pieces }) => {
    const frame = { origin: { x: at.x, y: at.y }, direction: at.direction, mirrored: false };
    return pieces.every(({ outline }) => {
      const off = outline.map(({ from: corner }) => {
        const { x, y } = outOfFrame(frame, corner);
        return Math.abs((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length;
      });
      const { left, right, bottom, top } = boundsOf(outline);
      const isWhole =
        right - left > area.field.units[0]!.length - 1e-6 && top - bottom > area.field.units[0]!.width - 1e-6;
      return isWhole || Math.min(...off) > 1e-6;
    });
  });
}

describe('what is said stays', () => {
  // A trapezium: its first side straight, its corners off the square.
  const shape = fc
    .tuple(
      fc.integer({ min: 900, max: 1900 }),
      fc.integer({ min: 700, max: 1500 }),
      fc.integer({ min: -200, max: 200 })
    )
    .map(([length, width, slant]) => points([0, 0], [length, 0], [length + slant, width], [0, width]));
  const bond = fc.constantFrom(0, 1 / 3, 0.5);

  test('carried on, or whole units both ways: only the width of the joints is free', () => {
    fc.assert(
      fc.property(shape, bond, (outline, offset) => {
        const start = { whole: [0, 3], equalCuts: false };
        const { better } = found(courses(outline, [200, 100], 5, { offset, joint: JOINTS, start }));
        for (const { change } of better) expect([change.shifted, change.equalCuts]).toEqual([undefined, undefined]);
        const from = courses(rectangle(500, 500), [200, 100], 5);
        const carried = courses(outline, [200, 100], 5, { offset, joint: JOINTS, carriedOnFrom: from });
        expect(found(carried).better).toEqual([]);
      }),
      { seed: 3, numRuns: 12 }
    );
  });

  test('whole units along a side, and equal cuts, hold after every change', () => {
    fc.assert(
      fc.property(shape, bond, fc.boolean(), (outline, offset, equalCuts) => {
        const start = { whole: [0], equalCuts };
        const area = courses(outline, [200, 100], 5, { offset, joint: JOINTS, start });
        for (const { change } of found(area).better) {
          expect(change.shifted?.y ?? 0).toBe(0);
          if (equalCuts) expect(change.shifted?.x ?? 0).toBe(0);
          const changed = changedStart(area, change);
          expect(changed.field.start.whole).toEqual([0]);
          expect(changed.field.start.equalCuts || !equalCuts).toBe(true);
        }
      }),
      { seed: 4, numRuns: 12 }
    );
  });

  test('no piece comes to lie along the side', () => {
    const outline = points([0, 0], [1310, 0], [1310, 777], [0, 777]);
    const area = courses(outline, [200, 100], 5, { start: { whole: [0], equalCuts: false } });
    const across = { ...area, outline: points([0, 0], [1225, 0], [1225, 777], [0, 777]) };
    expect(onlyWholeAlong(across, 0)).toBe(true);
    for (const { change } of found(across).better) expect(onlyWholeAlong(changedStart(across, change), 0)).toBe(true);
  });

  test('no turn where a side is named for the courses, or a turn is said', () => {
    const turned = (start: object) =>
      found(
        courses(rectangle(520, 1020), [200, 100], 5, { start: { whole: [], equalCuts: false, ...start } })
      ).better.some(({ change }) => change.turned !== undefined);
    expect([turned({}), turned({ along: 0 }), turned({ turned: 0 }), turned({ whole: [0] })]).toEqual([
      true,
      false,
      false,
      false
    ]);
  });
});

describe('over random areas', () => {
  const area = fc
    .tuple(
      fc.array(fc.tuple(fc.integer({ min: -120, max: 120 }), fc.integer({ min: -120, max: 120 })), {
        minLength: 4,
        maxLength: 4
      }),
      fc.integer({ min: 900, max: 2000 }),
      fc.integer({ min: 700, max: 1600 }),
      fc.constantFrom(0, 1 / 3, 0.5)
    )
    .map(([moved, length, width, offset]) => {
      const corners = [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width]
      ] as const;
      const outline = points(...corners.map(([x, y], at) => [x + moved[at]![0], y + moved[at]![1]] as const));
      return {
        ...courses(outline, [200, 100], 5, { offset, joint: JOINTS }),
        keptOut: [{ key: 'box:a', outline: points([310, 280], [560, 280], [560, 420], [310, 420]) }]
      };
    });

  test('never worse than now, and laid anew it comes to what was promised', () => {
    fc.assert(
      fc.property(area, one => {
        const { now, better, tried } = found(one);
        expect(tried).toBeLessThanOrEqual(MOST_TRIED);
        expect(better.length).toBeLessThanOrEqual(3);
        for (const { change, cutting } of better) {
          expect(cutting.cutUnits).toBeLessThanOrEqual(now.cutUnits);
          expect(cutting.slivers).toBeLessThanOrEqual(now.slivers);
          expect(byCutting(cutting, now)).toBeLessThan(0);
          const changed = changedStart(one, change);
          expect(cuttingOf(laid(changed), changed)).toEqual(cutting);
          // What a tape shows: whole millimetres, joints to a tenth.
          for (const by of [change.shifted?.x ?? 0, change.shifted?.y ?? 0])
            expect(Math.abs(by * 1000 - Math.round(by * 1000))).toBeLessThan(1e-9);
          const joint = (change.joint ?? JOINTS.width) * 10_000;
          expect(Math.abs(joint - Math.round(joint))).toBeLessThan(1e-6);
          expect(joint).toBeGreaterThanOrEqual(JOINTS.least * 10_000 - 1e-6);
          expect(joint).toBeLessThanOrEqual(JOINTS.most * 10_000 + 1e-6);
        }
      }),
      { seed: 5, numRuns: 25 }
    );
  }, 300_000);

  test('of a large area fewer ways are tried: the units clipped are bounded', () => {
    const large = courses(points([0, 0], [60_000, 0], [61_000, 40_000], [300, 40_500]), [200, 100], 5, { offset: 0.5 });
    const { tried } = found(large);
    const clipped = laid(large).parts[0]!.laid.clipped;
    expect(tried).toBeGreaterThan(12);
    expect(tried * clipped).toBeLessThan(50_000);
  }, 300_000);
});
