import { apart, boundsOfSide } from './bounds.ts';
import { contactsBetween, distanceToSide } from './contacts.ts';
import { areaOf, distance, pointAlong, sideLength } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** Two sides of an outline, by their place in it, and a point where they cross or touch. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly at: Point;
}

/** In square metres, a millimetre squared: an outline of less than this has no area to pave. */
export const SMALLEST_OUTLINE_AREA = 1e-6;

/** In metres: sides nearer than this touch. Far below anything set out on site, far above rounding of coordinates. */
const TOUCH_TOLERANCE = 1e-6;

/** In metres: a contact this near to the corner two neighbours share is that corner. Tangent sides meet this vaguely. */
const CORNER_REACH = 1e-5;

/** Whether an outline holds no area, or coordinates that are no numbers. */
export function isDegenerate(loop: Loop): boolean {
  return !(areaOf(loop) >= SMALLEST_OUTLINE_AREA);
}

/** The first two sides that cross or touch other than at the corner they share, or that fold back on each other. */
export function selfCrossing(loop: Loop): Crossing | undefined {
  // Sides of no length are repeated points: leaving them out makes their neighbours each other's neighbours.
  const sides = loop
    .map((side, index) => ({ side, index, box: boundsOfSide(side) }))
    .filter(({ side }) => sideLength(side) > TOUCH_TOLERANCE);
  const count = sides.length;
  for (const [place, one] of sides.entries()) {
    for (let next = place + 1; next < count; next++) {
      const other = sides[next];
      if (!other || apart(one.box, other.box, TOUCH_TOLERANCE)) continue;
      const shared: Point[] = [];
      if (next === place + 1) shared.push(one.side.to);
      if (place === 0 && next === count - 1) shared.push(one.side.from);
      const at = contactAway(one.side, other.side, shared);
      if (at) return { first: one.index, second: other.index, at };
    }
  }
  return undefined;
}

function contactAway(a: Side, b: Side, shared: readonly Point[]): Point | undefined {
  // Ends and middles find sides that run on top of each other, where no single point of crossing exists.
  const candidates = [
    ...contactsBetween(a, b, TOUCH_TOLERANCE),
    ...onSide(a, [b.from, b.to, pointAlong(b, 0.5)]),
    ...onSide(b, [a.from, a.to, pointAlong(a, 0.5)])
  ];
  return candidates.find(point => shared.every(corner => distance(corner, point) > CORNER_REACH));
}

function onSide(side: Side, points: readonly Point[]): Point[] {
  return points.filter(point => distanceToSide(side, point) <= TOUCH_TOLERANCE);
}
