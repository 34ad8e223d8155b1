import { contactsBetween } from '../../geometry/contacts.ts';
import { distance, inside, type Loop, type Point, pointAlong, type Side, sideLength } from '../../geometry/index.ts';
import { shareOfTurn } from '../../geometry/contacts.ts';

/** The line of a section with a straight piece before its start and past its end. */
export interface CutLine {
  readonly length: number;
  readonly past: number;
  readonly parts: readonly { readonly side: Side; readonly start: number; readonly length: number }[];
}

/** How much is shown beyond the ends: a share of the length within limits, m. */
const SHARE = 0.05;
const LEAST = 0.2;
const MOST = 0.6;

/** m: a side shorter than this has no direction. */
const NO_LENGTH = 1e-9;

/** m: crossings of outlines nearer than this are one. */
const TOUCH = 1e-6;

/** Undefined where the line has no length. */
export function cutLine(sides: Loop): CutLine | undefined {
  const longEnough = sides.filter(side => sideLength(side) > NO_LENGTH);
  const [first, last] = [longEnough[0], longEnough.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const length = longEnough.reduce((sum, side) => sum + sideLength(side), 0);
  const past = Math.min(MOST, Math.max(LEAST, SHARE * length));
  const before = { from: beyond(first, 0, past), to: first.from };
  const after = { from: last.to, to: beyond(last, 1, past) };
  let start = -past;
  const parts = [before, ...longEnough, after].map(side => {
    const part = { side, start, length: sideLength(side) };
    start += part.length;
    return part;
  });
  return { length, past, parts };
}

/** A hair along the side tells its way at its end. */
const HAIR = 1e-4;

function beyond(side: Side, share: 0 | 1, past: number): Point {
  const end = pointAlong(side, share);
  const near = pointAlong(side, share === 0 ? HAIR : 1 - HAIR);
  const length = distance(end, near) || 1;
  return { x: end.x + ((end.x - near.x) / length) * past, y: end.y + ((end.y - near.y) / length) * past };
}

/** The place on the plan at a station. */
export function placeAt({ parts }: CutLine, at: number): Point {
  const part = parts.find(({ start, length }) => at <= start + length) ?? parts.at(-1)!;
  return pointAlong(part.side, Math.min(1, Math.max(0, (at - part.start) / part.length)));
}

/** Stations at which sides are crossed, with the side crossed. */
export function crossings(line: CutLine, sides: readonly Side[]): { at: number; side: number }[] {
  return sides.flatMap((side, index) =>
    line.parts.flatMap(part =>
      contactsBetween(part.side, side, TOUCH).map(point => ({ at: stationOf(part, point), side: index }))
    )
  );
}

function stationOf({ side, start, length }: CutLine['parts'][number], point: Point): number {
  if (side.arc !== undefined) return start + length * Math.min(1, shareOfTurn(side, side.arc, point));
  return start + Math.min(length, distance(side.from, point));
}

/** m: a shorter stretch within an outline is none. */
const SHORT = 0.004;

/** The stretch of the line within an outline, from where it first comes in. */
export function spanWithin(line: CutLine, outline: readonly Side[]): { from: number; to: number } | undefined {
  const ends = [-line.past, line.length + line.past].filter(end => inside(outline, placeAt(line, end)));
  const stations = [...crossings(line, outline).map(({ at }) => at), ...ends].sort((a, b) => a - b);
  const index = stations.findIndex((at, one) => {
    const next = stations[one + 1];
    return next !== undefined && next - at > SHORT && inside(outline, placeAt(line, (at + next) / 2));
  });
  return index < 0 ? undefined : { from: stations[index]!, to: stations[index + 1]! };
}
