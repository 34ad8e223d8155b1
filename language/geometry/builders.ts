import { turnedAbout } from './outline.ts';
import type { Loop, Point } from './shapes.ts';

/** Straight sides from corner to corner, in the order given, closed back to the first. */
export function cornerLoop(corners: readonly Point[]): Loop {
  return corners.map((from, index) => ({ from, to: corners[(index + 1) % corners.length] ?? from }));
}

/**
 * A rectangle in metres whose near-left corner lies at `corner` before it is turned about its centre, radians
 * anticlockwise. Sides run near, right, far, left: anticlockwise from the near-left corner, near being the low-y side.
 */
export function rectangleLoop(width: number, depth: number, corner: Point, turn: number): Loop {
  const right = corner.x + width;
  const far = corner.y + depth;
  const corners = [corner, { x: right, y: corner.y }, { x: right, y: far }, { x: corner.x, y: far }];
  if (turn === 0) return cornerLoop(corners);
  const centre = { x: corner.x + width / 2, y: corner.y + depth / 2 };
  return cornerLoop(corners.map(point => turnedAbout(point, centre, turn)));
}

/** A circle, radius in metres: one side, a full turn from the rightmost point anticlockwise. */
export function circleLoop(centre: Point, radius: number): Loop {
  const right = { x: centre.x + radius, y: centre.y };
  return [{ from: right, to: right, arc: { centre, turn: 2 * Math.PI } }];
}
