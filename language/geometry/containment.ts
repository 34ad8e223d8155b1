import { apart, boundsOf } from './bounds.ts';
import { contactsBetween, distanceToSide, shareOfTurn } from './contacts.ts';
import { crossedOddly, runsOf } from './level-line.ts';
import { pointAlong, sideLength } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** In metres: a point this near to the edge lies on it, and the edge belongs to the outline. */
export const EDGE_TOLERANCE = 1e-6;

/** Shares of a stretch at which it is looked up: its middle, and near both ends for stretches that graze a corner. */
const LOOKED_UP = [0.5, 0.05, 0.95];

/** Whether a point lies inside an outline or on its edge, within a micrometre. */
export function inside(loop: Loop, point: Point): boolean {
  return onEdge(loop, point) || crossedOddly(runsOf([loop]), point);
}

function onEdge(loop: Loop, point: Point): boolean {
  return loop.some(side => distanceToSide(side, point) <= EDGE_TOLERANCE);
}

/** Whether an outline lies inside another; it may touch the edge from inside, or overrun it by a micrometre. */
export function loopWithin(inner: Loop, outer: Loop): boolean {
  if (inner.length === 0 || apart(boundsOf(inner), boundsOf(outer), EDGE_TOLERANCE)) return false;
  const outerRuns = runsOf([outer]);
  const innerRuns = runsOf([inner]);
  const lies = (point: Point): boolean => crossedOddly(outerRuns, point) || onEdge(outer, point);
  // A corner of the outer outline that pokes into the inner one shows an overrun between two crossings close together.
  const pokesIn = (side: Side): boolean => !onEdge(inner, side.from) && crossedOddly(innerRuns, side.from);
  return !outer.some(pokesIn) && inner.every(side => stretches(side, outer).every(lies));
}

/** Points to look up on a side: some on each stretch between its crossings with an outline. */
function stretches(side: Side, outline: Loop): Point[] {
  const meets = outline.flatMap(other => contactsBetween(side, other, EDGE_TOLERANCE));
  const shares = [0, ...meets.map(point => shareAlong(side, point)), 1].sort((a, b) => a - b);
  return shares.slice(1).flatMap((end, index) => {
    const start = shares[index] ?? 0;
    return LOOKED_UP.map(part => pointAlong(side, start + part * (end - start)));
  });
}

/** How far along a side a point on it lies: 0 at `from`, 1 at `to`. */
export function shareAlong(side: Side, point: Point): number {
  const { from, to, arc } = side;
  const length = sideLength(side);
  const share = arc
    ? shareOfTurn(side, arc, point)
    : ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / (length * length);
  return Math.min(1, Math.max(0, share));
}
