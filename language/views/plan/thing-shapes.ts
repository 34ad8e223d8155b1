import type { Shape, Sheet } from '../../drawing/drawing.ts';
import { chordCorners } from '../../drawing/chord-corners.ts';
import { lineBox, type Taken } from '../../drawing/taken.ts';
import { type Bounds, boundsOf, circleLoop, cornerLoop, type Loop, type Point } from '../../geometry/index.ts';
import { ground } from './page.ts';
import type { PlanSite, PlanThing, ThingKind } from './plan-site.ts';

/** Half the width of a dot and of a cross, mm on paper. */
const DOT = 0.75;
const CROSS = 1.5;

/** What lies under outlines and texts; lines and leaves lie over them. */
const UNDER: ReadonlySet<ThingKind> = new Set(['soft spot', 'old paving', 'buried box', 'channel', 'gully']);

export function thingsUnder(things: readonly PlanThing[], sheet: Sheet): Shape[] {
  return things.filter(({ kind }) => UNDER.has(kind)).flatMap(thing => thingShapes(thing, sheet));
}

export function thingsOver(things: readonly PlanThing[], sheet: Sheet): Shape[] {
  return things.filter(({ kind }) => !UNDER.has(kind)).flatMap(thing => thingShapes(thing, sheet));
}

function thingShapes({ key, kind, parts, dots, told }: PlanThing, sheet: Sheet): Shape[] {
  return [
    ...parts.map((part, index): Shape => {
      const shape = { key: index === 0 ? key : `${key}/${index + 1}`, ink: part.ink, says: told };
      return 'loop' in part
        ? { ...shape, kind: 'outlines', loops: [part.loop] }
        : { ...shape, kind: 'line', sides: part.sides };
    }),
    ...dots.map((at, index): Shape => ({
      kind: 'outlines',
      key: `${key}/dot-${index + 1}`,
      ink: 'dot',
      loops: [kind === 'set-out point' ? diamond(at, ground(sheet, 1)) : circleLoop(at, ground(sheet, DOT))],
      says: told
    }))
  ];
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
