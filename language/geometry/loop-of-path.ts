import { distance } from './outline.ts';
import { loopOf, type Path } from './path-clip.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** In metres: corners nearer than this are one, and sides this near to one line are one side. */
const SAME_PLACE = 1e-9;

/**
 * A path as the outline of a piece: sides of no length left out, straight ones that run on in one line joined, each
 * corner one point.
 */
export function joinedLoopOf(path: Path): Loop {
  const sides: Side[] = [];
  for (const side of loopOf(path)) {
    const before = sides.at(-1);
    if (side.arc === undefined && distance(side.from, side.to) < SAME_PLACE) continue;
    if (before === undefined || !runsOn(before, side)) sides.push(side);
    else sides[sides.length - 1] = { from: before.from, to: side.to };
  }
  while (sides.length > 3 && runsOn(sides.at(-1)!, sides[0]!)) {
    const last = sides.pop()!;
    sides[0] = { from: last.from, to: sides[0]!.to };
  }
  return closed(sides);
}

/** Each side begins in the very point where the one before it ends: a hair between them would leave an outline open. */
function closed(sides: readonly Side[]): Loop {
  return sides.map((side, index) => {
    const before = sides[(index + sides.length - 1) % sides.length]!;
    return distance(before.to, side.from) < SAME_PLACE ? { ...side, from: before.to } : side;
  });
}

/** Whether two straight sides that follow each other lie on one line. */
function runsOn(before: Side, after: Side): boolean {
  if (before.arc !== undefined || after.arc !== undefined) return false;
  const { from, to } = before;
  const end = after.to;
  return Math.abs(cross(from, to, end)) <= SAME_PLACE * Math.max(distance(from, to), distance(to, end));
}

function cross(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}
