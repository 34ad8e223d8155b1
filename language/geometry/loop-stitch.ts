import { distanceToSide } from './contacts.ts';
import { heading, SAME_POINT } from './moved-side.ts';
import { distance, radiusOf, signedAreaOf } from './outline.ts';
import { RIM_TOLERANCE } from './path-clip.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** Part of a side, and the numbers of the corners it runs between. */
export interface Part {
  readonly side: Side;
  readonly from: number;
  readonly to: number;
}

/** Points told apart by more than a nanometre, each with a number. */
export interface Corners {
  numberOf(point: Point): number;
  at(corner: number): Point;
  /** Each at the place of its number. */
  all(): readonly Point[];
}

/** In square metres: what rounding may leave where two areas only touch. */
const NOTHING = 1e-13;

/** Finds corners by squares a good deal wider than the distance within which two are one. */
const SQUARE = 1000 * SAME_POINT;

/** Numbers squares by column and row; far away two may share a number, and are then looked through together. */
const COLUMN = 2 ** 26;

export function cornersApart(): Corners {
  const points: Point[] = [];
  const squares = new Map<number, number[]>();
  const place = (metres: number): number => Math.floor(metres / SQUARE);
  const places = (metres: number): number[] => {
    const [low, high] = [place(metres - SAME_POINT), place(metres + SAME_POINT)];
    return low === high ? [low] : [low, high];
  };
  const found = (point: Point): number | undefined => {
    for (const column of places(point.x)) {
      for (const row of places(point.y)) {
        const here = squares.get(column * COLUMN + row)?.find(corner => isAt(points[corner], point));
        if (here !== undefined) return here;
      }
    }
    return undefined;
  };
  const added = (point: Point): number => {
    const square = place(point.x) * COLUMN + place(point.y);
    const others = squares.get(square);
    if (others) others.push(points.length);
    else squares.set(square, [points.length]);
    return points.push(point) - 1;
  };
  return {
    numberOf: point => found(point) ?? added(point),
    at: corner => points[corner] ?? { x: NaN, y: NaN },
    all: () => points
  };
}

function isAt(one: Point | undefined, other: Point): boolean {
  return one !== undefined && distance(one, other) <= SAME_POINT;
}

/** Closed outlines from parts whose area lies on their left. Where several go on from a corner, outlines stay apart. */
export function stitched(parts: readonly Part[]): Loop[] {
  const leaving = new Map<number, Part[]>();
  for (const part of parts) leaving.set(part.from, [...(leaving.get(part.from) ?? []), part]);
  const left = new Set(parts);
  const loops: Loop[] = [];
  for (const start of parts) {
    const sides: Side[] = [];
    let closed = false;
    for (let part: Part | undefined = start; part && left.delete(part);) {
      sides.push(part.side);
      closed = part.to === start.from;
      part = closed
        ? undefined
        : furthestLeft(
            part,
            (leaving.get(part.to) ?? []).filter(next => left.has(next))
          );
    }
    if (closed && Math.abs(signedAreaOf(sides)) > NOTHING) loops.push(tidied(sides));
  }
  return loops;
}

function furthestLeft({ side }: Part, next: readonly Part[]): Part | undefined {
  if (next.length <= 1) return next[0];
  const way = heading(side, side.to);
  const turn = (part: Part): number => {
    const onward = heading(part.side, part.side.from);
    return Math.atan2(way.x * onward.y - way.y * onward.x, way.x * onward.x + way.y * onward.y);
  };
  return next.reduce((best, part) => (turn(part) > turn(best) ? part : best));
}

/** The same outline, sides that run on in one line or round one circle made one. */
function tidied(sides: readonly Side[]): Loop {
  const loop: Side[] = [];
  for (const side of sides) {
    const last = loop.at(-1);
    const both = last && joined(last, side);
    if (both) loop[loop.length - 1] = both;
    else loop.push(side);
  }
  const [first] = loop;
  const last = loop.at(-1);
  const both = first && last && loop.length > 2 && joined(last, first);
  return both ? [both, ...loop.slice(1, -1)] : loop;
}

function joined(before: Side, after: Side): Side | undefined {
  const ends = { from: before.from, to: after.to };
  if (before.arc && after.arc) {
    const turn = before.arc.turn + after.arc.turn;
    const sameCircle =
      distance(before.arc.centre, after.arc.centre) < RIM_TOLERANCE &&
      Math.abs(radiusOf(before, before.arc) - radiusOf(after, after.arc)) < RIM_TOLERANCE &&
      before.arc.turn * after.arc.turn > 0;
    return sameCircle && Math.abs(turn) < 2 * Math.PI ? { ...ends, arc: { ...before.arc, turn } } : undefined;
  }
  if (before.arc || after.arc || distance(ends.from, ends.to) <= SAME_POINT) return undefined;
  return distanceToSide(ends, before.to) < RIM_TOLERANCE ? ends : undefined;
}
