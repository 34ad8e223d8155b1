// Ground and screen, lines and arcs, and what lies under a place of the screen.
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { chordsOf, distanceTo, isInside, pathOf } from '../../extension/panel/plan/corners.ts';
import { caught, measured, printed, stepOf } from '../../extension/panel/plan/measure.ts';
import { pick } from '../../extension/panel/plan/pick.ts';
import { prepare, type RunEntry } from '../../extension/panel/plan/prepared.ts';
import { QuadTree } from '../../extension/panel/plan/quad-tree.ts';
import { scaleBarOf } from '../../extension/panel/plan/scale-bar.ts';
import { sceneOf } from '../../extension/panel/plan/scene.ts';
import { someInView, unitAt } from '../../extension/panel/plan/units-in-view.ts';
import {
  type Bounds,
  fitted,
  meets,
  onScreen,
  panned,
  seenGround,
  shiftOf,
  toGround,
  toScreen,
  turnOf,
  zoomedAbout
} from '../../extension/panel/plan/view.ts';
import type { Content } from '../../server/plan-protocol.ts';
import { rectangle, smallPlan } from './plans.ts';

const size = { width: 800, height: 600 };
const fixed = { seed: 20_260_501, numRuns: 300 };
const coordinate = fc.double({ min: -60_000, max: 60_000, noNaN: true });
const place = fc.record({ x: coordinate, y: coordinate });
const pixel = fc.record({ x: fc.integer({ min: 0, max: 800 }), y: fc.integer({ min: 0, max: 600 }) });
const someView = fc.record({
  x: coordinate,
  y: coordinate,
  scale: fc.double({ min: 0.001, max: 4, noNaN: true }),
  turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true })
});

describe('A view', () => {
  test('leads from the ground to the screen and back', () => {
    fc.assert(
      fc.property(someView, place, (view, ground) => {
        const back = toGround(view, size, toScreen(view, size, ground));
        expect(back.x).toBeCloseTo(ground.x, 4);
        expect(back.y).toBeCloseTo(ground.y, 4);
      }),
      fixed
    );
  });

  test('is zoomed about a place that stays, and moved with what lies under the fingers', () => {
    fc.assert(
      fc.property(someView, pixel, fc.double({ min: 0.3, max: 3, noNaN: true }), (view, at, factor) => {
        const under = toGround(view, size, at);
        const zoomed = toScreen(zoomedAbout(view, size, at, factor), size, under);
        expect(Math.hypot(zoomed.x - at.x, zoomed.y - at.y)).toBeLessThan(1e-3);
        const moved = panned(view, 30, -20);
        const on = toScreen(moved, size, under);
        expect(Math.hypot(on.x - at.x - 30, on.y - at.y + 20)).toBeLessThan(1e-3);
        const shift = shiftOf(view, moved)!;
        expect(Math.hypot(shift.x - 30, shift.y + 20)).toBeLessThan(1e-3);
      }),
      fixed
    );
  });

  test('shows all of a plan however it is turned, and no less than its ground', () => {
    const bounds: Bounds = [-200, 100, 5_800, 9_100];
    for (const turn of [0, 0.5, Math.PI / 2, 2.2]) {
      const view = fitted(bounds, size, turn);
      for (const x of [bounds[0], bounds[2]])
        for (const y of [bounds[1], bounds[3]]) {
          const on = toScreen(view, size, { x, y });
          expect(on.x).toBeGreaterThan(0);
          expect(on.y).toBeGreaterThan(0);
          expect(on.x).toBeLessThan(size.width);
          expect(on.y).toBeLessThan(size.height);
        }
      expect(meets(seenGround(view, size, { x: 0, y: 0 }), bounds)).toBe(true);
    }
  });

  test.each([
    [0, 0],
    [Math.PI / 3, -Math.PI / 3],
    [Math.PI, 0],
    [-Math.PI / 4, Math.PI / 4],
    [(3 * Math.PI) / 4, Math.PI / 4],
    [Math.PI / 2, Math.PI / 2]
  ])('is turned to a direction of %f the shorter way', (direction, turn) => {
    expect(Math.abs(turnOf(direction))).toBeCloseTo(Math.abs(turn), 9);
    expect(Math.sin(direction + turnOf(direction))).toBeCloseTo(0, 9);
  });
});

describe('An arc', () => {
  // A quarter of a circle of 1 m about nought, from the right to the top: its bend is the tangent of a sixteenth of a turn.
  const bend = Math.tan(Math.PI / 8);
  const quarter = [1000, 0, bend, 0, 1000, 0];

  test('runs along its circle', () => {
    const chords = chordsOf(quarter, false);
    for (let at = 0; at < chords.length; at += 2) expect(Math.hypot(chords[at]!, chords[at + 1]!)).toBeCloseTo(1000, 6);
    expect(chords.length).toBeGreaterThan(16);
    const middle = { x: 1000 * Math.SQRT1_2, y: 1000 * Math.SQRT1_2 };
    expect(distanceTo(chords, false, middle)).toBeLessThan(2);
  });

  test('is written with its radius, the way it turns on the screen', () => {
    const at = onScreen({ x: 0, y: 0, scale: 0.1, turn: 0 }, { width: 0, height: 0 });
    expect(pathOf(quarter, false, at)).toBe('M100 0A100 100 0 0 0 0 -100');
    expect(pathOf([0, 1000, -bend, 1000, 0, 0], false, at)).toBe('M0 -100A100 100 0 0 1 100 0');
    expect(pathOf(rectangle(0, 0, 200, 100), true, at)).toBe('M0 0L20 0L20 -10L0 -10z');
  });

  test('encloses with its chord what lies between them', () => {
    const chords = chordsOf(quarter, true);
    expect(isInside([chords], { x: 690, y: 690 })).toBe(true);
    expect(isInside([chords], { x: 400, y: 400 })).toBe(false);
  });
});

describe('What is looked up', () => {
  const boxes = fc.array(fc.tuple(coordinate, coordinate, fc.nat(30_000), fc.nat(30_000)), { maxLength: 60 });

  test('is all that meets the bounds and is large enough', () => {
    fc.assert(
      fc.property(boxes, coordinate, coordinate, fc.nat(40_000), fc.nat(3_000), (all, x, y, reach, smallest) => {
        const tree = new QuadTree<number>([-60_000, -60_000, 90_000, 90_000]);
        const bounds = all.map(([left, bottom, width, height]): Bounds => [
          left,
          bottom,
          left + width,
          bottom + height
        ]);
        bounds.forEach((one, index) => tree.add(index, one));
        const sought: Bounds = [x - reach, y - reach, x + reach, y + reach];
        const expected = bounds.flatMap((one, index) =>
          meets(one, sought) && Math.max(one[2] - one[0], one[3] - one[1]) >= smallest ? [index] : []
        );
        const found = tree.find(sought, smallest, 1_000);
        expect([...found.items].sort((one, other) => one - other)).toEqual(expected);
        expect(found.leftOut).toBe(false);
      }),
      fixed
    );
  });

  test('of a run of units is what testing each of them gives', () => {
    const step = fc.integer({ min: -500, max: 500 });
    fc.assert(
      fc.property(
        step,
        step,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.nat(80),
        place,
        (x, y, turn, count, at) => {
          const form = formOf(rectangle(0, 0, 300, 200));
          const entry: RunEntry = { shape: {} as RunEntry['shape'], run: [10, 20, turn, x, y, count], form, order: 0 };
          // Never on the very edge of a unit.
          const near = { x: at.x / 20 + 0.0137, y: at.y / 20 + 0.0171 };
          const one = unitAt(entry, near);
          const all = Array.from({ length: count }, (_, index) => index).filter(index => {
            const [right, up] = [near.x - 10 - index * x, near.y - 20 - index * y];
            const along = right * Math.cos(turn) + up * Math.sin(turn);
            const across = up * Math.cos(turn) - right * Math.sin(turn);
            return along > 0 && along < 300 && across > 0 && across < 200;
          });
          expect(one).toBe(all[0]);
          const { from, to } = someInView(entry, [near.x - 50, near.y - 50, near.x + 50, near.y + 50]);
          for (const index of all) expect(index >= from && index < to).toBe(true);
        }
      ),
      fixed
    );
  });

  const formOf = (corners: number[]): RunEntry['form'] => {
    const [left, bottom, right, top] = [corners[0]!, corners[1]!, corners[6]!, corners[7]!];
    return {
      chords: chordsOf(corners, true),
      bounds: [left, bottom, right, top],
      reach: Math.hypot(right, top),
      width: Math.min(right - left, top - bottom)
    };
  };
});

describe('What lies under a place', () => {
  const prepared = prepare(smallPlan());
  const view = fitted(prepared.extent, size, 0);
  const under = (x: number, y: number, hidden: readonly Content[] = []): string | undefined => {
    const drawn = sceneOf({ prepared, view, size, hidden: new Set(hidden), asBefore: '' });
    const { detail, letters } = drawn;
    const wish = { prepared, view, size, hidden: new Set(hidden), detail, letters, shift: { x: 0, y: 0 } };
    return pick(toScreen(view, size, { x, y }), wish);
  };

  test('is a sign before a line, a line before what encloses it, and that by what lies on top', () => {
    expect(under(0, 0)).toBe('point:A');
    // Signs of findings stand beside what they mark.
    const aside = 12 / view.scale;
    expect(under(1200 + aside, 3000 + aside)).toBe('finding:1');
    expect(under(1200, 3000)).toBe('unit:slab');
    expect(under(4000, 10)).toBe('edge:A');
    expect(under(2600, 1300)).toBe('box:valves');
    expect(under(600, 4020)).toBe('cut:1');
    expect(under(5300, 900)).toBe('unit:slab');
    // In the joint between two slabs, and in the bow of the edge.
    expect(under(4797.5, 900)).toBe('area:terrace');
    expect(under(6100, 1800)).toBe('area:terrace');
    expect(under(9000, 9000)).toBeUndefined();
  });

  test('is only what is shown', () => {
    expect(under(2600, 1300, ['kept-out'])).toBe('unit:slab');
    expect(under(5300, 900, ['units'])).toBeUndefined();
    const aside = 12 / view.scale;
    expect(under(1200 + aside, 3000 + aside, ['findings'])).toBe('unit:slab');
    expect(under(3000, 2300)).toBe('area:terrace');
    expect(under(3000, 2300, ['names'])).toBe('unit:slab');
  });

  test('is caught by a point or corner near it', () => {
    const at = toScreen(view, size, { x: 6000, y: 4150 });
    const wish = { prepared, view, size, hidden: new Set<Content>() };
    expect(caught({ x: at.x + 5, y: at.y - 5 }, wish)).toEqual({ x: 6000, y: 4150 });
    const free = { x: at.x - 60, y: at.y + 70 };
    expect(caught(free, wish)).toEqual(toGround(view, size, free));
  });
});

describe('A measure', () => {
  test('is as on a tape, in the measures of the job', () => {
    expect(measured({ x: 0, y: 0 }, { x: 3000, y: -4000 }, 'metric')).toEqual({
      distance: '5.000 m',
      x: '3.000 m',
      y: '-4.000 m'
    });
    // 12 ft 6 1/2 in is 3822.7 mm.
    expect(printed(3822.7, 'imperial')).toBe('12 ft 6 1/2 in');
    expect(printed(1.6, 'imperial')).toBe('1/16 in');
    expect(printed(-0.2, 'metric')).toBe('0.000 m');
  });

  test('is told by a bar of a round length, as long as there is room for', () => {
    expect(scaleBarOf('metric', 0.1)).toEqual({ length: 100, text: '1 m' });
    expect(scaleBarOf('metric', 0.3)).toEqual({ length: 60, text: '200 mm' });
    const two = scaleBarOf('imperial', 0.15);
    expect(two.text).toBe('2 ft');
    // A foot is 304.8 mm.
    expect(two.length).toBeCloseTo(2 * 304.8 * 0.15, 9);
    for (const system of ['metric', 'imperial'] as const)
      for (const scale of [0.0005, 0.01, 4]) {
        expect(scaleBarOf(system, scale).length).toBeLessThanOrEqual(120);
        expect(scaleBarOf(system, scale).length).toBeGreaterThan(40);
      }
  });

  test('of a step is a centimetre or half an inch, ten times that, or the finest on a tape', () => {
    const none = { shiftKey: false, altKey: false };
    expect(stepOf('metric', none)).toBe(10);
    expect(stepOf('imperial', none)).toBe(12.7);
    expect(stepOf('metric', { ...none, shiftKey: true })).toBe(100);
    expect(stepOf('imperial', { ...none, altKey: true })).toBeCloseTo(1.5875, 9);
  });
});
