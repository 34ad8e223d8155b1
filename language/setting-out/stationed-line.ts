import type { Point, Side } from '../geometry/index.ts';
import { distance, pointAlong, radiusOf, sideLength, turnedAbout } from '../geometry/index.ts';
import { shareOfTurn } from '../geometry/contacts.ts';
import { heading } from '../geometry/moved-side.ts';

/**
 * An open line of straights and arcs with stations: metres along it from its start. It is prolonged straight beyond both
 * ends, where stations are below nought or above its length.
 */
export interface StationedLine {
  readonly parts: readonly StationedPart[];
  /** Metres. */
  readonly length: number;
}

/** A side of the line and the station it starts at, in metres. */
export interface StationedPart {
  readonly side: Side;
  readonly start: number;
  readonly length: number;
}

/** `no-length`: nothing to walk along. `gap`: the side of that index does not begin where the one before it ends. */
export type LineFault = { readonly fault: 'no-length' } | { readonly fault: 'gap'; readonly side: number };

/** A place by its station and how far off the line it lies, in metres, positive to the left of the way it runs. */
export interface Stationed {
  readonly at: number;
  readonly off: number;
}

/** The place on the line nearest to a point, and how the surface about it lies. */
export interface Foot extends Stationed {
  /** The way the line runs there, of length one; at a bend between its sides, square to the way to the point. */
  readonly along: Point;
  /** Metres of station per metre the point moves along the line: nought at a bend, about which it only turns. */
  readonly gain: number;
}

/** In metres: sides whose ends lie nearer than this follow each other. */
const GAP_TOLERANCE = 1e-6;

/** In metres: a part shorter than this has no direction. */
const NO_LENGTH = 1e-9;

/** A line with stations along sides that follow each other; sides of no length are left out. */
export function stationedLine(path: readonly Side[]): StationedLine | LineFault {
  for (const [index, side] of path.entries()) {
    const before = path[index - 1];
    if (before && distance(before.to, side.from) > GAP_TOLERANCE) return { fault: 'gap', side: index };
  }
  const parts: StationedPart[] = [];
  let start = 0;
  for (const side of path) {
    const length = sideLength(side);
    if (!(length > NO_LENGTH)) continue;
    parts.push({ side, start, length });
    start += length;
  }
  return parts.length === 0 ? { fault: 'no-length' } : { parts, length: start };
}

/** The line's length in metres. */
export function lengthOf(line: StationedLine): number {
  return line.length;
}

/**
 * Station of the place on the line nearest to a point, and how far off it lies. Of places equally near the first counts;
 * a point that lies beyond an end is taken to the line prolonged.
 */
export function stationOf(line: StationedLine, point: Point): Stationed {
  const { at, off } = footOn(line, point);
  return { at, off };
}

/** As {@link stationOf}, with the line's direction there. */
export function footOn(line: StationedLine, point: Point): Foot {
  const first = line.parts[0];
  const last = line.parts[line.parts.length - 1];
  if (!first || !last) return { at: 0, off: 0, along: { x: 1, y: 0 }, gain: 0 };
  let part = first;
  let share = 0;
  let least = Infinity;
  for (const candidate of line.parts) {
    const nearest = nearestShare(candidate.side, point);
    const apart = distance(pointAlong(candidate.side, nearest), point);
    if (apart < least) [part, share, least] = [candidate, nearest, apart];
  }
  if (share === 0) return footAtBend(line, line.parts.indexOf(part), point);
  if (share === 1) return footAtBend(line, line.parts.indexOf(part) + 1, point);
  const { side, start, length } = part;
  const on = pointAlong(side, share);
  const along = heading(side, on);
  const off = leftOf(on, along, point);
  return { at: start + share * length, off, along, gain: gainAt(side, point) };
}

/** Beside an arc a step along it counts the more the nearer it is to the centre; at the centre it has no direction. */
function gainAt(side: Side, point: Point): number {
  if (!side.arc) return 1;
  const reach = distance(point, side.arc.centre);
  return reach > NO_LENGTH ? radiusOf(side, side.arc) / reach : 0;
}

/** The foot where one part ends and the next begins, or at an end of the line, prolonged. */
function footAtBend(line: StationedLine, index: number, point: Point): Foot {
  const before = line.parts[index - 1];
  const after = line.parts[index];
  const corner = after ? after.side.from : before!.side.to;
  const at = after ? after.start : line.length;
  const arrives = before ? heading(before.side, before.side.to) : undefined;
  const setsOut = after ? heading(after.side, after.side.from) : undefined;
  const way = arrives ?? setsOut!;
  if (!arrives || !setsOut) {
    const ahead = (point.x - corner.x) * way.x + (point.y - corner.y) * way.y;
    const beyond = arrives ? ahead >= 0 : ahead <= 0;
    if (beyond) return { at: at + ahead, off: leftOf(corner, way, point), along: way, gain: 1 };
  }
  const mean = arrives && setsOut ? { x: arrives.x + setsOut.x, y: arrives.y + setsOut.y } : way;
  const apart = distance(corner, point);
  const off = (leftOf(corner, mean, point) < 0 ? -1 : 1) * apart;
  if (!(apart > NO_LENGTH)) return { at, off: 0, along: way, gain: 1 };
  return { at, off, along: { x: (point.y - corner.y) / off, y: (corner.x - point.x) / off }, gain: 0 };
}

/** How far a point lies to the left of a line, in metres. */
function leftOf(on: Point, way: Point, point: Point): number {
  return way.x * (point.y - on.y) - way.y * (point.x - on.x);
}

/** The share of a side at which it is nearest to a point. */
function nearestShare(side: Side, point: Point): number {
  const { from, to, arc } = side;
  if (arc) {
    const share = shareOfTurn(side, arc, point);
    if (share <= 1) return share;
    return distance(point, from) <= distance(point, to) ? 0 : 1;
  }
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const share = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy);
  return Math.min(1, Math.max(0, share));
}

/** The point at a station, so many metres off to the left. */
export function pointAt(line: StationedLine, station: number, off: number): Point {
  const part = partAt(line, station);
  if (!part) return { x: 0, y: 0 };
  const on = onPart(part, station);
  const along = directionAt(line, station);
  return { x: on.x - off * along.y, y: on.y + off * along.x };
}

/** The way the line runs at a station, of length one; at a bend that of the part that begins there. */
export function directionAt(line: StationedLine, station: number): Point {
  const part = partAt(line, station);
  if (!part) return { x: 1, y: 0 };
  const { side, start, length } = part;
  const way = heading(side, side.from);
  if (!side.arc) return way;
  const share = Math.min(1, Math.max(0, (station - start) / length));
  return turnedAbout(way, { x: 0, y: 0 }, share * side.arc.turn);
}

function partAt({ parts }: StationedLine, station: number): StationedPart | undefined {
  return parts.find(({ start, length }) => station < start + length) ?? parts[parts.length - 1];
}

function onPart({ side, start, length }: StationedPart, station: number): Point {
  const share = (station - start) / length;
  if (!side.arc || (share >= 0 && share <= 1)) return pointAlong(side, share);
  const end = share < 0 ? side.from : side.to;
  const way = heading(side, end);
  const ahead = share < 0 ? station - start : station - start - length;
  return { x: end.x + ahead * way.x, y: end.y + ahead * way.y };
}
