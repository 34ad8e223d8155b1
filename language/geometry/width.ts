import { pointAlong } from './outline.ts';
import type { Loop, Point } from './shapes.ts';

/** Radians of arc between two points looked up on it: the width of a circle comes out 0.1 % short. */
const TURN_PER_LOOK_UP = Math.PI / 36;

/** The width of what lies within an outline, in metres, measured across its narrowest direction. */
export function narrowestWidthOf(loop: Loop): number {
  return narrowestWidth(pointsOn(loop));
}

/** Corners of an outline, and points on its arcs. */
export function pointsOn(loop: Loop): Point[] {
  return loop.flatMap(side => {
    const parts = side.arc ? Math.ceil(Math.abs(side.arc.turn) / TURN_PER_LOOK_UP) : 1;
    return Array.from({ length: parts }, (_, part) => pointAlong(side, part / parts));
  });
}

/** The width of a set of points in metres, measured across the direction in which it is least; nought of none. */
export function narrowestWidth(points: readonly Point[]): number {
  const hull = hullOf(points);
  if (hull.length < 3) return 0;
  // The least width of a convex outline is square to one of its sides.
  return hull.reduce((least, from, index) => {
    const to = hull[(index + 1) % hull.length] ?? from;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const furthest = hull.reduce((most, point) => Math.max(most, Math.abs(turning(from, to, point))), 0);
    return Math.min(least, furthest / length);
  }, Infinity);
}

/** Twice the area of a triangle: positive when it runs anticlockwise. */
function turning(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/**
 * The corners of the tightest convex outline round points, anticlockwise; a corner that stands out by no more than a
 * hair, in metres, is none.
 */
export function hullOf(points: readonly Point[], hair = 0): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...halfHull(sorted, hair), ...halfHull([...sorted].reverse(), hair)];
}

function halfHull(points: readonly Point[], hair: number): Point[] {
  const hull: Point[] = [];
  for (const point of points) {
    for (let last = hull[hull.length - 1], before = hull[hull.length - 2]; last && before;) {
      if (turning(before, last, point) > hair * Math.hypot(point.x - before.x, point.y - before.y)) break;
      hull.pop();
      last = hull[hull.length - 1];
      before = hull[hull.length - 2];
    }
    hull.push(point);
  }
  hull.pop();
  return hull;
}
