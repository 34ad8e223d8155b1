import type { Point } from '../geometry/index.ts';

/** A line with a direction of length one; what lies on its left counts. */
export interface HalfPlane {
  readonly on: Point;
  readonly way: Point;
}

export function halfPlane(on: Point, to: Point): HalfPlane {
  const length = Math.hypot(to.x - on.x, to.y - on.y);
  return { on, way: { x: (to.x - on.x) / length, y: (to.y - on.y) / length } };
}

/** Metres that a point lies left of the line. */
export function leftOf({ on, way }: HalfPlane, { x, y }: Point): number {
  return way.x * (y - on.y) - way.y * (x - on.x);
}

/** The corners of a convex shape that is cut to what lies on the left of a line. */
export function cutTo(corners: readonly Point[], line: HalfPlane): Point[] {
  const kept: Point[] = [];
  for (const [index, corner] of corners.entries()) {
    const before = corners.at(index - 1)!;
    const [from, to] = [leftOf(line, before), leftOf(line, corner)];
    if ((from < 0 && to > 0) || (from > 0 && to < 0)) {
      const share = from / (from - to);
      kept.push({ x: before.x + share * (corner.x - before.x), y: before.y + share * (corner.y - before.y) });
    }
    if (to >= 0) kept.push(corner);
  }
  return kept;
}
