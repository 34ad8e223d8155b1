import { radiusOf, signedAreaOf, turnLessSine } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/**
 * First moment of area within an outline about the origin, cubic metres each way: area times the place of its middle.
 * Exact with arcs; negative when the outline runs clockwise, so that holes run that way take theirs off.
 */
export function firstMomentOf(loop: Loop): Point {
  return loop.map(momentOfSide).reduce((sum, { x, y }) => ({ x: sum.x + x, y: sum.y + y }), { x: 0, y: 0 });
}

/** Of the triangle between a side's chord and the origin, and of what lies between chord and arc. */
function momentOfSide(side: Side): Point {
  const { from, to, arc } = side;
  const sixth = (from.x * to.y - to.x * from.y) / 6;
  const triangle = { x: (from.x + to.x) * sixth, y: (from.y + to.y) * sixth };
  if (!arc) return triangle;
  const { centre, turn } = arc;
  const radius = radiusOf(side, arc);
  const segment = (radius * radius * turnLessSine(turn)) / 2;
  const middle = Math.atan2(from.y - centre.y, from.x - centre.x) + turn / 2;
  const lever = (2 / 3) * (radius * Math.sin(turn / 2)) ** 3;
  return {
    x: triangle.x + segment * centre.x + lever * Math.cos(middle),
    y: triangle.y + segment * centre.y + lever * Math.sin(middle)
  };
}

/** The middle of the area within an outline, exact with arcs; of one that encloses nothing, where it begins. */
export function middleOf(loop: Loop): Point {
  const area = signedAreaOf(loop);
  const moment = firstMomentOf(loop);
  return area === 0 ? (loop[0]?.from ?? { x: 0, y: 0 }) : { x: moment.x / area, y: moment.y / area };
}
