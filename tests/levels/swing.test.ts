// A gate over a terrace, worked by hand, and leaves over random finishes against looking everywhere.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cornerLoop,
  inside,
  type Loop,
  type Point,
  rectangleLoop,
  turnedAbout
} from '../../language/geometry/index.ts';
import { circlesMeet } from '../../language/geometry/contacts.ts';
import { planeAlong } from '../../language/levels/planes.ts';
import { heightAt, type Surface } from '../../language/levels/surface.ts';
import { type Leaf, type Swing, swingOf } from '../../language/levels/swing.ts';
import { anyFolded, anyPlane, anyWideTwist, FOOT, INCH, sound } from './surfaces.ts';

const SEED = 95;
const DEGREE = Math.PI / 180;

function taped(a: Point, toA: number, b: Point, toB: number): Point {
  return circlesMeet(a, toA, b, toB, 0).find(({ y }) => y > 0)!;
}

describe('a side gate over a terrace', () => {
  const a = { x: 0, y: 0 };
  const b = { x: 18.5 * FOOT, y: 0 };
  const c = taped(b, 12 * FOOT + 7.875 * INCH, a, 22 * FOOT + 4.5 * INCH);
  const d = taped(a, 12 * FOOT + 8.625 * INCH, b, 22 * FOOT + 7.375 * INCH);
  const terrace = [cornerLoop([a, b, c, d])];
  const sill = -2.5 * INCH;
  const plane = sound(planeAlong({ point: a, height: sill }, { point: b, height: sill }, 0.25 / 12, 'left'));
  const reach = (2 * FOOT) / Math.hypot(c.x - b.x, c.y - b.y);
  const gate: Leaf = {
    hinge: { x: b.x + reach * (c.x - b.x), y: b.y + reach * (c.y - b.y) },
    shut: { x: c.x - b.x, y: c.y - b.y },
    length: 3 * FOOT + 2 * INCH,
    opens: 95 * DEGREE,
    underside: -3.25 * INCH
  };
  const swing = sound(swingOf(gate, { kind: 'plane', plane }, terrace));

  test('does not open: 5/16 in too low at full swing, at the tip', () => {
    expect(swing.whole!.clearance / INCH).toBeCloseTo(-0.32, 2);
    expect(Math.round((16 * swing.whole!.clearance) / INCH)).toBe(-5);
    expect(Math.round((16 * swing.whole!.finish) / INCH)).toBe(-(2 * 16 + 15));
    expect(swing.whole!.opening / DEGREE).toBeCloseTo(95, 9);
    expect(Math.hypot(swing.whole!.at.x - gate.hinge.x, swing.whole!.at.y - gate.hinge.y)).toBeCloseTo(gate.length, 9);
    // For half an inch of clearance the joiner takes off 0.82 in.
    expect(0.5 - swing.whole!.clearance / INCH).toBeCloseTo(0.82, 2);
  });

  test('shut, it is already 1/4 in too low at the hinge', () => {
    expect(Math.round((16 * swing.shut!.clearance) / INCH)).toBe(-4);
    expect(swing.shut).toMatchObject({ at: gate.hinge, opening: 0 });
    expect(swing.strikesAt).toBe(0);
  });

  test('with half an inch more it clears shut and strikes as it opens; opened the other way it meets the edge alone', () => {
    const trimmed = sound(swingOf({ ...gate, underside: -2.97 * INCH }, { kind: 'plane', plane }, terrace));
    expect(trimmed.shut!.clearance).toBeGreaterThan(0);
    const at = trimmed.strikesAt!;
    // It strikes where its tip comes as near to the house as the finish is as high: along A to B it falls evenly.
    const tip = turnedAbout(pointOf(gate), gate.hinge, at);
    expect(heightAt({ kind: 'plane', plane }, tip) / INCH).toBeCloseTo(-2.97, 4);
    const outward = sound(swingOf({ ...gate, opens: -gate.opens }, { kind: 'plane', plane }, terrace));
    expect(outward.whole!.clearance).toBeCloseTo(swing.shut!.clearance, 9);
    expect(outward.whole!.opening).toBe(0);
  });

  test('a leaf that is never over the finish has no clearance', () => {
    const away = { ...gate, hinge: { x: 40, y: 0 } };
    expect(swingOf(away, { kind: 'plane', plane }, terrace)).toEqual({});
  });
});

function pointOf({ hinge, shut, length }: Leaf): Point {
  const reach = length / Math.hypot(shut.x, shut.y);
  return { x: hinge.x + reach * shut.x, y: hinge.y + reach * shut.y };
}

/** Least clearance over a fan of places on the leaf, and the first opening of them that strikes. */
function lookedUp(leaf: Leaf, finish: Surface, region: Loop): { least: number; first: number } {
  let least = Infinity;
  let first = Infinity;
  for (let turn = 0; turn <= 90; turn++) {
    const end = turnedAbout(pointOf(leaf), leaf.hinge, (turn / 90) * leaf.opens);
    for (let step = 0; step <= 40; step++) {
      const x = leaf.hinge.x + (step / 40) * (end.x - leaf.hinge.x);
      const y = leaf.hinge.y + (step / 40) * (end.y - leaf.hinge.y);
      if (!inside(region, { x, y })) continue;
      const clearance = leaf.underside - heightAt(finish, { x, y });
      least = Math.min(least, clearance);
      if (clearance < -1e-6) first = Math.min(first, (turn / 90) * Math.abs(leaf.opens));
    }
  }
  return { least, first };
}

describe('any leaf over any finish', () => {
  const near = fc.double({ min: -1, max: 3.5, noNaN: true });
  const anyLeaf: fc.Arbitrary<Leaf> = fc.record({
    hinge: fc.record({ x: near, y: near }),
    shut: fc.record({ x: near, y: near }),
    length: fc.double({ min: 0.3, max: 3, noNaN: true }),
    opens: fc.double({ min: -3, max: 3, noNaN: true }),
    underside: fc.double({ min: -1, max: 2, noNaN: true })
  });
  const finish: fc.Arbitrary<Surface> = fc.oneof(
    anyPlane.map((plane): Surface => ({ kind: 'plane', plane })),
    anyFolded,
    anyWideTwist
  );
  const region = rectangleLoop(3, 2, { x: 0, y: 0 }, 0.2);

  test('no place under it is higher than told, and the told place is under it', () => {
    let over = 0;
    fc.assert(
      fc.property(anyLeaf, finish, (leaf, surface) => {
        const swing: Swing | { fault: string } = swingOf(leaf, surface, [region]);
        if ('fault' in swing) return;
        const { least, first } = lookedUp(leaf, surface, region);
        if (!swing.whole) {
          expect(least).toBe(Infinity);
          return;
        }
        over++;
        expect(swing.whole.clearance).toBeLessThanOrEqual(least + 1e-6);
        expect(inside(region, swing.whole.at)).toBe(true);
        expect(leaf.underside - heightAt(surface, swing.whole.at)).toBeCloseTo(swing.whole.clearance, 9);
        expect(swing.whole.opening).toBeLessThanOrEqual(Math.abs(leaf.opens));
        if (swing.shut) expect(swing.whole.clearance).toBeLessThanOrEqual(swing.shut.clearance + 1e-6);
        expect(swing.strikesAt !== undefined).toBe(swing.whole.clearance < -1e-6);
        expect(swing.strikesAt ?? Infinity).toBeLessThanOrEqual(first + 1e-6);
      }),
      { seed: SEED, numRuns: 300 }
    );
    expect(over).toBeGreaterThan(80);
  });

  test('leaves of no length or way, no finish, no opening', () => {
    const leaf = { hinge: { x: 1, y: 1 }, shut: { x: 1, y: 0 }, length: 1, opens: 0, underside: 0.1 };
    const level: Surface = { kind: 'plane', plane: { at: 0, alongX: 0, alongY: 0 } };
    expect(swingOf({ ...leaf, length: 0 }, level, [region])).toEqual({ fault: 'no-leaf' });
    expect(swingOf({ ...leaf, shut: { x: 0, y: 0 } }, level, [region])).toEqual({ fault: 'no-leaf' });
    expect(swingOf(leaf, level, [])).toEqual({});
    expect(swingOf(leaf, level, [region])).toMatchObject({ shut: { clearance: 0.1 }, whole: { clearance: 0.1 } });
    expect(sound(swingOf({ ...leaf, opens: 100 }, level, [region])).whole!.clearance).toBe(0.1);
  });

  test('a leaf is highest over the crest of the line a finish follows', () => {
    const path = [{ from: { x: 0, y: 1 }, to: { x: 3, y: 1 } }];
    const surface: Surface = {
      kind: 'along',
      line: { parts: [{ side: path[0]!, start: 0, length: 3 }], length: 3 },
      stations: [
        { at: 0, height: 0 },
        { at: 1.37, height: 0.05 },
        { at: 3, height: 0 }
      ],
      across: { kind: 'camber', fall: 0.03 }
    };
    const leaf = { hinge: { x: 1, y: 0.2 }, shut: { x: 1, y: 0 }, length: 1.9, opens: 2, underside: 0.04 };
    const swing = sound(swingOf(leaf, surface, [rectangleLoop(3, 2, { x: 0, y: 0 }, 0)]));
    expect(swing.whole!.finish).toBeCloseTo(0.05, 9);
    expect(swing.whole!.at.x).toBeCloseTo(1.37, 6);
  });
});
