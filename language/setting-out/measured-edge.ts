import { distance, type Loop, type Point, type Side } from '../geometry/index.ts';
import { linesMeet } from '../geometry/contacts.ts';
import { SAME_POINT } from '../geometry/moved-side.ts';

/** How far an edge lies off the straight line between its ends, out of the area positive, at a distance along it; metres. */
export interface OffsetAt {
  readonly at: number;
  readonly off: number;
}

/**
 * A loop some of whose straight sides were measured: for each of its sides those that stand in its place, straight from
 * offset to offset. `measured` leads from the place of a side to its offsets in the order in which the side runs, from one
 * of its ends to the other. Where the edge begins off its corner, the straight side beside it is made longer or shorter;
 * beside an arc, or where the two run one way, a step joins them.
 */
export function withMeasuredEdges(
  loop: Loop,
  measured: ReadonlyMap<number, readonly OffsetAt[]>,
  anticlockwise: boolean
): readonly (readonly Side[])[] {
  const parts = loop.map((side, index) => {
    const offsets = measured.get(index);
    return offsets === undefined ? [side] : partsOf(side, offsets, anticlockwise);
  });
  for (const index of parts.keys()) joinWithNext(parts, index, measured);
  return parts;
}

function partsOf({ from, to }: Side, offsets: readonly OffsetAt[], anticlockwise: boolean): Side[] {
  const length = distance(from, to);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  // Out of an area that runs anticlockwise is to the right.
  const way = anticlockwise ? 1 : -1;
  const points = offsets.map(({ at, off }, index): Point => {
    if (off === 0 && index === 0) return from;
    if (off === 0 && index === offsets.length - 1) return to;
    return { x: from.x + at * along.x + way * off * along.y, y: from.y + at * along.y - way * off * along.x };
  });
  return points.slice(1).map((point, index) => ({ from: points[index]!, to: point }));
}

/** Makes the end of one side's parts the beginning of the next one's. */
function joinWithNext(parts: Side[][], index: number, measured: ReadonlyMap<number, readonly OffsetAt[]>): void {
  const next = (index + 1) % parts.length;
  const before = parts[index]!;
  const after = parts[next]!;
  const [last, first] = [before.at(-1)!, after[0]!];
  if (distance(last.to, first.from) <= SAME_POINT) return;
  const corner = cornerOf(last, first);
  if (corner !== undefined) {
    before[before.length - 1] = { ...last, to: corner };
    after[0] = { ...first, from: corner };
    return;
  }
  const step = { from: last.to, to: first.from };
  if (measured.has(index)) before.push(step);
  else after.unshift(step);
}

/** Where two straight sides meet when prolonged or cut back, none of them turned round by it or drawn out far. */
function cornerOf(last: Side, first: Side): Point | undefined {
  if (last.arc !== undefined || first.arc !== undefined) return undefined;
  const [corner] = linesMeet(last.from, last.to, first.from, first.to);
  if (corner === undefined) return undefined;
  const gap = distance(last.to, first.from);
  const isNear = Math.max(distance(corner, last.to), distance(corner, first.from)) <= MOST_DRAWN_OUT * gap;
  const goesOn = isAhead(last.from, corner, last) && isAhead(corner, first.to, first);
  return isNear && goesOn ? corner : undefined;
}

/** Sides that meet at less than about fifteen degrees are joined by a step. */
const MOST_DRAWN_OUT = 4;

function isAhead(from: Point, to: Point, { from: start, to: end }: Side): boolean {
  return (to.x - from.x) * (end.x - start.x) + (to.y - from.y) * (end.y - start.y) > 0;
}
