import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { chordCorners } from '../../drawing/chord-corners.ts';
import { lineBox, type Taken } from '../../drawing/taken.ts';
import {
  type Bounds,
  boundsOf,
  circleLoop,
  cornerLoop,
  distance,
  type Loop,
  type Point,
  rectangleLoop,
  type Side
} from '../../geometry/index.ts';
import { ground } from './page.ts';
import type { PlanSite, PlanThing, ThingKind } from './plan-site.ts';
import { isOnSheet, type Surroundings } from './surroundings.ts';

/** Half the width of a dot and of a cross, mm on paper. */
const DOT = 0.75;
const CROSS = 1.5;

/** Thickness of a leaf, mm on paper. */
export const LEAF = 1.5;

/** What lies under outlines and texts; lines and leaves lie over them. */
export const UNDER: ReadonlySet<ThingKind> = new Set(['soft spot', 'old paving', 'buried box', 'channel', 'gully']);

/** Set-out points may lie far out: the plan is not made smaller for them. */
export function withoutSetOut(site: PlanSite): PlanSite {
  return { ...site, things: site.things.filter(({ kind }) => kind !== 'set-out point') };
}

/** A line to an outlet begins in its dot: it is drawn before the dot is taken. */
export function outletsFirst(things: readonly PlanThing[]): [PlanThing[], PlanThing[]] {
  return [things.filter(({ kind }) => kind === 'outlet'), things.filter(({ kind }) => kind !== 'outlet')];
}

export function thingsUnder(things: readonly PlanThing[], sheet: Sheet): Shape[] {
  return things.filter(({ kind }) => UNDER.has(kind)).flatMap(thing => thingShapes(thing, sheet));
}

export function thingsOver(things: readonly PlanThing[], sheet: Sheet): Shape[] {
  return things.filter(({ kind }) => !UNDER.has(kind)).flatMap(thing => thingShapes(thing, sheet));
}

function thingShapes({ key, parts, told }: PlanThing, sheet: Sheet): Shape[] {
  return parts.map((part, index): Shape => {
    const shape = { key: index === 0 ? key : `${key}/${index + 1}`, ink: part.ink, says: told };
    const [leaf] = part.ink === 'leaf' && 'sides' in part ? part.sides : [];
    if (leaf) return { ...shape, kind: 'outlines', loops: [leafLoop(leaf, ground(sheet, LEAF))] };
    return 'loop' in part
      ? { ...shape, kind: 'outlines', loops: [part.loop] }
      : { ...shape, kind: 'line', sides: part.sides };
  });
}

/** A leaf has a thickness, so that it is seen over an edging. */
export function leafLoop({ from, to }: Side, thickness: number): Loop {
  const [width, turn] = [distance(from, to), Math.atan2(to.y - from.y, to.x - from.x)];
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return rectangleLoop(width, thickness, { x: middle.x - width / 2, y: middle.y - thickness / 2 }, turn);
}

/** Hinges and outlets round, set-out points square on end. */
export function dotShapes(things: readonly PlanThing[], sheet: Sheet): Shape[] {
  return things.flatMap(({ key, kind, dots, told }) =>
    dots.map((at, index): Shape => ({
      kind: 'outlines',
      key: `${key}/dot-${index + 1}`,
      ink: 'dot',
      loops: [kind === 'set-out point' ? diamond(at, ground(sheet, 1)) : circleLoop(at, ground(sheet, DOT))],
      says: told
    }))
  );
}

/** Set-out points for which there is room on the sheet. */
export function setOutShapes({ things }: PlanSite, { sheet, taken }: Surroundings): Shape[] {
  const width = ground(sheet, 2);
  const points = things
    .filter(({ kind }) => kind === 'set-out point')
    .filter(({ dots }) =>
      dots.every(at => {
        const box = { at, width, height: width, turn: 0 };
        if (!taken.isFree(box) || !isOnSheet(box, sheet)) return false;
        taken.add(box);
        return true;
      })
    );
  return dotShapes(points, sheet);
}

export function diamond({ x, y }: Point, half: number): Loop {
  return cornerLoop([
    { x: x + half, y },
    { x, y: y + half },
    { x: x - half, y },
    { x, y: y - half }
  ]);
}

/** Small upright crosses at points. */
export function crossShapes({ points }: Pick<PlanSite, 'points'>, sheet: Sheet): Shape[] {
  const half = ground(sheet, CROSS);
  return points.flatMap(({ key, name, at: { x, y } }): Shape[] => {
    if (name === undefined) return [];
    const line = (part: string, right: number, up: number): Shape => ({
      kind: 'line',
      key: `${key}/cross/${part}`,
      ink: 'cross',
      sides: [{ from: { x: x - right, y: y - up }, to: { x: x + right, y: y + up } }],
      says: `Point ${name}`
    });
    return [line('across', half, 0), line('up', 0, half)];
  });
}

/** Lines, dots and crosses: no text lies over them where it can be helped. */
export function takeThings({ points, things }: PlanSite, sheet: Sheet, taken: Taken): void {
  const width = ground(sheet, 2 * DOT);
  for (const at of things.flatMap(({ dots }) => dots)) taken.add({ at, width, height: width, turn: 0 });
  for (const { at, name } of points) {
    if (name !== undefined) taken.add({ at, width, height: width, turn: 0 });
  }
  for (const part of things.flatMap(({ parts }) => parts)) {
    const sides = 'loop' in part ? part.loop : part.sides;
    for (const side of sides) {
      const corners = [...chordCorners([side]), side.to];
      corners.slice(1).forEach((to, index) => taken.add(lineBox(corners[index]!, to)));
    }
  }
}

/** How far things and points reach. */
export function boundsOfSite({ points, things }: PlanSite): Bounds[] {
  const loops = things.flatMap(({ parts }) => parts.map(part => ('loop' in part ? part.loop : part.sides)));
  const spots = [...points.map(({ at }) => at), ...things.flatMap(({ dots }) => dots)];
  return [
    ...loops.filter(sides => sides.length > 0).map(boundsOf),
    ...spots.map(({ x, y }): Bounds => ({ left: x, right: x, bottom: y, top: y }))
  ];
}
