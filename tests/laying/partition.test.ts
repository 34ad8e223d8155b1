// Units, pieces and joints part a field without a gap and without an overlap: random outlines with arcs and keep-outs,
// random starts and turns, fixed seeds, each bond of a repeating cell.
import { Clipper, FillRule } from 'clipper2-ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { planArea, planFor } from '../../language/geometry/chords.ts';
import {
  distance,
  EDGE_TOLERANCE,
  inside,
  type Loop,
  loopWithin,
  type Point,
  rectangleLoop,
  type Region,
  regionArea,
  signedAreaOf
} from '../../language/geometry/index.ts';
import { distanceToSide } from '../../language/geometry/contacts.ts';
import { pointAlong } from '../../language/geometry/outline.ts';
import type { AreaToLay, FieldToLay } from '../../language/laying/area-to-lay.ts';
import { layArea } from '../../language/laying/lay-area.ts';
import type { LaidUnits, Piece, Placement } from '../../language/laying/laid.ts';
import { layPattern } from '../../language/laying/bonds/lay-pattern.ts';
import { drain } from '../../language/paving.ts';
import { chorded } from '../geometry/random-outlines.ts';
import { polygonOf, sharedArea } from '../geometry/second-opinion.ts';
import { bondFields, codedFields, movedArea, onPlan, patternOf, randomAreas, regionOf } from './random-fields.ts';
import { countsOf, fieldOf } from './spec.ts';

/** Our own arithmetic against itself, relative. */
const OWN = 1e-9;
/** Against a library that works with chords and whole numbers, relative. */
const OTHERS = 1e-6;
/** Metres: rounding of places on the plan. */
const NEAR = 1e-7;
const CHORDS = 12;

let fields: ReadonlyMap<string, FieldToLay>;
let coded: ReadonlyMap<string, FieldToLay>;
beforeAll(async () => {
  fields = await bondFields();
  coded = await codedFields();
});

/** The field of an area with every unit that the edge so much as touches cut, and every shaving laid. */
function laidExactly(area: AreaToLay): LaidUnits {
  const laid = drain(layPattern(regionOf(area), patternOf(area), 0));
  if ('tooMany' in laid) throw new Error(`about ${laid.tooMany} units`);
  return laid;
}

function sizeOf(area: AreaToLay, unit: string): { length: number; width: number } {
  return area.field.units.find(({ key }) => key === unit)!;
}

function wholePlaces({ wholes }: LaidUnits): { unit: string; at: Placement }[] {
  return wholes.flatMap(({ unit, first, step, count }) =>
    Array.from({ length: count }, (_, index) => ({
      unit,
      at: { ...first, x: first.x + index * step.x, y: first.y + index * step.y }
    }))
  );
}

function unitLoop({ length, width }: { length: number; width: number }, at: Placement): Loop {
  return onPlan(rectangleLoop(length, width, { x: 0, y: 0 }, 0), at);
}

describe('Units, pieces and joints', () => {
  it('have the net area together, joints clipped on their own; pieces have the areas of their outlines', () => {
    for (const { area, bond } of randomAreas(fields, 400, 501)) {
      const laid = laidExactly(area);
      const net = regionArea(regionOf(area));
      expect(Math.abs((laid.unitArea + laid.jointArea) / net - 1), bond).toBeLessThan(OWN);
      const whole = laid.wholes.reduce((sum, { unit, count }) => {
        const { length, width } = sizeOf(area, unit);
        return sum + count * length * width;
      }, 0);
      const cut = laid.cuts.flatMap(({ pieces }) => pieces).reduce((sum, piece) => sum + piece.area, 0);
      expect(Math.abs((whole + cut) / laid.unitArea - 1), bond).toBeLessThan(OWN);
      for (const { unit, pieces } of laid.cuts) {
        const { length, width } = sizeOf(area, unit);
        expect(pieces.flatMap(piece => faultsOf(piece, length, width))).toEqual([]);
      }
    }
  });

  it('lie in the field at their places, face up', () => {
    for (const { area } of randomAreas(fields, 120, 502)) {
      const laid = laidExactly(area);
      const region = regionOf(area);
      const astray = laid.cuts.filter(({ at, pieces }) => !pieces.every(piece => liesWithin(piece, at, region)));
      expect(astray).toEqual([]);
      const corners = wholePlaces(laid).flatMap(({ unit, at }) => unitLoop(sizeOf(area, unit), at));
      expect(corners.filter(({ from }) => !isWithin(from, region))).toEqual([]);
    }
  });

  it('do not overlap', () => {
    for (const { area } of randomAreas(fields, 120, 503)) {
      const laid = laidExactly(area);
      const units = [...wholePlaces(laid), ...laid.cuts];
      expect(firstOverlap(units.map(({ unit, at }) => unitLoop(sizeOf(area, unit), at)))).toBeUndefined();
      const meeting = laid.cuts.filter(({ pieces }) =>
        pieces.some((piece, index) => pieces.slice(index + 1).some(other => meet(piece, other)))
      );
      expect(meeting).toEqual([]);
    }
  });
});

describe('Against an independent library', () => {
  it('pieces are what the field and their unit have in common', () => {
    for (const { area: curved } of randomAreas(fields, 48, 504)) {
      const area = straightened(curved);
      const laid = laidExactly(area);
      const field = polygonOf(regionOf(area));
      for (const { unit, at, pieces } of laid.cuts) {
        const size = sizeOf(area, unit);
        const own = polygonOf({ outer: unitLoop(size, at), holes: [] });
        const expected = sharedArea(own, field);
        const together = pieces.reduce((sum, piece) => sum + piece.area, 0);
        const within = pieces.reduce((sum, piece) => {
          const placed = { outer: onPlan(piece.outline, at), holes: piece.holes.map(hole => onPlan(hole, at)) };
          return sum + sharedArea(polygonOf(placed), field);
        }, 0);
        const most = OTHERS * size.length * size.width;
        expect(Math.abs(together - expected)).toBeLessThan(most);
        expect(Math.abs(within - expected)).toBeLessThan(most);
      }
    }
  });

  it('units and pieces cover what the field has but for joints, on the same chords', () => {
    for (const { area: curved } of randomAreas(fields, 200, 505)) {
      const area = straightened(curved);
      const laid = laidExactly(area);
      const region = regionOf(area);
      const plan = planFor([region.outer])!;
      const inPlan = (loop: Loop, way: number): Point[] => {
        const corners = loop.map(({ from: { x, y } }) => ({
          x: Math.round((x - plan.origin.x) * plan.scale),
          y: Math.round((y - plan.origin.y) * plan.scale)
        }));
        return signedAreaOf(loop) * way > 0 ? corners : corners.reverse();
      };
      const field = [inPlan(region.outer, 1), ...region.holes.map(hole => inPlan(hole, -1))];
      const units = wholePlaces(laid).map(({ unit, at }) => inPlan(unitLoop(sizeOf(area, unit), at), 1));
      const pieces = laid.cuts.flatMap(({ at, pieces: cut }) =>
        cut.flatMap(({ outline, holes }) => [
          inPlan(onPlan(outline, at), 1),
          ...holes.map(hole => inPlan(onPlan(hole, at), -1))
        ])
      );
      const covered = Clipper.union([...units, ...pieces], FillRule.NonZero);
      const net = planArea(field, plan);
      // Together as large as each by itself: none lies on another.
      expect(Math.abs(planArea(covered, plan) - laid.unitArea) / net).toBeLessThan(OTHERS);
      expect(planArea(Clipper.difference(covered, field, FillRule.NonZero), plan) / net).toBeLessThan(OTHERS);
      const joints = planArea(Clipper.difference(field, covered, FillRule.NonZero), plan);
      expect(Math.abs(joints - laid.jointArea) / net).toBeLessThan(OTHERS);
    }
  });
});

/** The same area with its arcs as chords, as the library wants it. */
function straightened(area: AreaToLay): AreaToLay {
  return {
    ...area,
    outline: chorded(area.outline, CHORDS),
    keptOut: area.keptOut.map(({ key, outline }) => ({ key, outline: chorded(outline, CHORDS) }))
  };
}

it('Bonds laid by code fill the net area, too', () => {
  let rings = 0;
  for (const { area, bond } of randomAreas(coded, 120, 507)) {
    if (bond === 'rings' && isTooSmallForRings(area)) continue;
    if (bond === 'rings') rings++;
    const { laid, how } = fieldOf(area);
    const filled = laid.unitArea + laid.jointArea + (how!.open?.area ?? 0);
    // Joints of rings lie between arcs and straight units: these alone are measured by chords.
    expect(Math.abs(filled / regionArea(regionOf(area)) - 1), bond).toBeLessThan(bond === 'rings' ? OTHERS : OWN);
  }
  expect(rings).toBeGreaterThan(10);
});

/** Rings whose joints may hardly open begin beyond a small field: nothing is laid, and that is told. */
function isTooSmallForRings(area: AreaToLay): boolean {
  const laid = drain(layArea(area));
  return 'noRingWithin' in laid;
}

it('Mirrored, moved and turned jobs take the same units, pieces and joints, in every bond', () => {
  for (const { area, bond, next } of [...randomAreas(fields, 240, 506), ...randomAreas(coded, 120, 508)]) {
    if (bond === 'rings' && isTooSmallForRings(area)) continue;
    const motion = { mirrored: next() < 0.5, turn: 6 * next(), move: { x: 900 * next(), y: -400 * next() } };
    const [here, there] = [summary(area), summary(movedArea(area, motion))];
    expect(there.counts, bond).toEqual(here.counts);
    expect(there.sizes.length, bond).toBe(here.sizes.length);
    const apart = there.sizes.map((size, index) => Math.abs(size - here.sizes[index]!));
    expect(Math.max(0, ...apart), bond).toBeLessThan(OWN);
    const joints = Math.abs(there.jointArea - here.jointArea) / regionArea(regionOf(area));
    expect(joints, bond).toBeLessThan(bond === 'rings' ? OTHERS : OWN);
  }
});

function summary(area: AreaToLay): { counts: object; sizes: number[]; jointArea: number } {
  const field = fieldOf(area);
  const counts = Object.entries(countsOf(field)).map(([unit, { whole, pieces }]) => ({ unit, whole, pieces }));
  return {
    counts: counts
      .map(({ unit, whole, pieces }) => ({ unit, whole, cut: pieces.length }))
      .sort((a, b) => a.unit.localeCompare(b.unit)),
    sizes: counts.flatMap(({ pieces }) => pieces).sort((a, b) => a - b),
    jointArea: field.laid.jointArea
  };
}

/** What is wrong with a piece as such: gaps in its outlines, corners outside its unit, the way round, the area. */
function faultsOf({ outline, holes, area }: Piece, length: number, width: number): string[] {
  const gaps = [outline, ...holes].flatMap(loop =>
    loop.filter(({ to }, index) => distance(to, loop[(index + 1) % loop.length]!.from) > NEAR)
  );
  const outside = [outline, ...holes].flatMap(loop =>
    loop.filter(({ from: { x, y } }) => Math.min(x, y, length - x, width - y) < -NEAR)
  );
  const [outer = 0, ...inner] = [outline, ...holes].map(signedAreaOf);
  const signed = inner.reduce((sum, hole) => sum + hole, outer);
  const faults: string[] = [];
  if (gaps.length > 0) faults.push('does not close');
  if (outside.length > 0) faults.push('reaches out of its unit');
  if (!(outer > 0) || inner.some(hole => !(hole < 0))) faults.push('runs the wrong way round');
  if (!(Math.abs(signed - area) < OWN * length * width)) faults.push('has another area than its outline');
  return faults;
}

function liesWithin(piece: Piece, at: Placement, { outer, holes }: Region): boolean {
  const outline = onPlan(piece.outline, at);
  if (!loopWithin(outline, outer)) return false;
  return holes.every(hole => {
    const reachesIn = outline.some(side => isStrictlyInside(hole, pointAlong(side, 0.5)));
    const isOwnHole = piece.holes.some(own => onPlan(own, at).every(side => inside(hole, pointAlong(side, 0.5))));
    const pokesIn = !isOwnHole && hole.some(side => isStrictlyInside(outline, side.from));
    return !reachesIn && !pokesIn;
  });
}

function isWithin(point: Point, { outer, holes }: Region): boolean {
  return inside(outer, point) && !holes.some(hole => isStrictlyInside(hole, point));
}

/** Inside, and not on the edge. */
function isStrictlyInside(loop: Loop, point: Point): boolean {
  return inside(loop, point) && loop.every(side => distanceToSide(side, point) > EDGE_TOLERANCE);
}

function meet(one: Piece, other: Piece): boolean {
  return [
    [one, other],
    [other, one]
  ].some(([inner, outer]) => inner!.outline.some(side => isStrictlyInside(outer!.outline, pointAlong(side, 0.5))));
}

/** The first two of many rectangles that overlap by more than rounding. */
function firstOverlap(rectangles: readonly Loop[]): [number, number] | undefined {
  const near = new Map<string, number[]>();
  const reach = Math.max(...rectangles.map(loop => distance(loop[0]!.from, loop[2]!.from)));
  for (const [index, loop] of rectangles.entries()) {
    const [column, row] = [Math.floor(loop[0]!.from.x / reach), Math.floor(loop[0]!.from.y / reach)];
    for (let across = -1; across <= 1; across++)
      for (let up = -1; up <= 1; up++) {
        const other = near
          .get(`${column + across} ${row + up}`)
          ?.find(candidate => !areApart(rectangles[candidate]!, loop));
        if (other !== undefined) return [other, index];
      }
    const here = near.get(`${column} ${row}`) ?? [];
    here.push(index);
    near.set(`${column} ${row}`, here);
  }
  return undefined;
}

/** Whether a side of one of two rectangles has all of the other beyond it, but for rounding. */
function areApart(one: Loop, other: Loop): boolean {
  return [
    [one, other],
    [other, one]
  ].some(([first, second]) =>
    first!.some(({ from, to }) => {
      const length = distance(from, to);
      return second!.every(({ from: { x, y } }) => {
        const inward = ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length;
        return inward <= OWN;
      });
    })
  );
}
