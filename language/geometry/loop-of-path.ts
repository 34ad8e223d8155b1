import { distance } from './outline.ts';
import type { Edge, Path } from './path-clip.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** In metres: corners nearer than this are one, and sides this near to one line are one side. */
const SAME_PLACE = 1e-9;

/** A path as an outline: edges of no length left out, straight ones that run on in one line joined, corners one point. */
export function loopOfPath(path: Path): Loop {
  const sides: Side[] = [];
  for (const edge of path) {
    const side = sideOf(edge);
    if (side.arc === undefined && distance(side.from, side.to) < SAME_PLACE) continue;
    add(sides, side);
  }
  for (
    let first = sides[0], last = sides.at(-1);
    sides.length > 3 && first && last;
    first = sides[0], last = sides.at(-1)
  ) {
    if (!runsOn(last, first)) break;
    sides.pop();
    sides[0] = { from: last.from, to: first.to };
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

/** An edge as a side of an outline. */
export function sideOf({ x0, y0, x1, y1, radius, centreX, centreY, turn }: Edge): Side {
  const ends = { from: { x: x0, y: y0 }, to: { x: x1, y: y1 } };
  return radius > 0 ? { ...ends, arc: { centre: { x: centreX, y: centreY }, turn } } : ends;
}

function add(sides: Side[], side: Side): void {
  const before = sides.at(-1);
  if (before === undefined || !runsOn(before, side)) sides.push(side);
  else if (distance(before.from, side.to) < SAME_PLACE) sides.pop();
  else sides[sides.length - 1] = { from: before.from, to: side.to };
}

/** Whether two straight sides that follow each other lie on one line, onward or back. */
function runsOn(before: Side, after: Side): boolean {
  if (before.arc !== undefined || after.arc !== undefined) return false;
  const { from, to } = before;
  const end = after.to;
  const longer = Math.max(distance(from, to), distance(to, end));
  return Math.abs(cross(from, to, end)) <= SAME_PLACE * longer;
}

function cross(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}
