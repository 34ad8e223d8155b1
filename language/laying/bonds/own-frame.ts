import type { CourseFrame } from '../../geometry/grid-frame.ts';
import type { Edge, Path } from '../../geometry/path-clip.ts';
import type { Placement } from '../laid.ts';

/**
 * A unit's own frame as seen in the frame of its courses: the corner at its nought, and the way its length runs, of
 * length one. Where the courses are mirrored, a unit is seen from below: its width runs to the right of its length.
 */
export interface OwnFrame {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly mirrored: boolean;
}

/** Where a unit lies on the plan. */
export function placementOf(own: OwnFrame, courses: CourseFrame): Placement {
  const across = courses.mirrored ? -1 : 1;
  const { x, y } = onPlan(own.x, own.y, courses);
  return {
    x: courses.origin.x + x,
    y: courses.origin.y + y,
    direction: courses.direction + across * Math.atan2(own.uy, own.ux)
  };
}

/** A step in the frame of courses, as metres on the plan. */
export function onPlan(x: number, y: number, { direction, mirrored }: CourseFrame): { x: number; y: number } {
  const cosine = Math.cos(direction);
  const sine = Math.sin(direction);
  const up = mirrored ? -y : y;
  return { x: x * cosine - up * sine, y: x * sine + up * cosine };
}

/** Paths of the frame of courses, as a unit sees them; they still run anticlockwise round what is inside. */
export function inOwnFrame(paths: readonly Path[], own: OwnFrame): Path[] {
  return paths.map(path => {
    const edges = path.map(edge => edgeInOwnFrame(edge, own));
    return own.mirrored ? edges.map(reversed).reverse() : edges;
  });
}

function edgeInOwnFrame(edge: Edge, { x, y, ux, uy, mirrored }: OwnFrame): Edge {
  const up = mirrored ? -1 : 1;
  const along = (px: number, py: number): number => (px - x) * ux + (py - y) * uy;
  const across = (px: number, py: number): number => up * ((py - y) * ux - (px - x) * uy);
  const { x0, y0, x1, y1, centreX, centreY, radius, start, turn } = edge;
  const isArc = radius > 0;
  return {
    x0: along(x0, y0),
    y0: across(x0, y0),
    x1: along(x1, y1),
    y1: across(x1, y1),
    centreX: isArc ? along(centreX, centreY) : 0,
    centreY: isArc ? across(centreX, centreY) : 0,
    radius,
    start: isArc ? up * (start - Math.atan2(uy, ux)) : 0,
    turn: up * turn
  };
}

function reversed({ x0, y0, x1, y1, start, turn, ...circle }: Edge): Edge {
  return { ...circle, x0: x1, y0: y1, x1: x0, y1: y0, start: start + turn, turn: -turn };
}
