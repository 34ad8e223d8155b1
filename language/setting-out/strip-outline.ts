import { arcThrough, distance, type Loop, type Point, pointAlong, radiusOf, type Side } from '../geometry/index.ts';
import { selfCrossing } from '../geometry/crossing.ts';
import { circlesMeet, lineMeetsCircle, linesMeet } from '../geometry/contacts.ts';
import { angleBetween, heading, SAME_POINT } from '../geometry/moved-side.ts';
import type { StationedLine, StationedPart } from './stationed-line.ts';

/** The whole width of a strip at a station, centred on its line; metres. */
export interface WidthAt {
  readonly at: number;
  readonly width: number;
}

/** A side of a strip's outline: along the right or left of the line, or across its start or end. */
export interface StripSide {
  readonly name: 'right' | 'end' | 'left' | 'start';
  readonly side: Side;
}

/**
 * `no-width`: no width is given, or one is negative, or the strip has no width anywhere. `too-tight`: the arc of the line
 * that begins at the station turns more tightly than half the width. `folds-over`: the outline crosses itself there.
 */
export type StripFault =
  | { readonly fault: 'no-width' }
  | { readonly fault: 'too-tight'; readonly at: number }
  | { readonly fault: 'folds-over'; readonly at: Point };

/**
 * The most that one arc turns, in radians, along an arc of the line on which the width changes: the side is a spiral
 * there, and arcs through three points of it stay within a tenth of a millimetre of it, even on a radius of 100 m.
 */
const TURN_PER_ARC = Math.PI / 36;

/** How many half widths from its corner a mitre may lie: a sharper corner is cut off. */
const MITRE_LIMIT = 4;

/** In metres: the miss by which a line and a circle still meet. */
const MEETING_TOLERANCE = 1e-9;

/**
 * The outline of an area along a line, anticlockwise from its start: right side, end, left side, start. Widths run
 * straight between stations, in their order, and stay as they are beyond the first and last. Arcs stay arcs, in
 * several pieces where the width changes.
 */
export function stripOutline(line: StationedLine, widths: readonly WidthAt[]): readonly StripSide[] | StripFault {
  if (widths.some(({ width }) => !(width >= 0)) || !widths.some(({ width }) => width > SAME_POINT)) {
    return { fault: 'no-width' };
  }
  const pieces = line.parts.flatMap(part => piecesOf(part, widths));
  const tight = pieces.find(isTooTight);
  if (tight) return { fault: 'too-tight', at: tight.part.start };
  const right = moved(pieces, -1);
  const left = moved(pieces, 1);
  if ('fault' in right) return right;
  if ('fault' in left) return left;
  const backward = left.map(reversed).reverse();
  const sides = [
    ...named('right', right),
    ...named('end', across(right[right.length - 1]?.to, backward[0]?.from)),
    ...named('left', backward),
    ...named('start', across(backward[backward.length - 1]?.to, right[0]?.from))
  ];
  const crossing = selfCrossing(sides.map(({ side }) => side));
  return crossing ? { fault: 'folds-over', at: crossing.at } : sides;
}

/** The outline alone. */
export function loopOfStrip(sides: readonly StripSide[]): Loop {
  return sides.map(({ side }) => side);
}

/** A piece of the line with half the width of the strip at its ends and half way. */
interface Piece {
  readonly part: StationedPart;
  readonly side: Side;
  readonly halfFrom: number;
  readonly halfMiddle: number;
  readonly halfTo: number;
}

function piecesOf(part: StationedPart, widths: readonly WidthAt[]): Piece[] {
  const { side, start, length } = part;
  const stops = widths.map(({ at }) => (at - start) / length).filter(share => share > 0 && share < 1);
  const shares = [0, ...stops, 1];
  const half = (share: number): number => widthAt(widths, start + share * length) / 2;
  return shares.slice(1).flatMap((to, index) => {
    const from = shares[index] ?? 0;
    if (!(to > from)) return [];
    const turn = side.arc && !isEven(half(from), half(to)) ? Math.abs(side.arc.turn) * (to - from) : 0;
    const count = Math.max(1, Math.ceil(turn / TURN_PER_ARC));
    return Array.from({ length: count }, (_, place): Piece => {
      const one = from + ((to - from) * place) / count;
      const other = from + ((to - from) * (place + 1)) / count;
      const halves = { halfFrom: half(one), halfMiddle: half((one + other) / 2), halfTo: half(other) };
      return { part, side: stretch(side, one, other), ...halves };
    });
  });
}

function isEven(oneHalf: number, otherHalf: number): boolean {
  return Math.abs(oneHalf - otherHalf) <= SAME_POINT;
}

function stretch(side: Side, from: number, to: number): Side {
  const ends = { from: pointAlong(side, from), to: pointAlong(side, to) };
  if (!side.arc) return ends;
  return { ...ends, arc: { centre: side.arc.centre, turn: side.arc.turn * (to - from) } };
}

function widthAt(widths: readonly WidthAt[], at: number): number {
  const next = widths.findIndex(width => width.at > at);
  const after = widths[next < 0 ? widths.length - 1 : next];
  const before = widths[next < 0 ? widths.length - 1 : next - 1] ?? after;
  if (!before || !after) return 0;
  const share = after.at > before.at ? (at - before.at) / (after.at - before.at) : 0;
  return before.width + share * (after.width - before.width);
}

/** The centre of an arc lies within the strip when half its width reaches past it. */
function isTooTight({ part: { side }, halfFrom, halfTo }: Piece): boolean {
  return side.arc !== undefined && radiusOf(side, side.arc) < Math.max(halfFrom, halfTo) - SAME_POINT;
}

/** The pieces moved by half the width to the left (1) or right (-1), joined where the line bends. */
function moved(pieces: readonly Piece[], way: 1 | -1): Side[] | StripFault {
  const sides: Side[] = [];
  for (const piece of pieces) {
    const side = movedPiece(piece, way);
    const before = sides.pop();
    if (!before) {
      sides.push(side);
      continue;
    }
    const joined = join(before, side, piece.side.from, piece.halfFrom);
    if (!joined) return { fault: 'folds-over', at: piece.side.from };
    sides.push(...joined);
  }
  return sides;
}

function movedPiece({ side, halfFrom, halfMiddle, halfTo }: Piece, way: 1 | -1): Side {
  const off = (point: Point, half: number): Point => {
    const { x, y } = heading(side, point);
    return { x: point.x - way * half * y, y: point.y + way * half * x };
  };
  const ends = { from: off(side.from, halfFrom), to: off(side.to, halfTo) };
  if (!side.arc) return ends;
  if (isEven(halfFrom, halfTo)) return { ...ends, arc: side.arc };
  return arcThrough(ends.from, ends.to, off(pointAlong(side, 0.5), halfMiddle)) ?? ends;
}

/** Two moved sides that follow each other, with what lies between. Undefined when one is turned round by the other. */
function join(before: Side, after: Side, corner: Point, half: number): Side[] | undefined {
  const apart = distance(before.to, after.from);
  if (apart <= SAME_POINT) return [before, { ...after, from: before.to }];
  const meeting = meetings(before, after)
    .filter(point => distance(point, corner) <= MITRE_LIMIT * half)
    .sort((a, b) => distance(a, corner) - distance(b, corner))[0];
  if (!meeting) return isInner(before, after) ? undefined : [before, { from: before.to, to: after.from }, after];
  const shortened = ending(before, before.from, meeting);
  const begun = ending(after, meeting, after.to);
  return shortened && begun ? [shortened, begun] : undefined;
}

/** Whether the end of one side lies ahead of the start of the next: they cross. */
function isInner(before: Side, after: Side): boolean {
  const way = heading(before, before.to);
  return (after.from.x - before.to.x) * way.x + (after.from.y - before.to.y) * way.y < 0;
}

function meetings(a: Side, b: Side): Point[] {
  if (a.arc && b.arc) {
    return circlesMeet(a.arc.centre, radiusOf(a, a.arc), b.arc.centre, radiusOf(b, b.arc), MEETING_TOLERANCE);
  }
  if (a.arc) return lineMeetsCircle(b.from, b.to, a.arc.centre, radiusOf(a, a.arc), MEETING_TOLERANCE);
  if (b.arc) return lineMeetsCircle(a.from, a.to, b.arc.centre, radiusOf(b, b.arc), MEETING_TOLERANCE);
  return linesMeet(a.from, a.to, b.from, b.to);
}

/** A side trimmed or prolonged to other ends on it. Undefined when that turns it round. */
function ending(side: Side, from: Point, to: Point): Side | undefined {
  if (!side.arc) {
    const ahead = (to.x - from.x) * (side.to.x - side.from.x) + (to.y - from.y) * (side.to.y - side.from.y);
    return ahead >= 0 ? { from, to } : undefined;
  }
  const { centre, turn } = side.arc;
  const newTurn = turn + angleBetween(centre, side.to, to) - angleBetween(centre, side.from, from);
  return newTurn * turn > 0 && Math.abs(newTurn) <= 2 * Math.PI
    ? { from, to, arc: { centre, turn: newTurn } }
    : undefined;
}

function reversed({ from, to, arc }: Side): Side {
  return arc ? { from: to, to: from, arc: { centre: arc.centre, turn: -arc.turn } } : { from: to, to: from };
}

function across(from: Point | undefined, to: Point | undefined): Side[] {
  return from && to ? [{ from, to }] : [];
}

/** Sides of no length are left out: the strip has no width there, or an arc shrinks to its centre. */
function named(name: StripSide['name'], sides: readonly Side[]): StripSide[] {
  return sides.filter(hasLength).map(side => ({ name, side }));
}

function hasLength(side: Side): boolean {
  if (side.arc) return radiusOf(side, side.arc) > SAME_POINT;
  return distance(side.from, side.to) > SAME_POINT;
}
