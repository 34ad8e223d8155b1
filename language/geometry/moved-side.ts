import { circlesMeet, lineMeetsCircle, linesMeet } from './contacts.ts';
import { distance, radiusOf } from './outline.ts';
import type { Point, Side } from './shapes.ts';

/** How much longer than the base is wide a mitre may get: a sharper corner is cut off square. */
const MITRE_LIMIT = 4;

/** In metres: points nearer than this are one point. Rounding of a plan a hundred kilometres across stays below. */
export const SAME_POINT = 1e-9;

/** Sine below which neighbours run in one line, or fold back. */
const IN_LINE_SINE = 1e-9;

/** In metres: the miss by which a moved line and circle still meet. */
const MEETING_TOLERANCE = 1e-9;

/** A side of an anticlockwise outline and where it comes to lie when moved outward. */
export interface MovedSide {
  readonly side: Side;
  readonly distance: number;
  /** Its ends moved square to it. */
  readonly fromFoot: Point;
  readonly toFoot: Point;
  /** The way it sets out and arrives, of length one. */
  readonly setsOut: Point;
  readonly arrives: Point;
  /** Of the moved arc: not above nought when it is moved past its centre, nought for a straight side. */
  readonly radius: number;
}

/** Moves a side of an anticlockwise outline outward, to the right of its travel, by metres. */
export function movedSide(side: Side, outward: number): MovedSide {
  const setsOut = heading(side, side.from);
  const arrives = heading(side, side.to);
  return {
    side,
    distance: outward,
    fromFoot: foot(side.from, setsOut, outward),
    toFoot: foot(side.to, arrives, outward),
    setsOut,
    arrives,
    radius: side.arc ? radiusOf(side, side.arc) + Math.sign(side.arc.turn) * outward : 0
  };
}

/** The way a side runs at a point on it, of length one. */
export function heading({ from, to, arc }: Side, at: Point): Point {
  const x = arc ? (at.y - arc.centre.y) * -Math.sign(arc.turn) : to.x - from.x;
  const y = arc ? (at.x - arc.centre.x) * Math.sign(arc.turn) : to.y - from.y;
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

function foot(point: Point, way: Point, outward: number): Point {
  return { x: point.x + way.y * outward, y: point.y - way.x * outward };
}

/**
 * The points that lead from one moved side to the next: one where the two meet, or their feet where they make a step or
 * a corner is cut off, with the tip between the feet where arcs are prolonged straight.
 */
export function cornerPoints(before: MovedSide, after: MovedSide): readonly Point[] {
  const feet = [before.toFoot, after.fromFoot];
  if (distance(before.toFoot, after.fromFoot) <= SAME_POINT) return [before.toFoot];
  const cross = before.arrives.x * after.setsOut.y - before.arrives.y * after.setsOut.x;
  if (Math.abs(cross) < IN_LINE_SINE) return feet;
  const dot = before.arrives.x * after.setsOut.x + before.arrives.y * after.setsOut.y;
  // In a sharp notch the moved sides meet far from its corner, and rightly so.
  const furthest = cross < 0 && dot < 0 ? Infinity : MITRE_LIMIT * Math.max(before.distance, after.distance);
  const corner = before.side.to;
  const near = (point: Point): boolean => distance(point, corner) <= furthest;
  const middle = {
    x: (before.toFoot.x + after.fromFoot.x) / 2,
    y: (before.toFoot.y + after.fromFoot.y) / 2
  };
  const [meeting] = meetings(before, after)
    .filter(near)
    .sort((a, b) => distance(a, middle) - distance(b, middle));
  if (meeting) return [meeting];
  if (cross < 0) return innerStep(before, after);
  const prolonged = before.side.arc || after.side.arc;
  const [tip] = prolonged
    ? tangentsMeet(before, after).filter(point => near(point) && between(before, after, point))
    : [];
  return tip ? [before.toFoot, tip, after.fromFoot] : feet;
}

/** The step at a slight inner corner: the narrower strip ends where it meets the square end of the wider one. */
function innerStep(before: MovedSide, after: MovedSide): readonly Point[] {
  const corner = before.side.to;
  const up = after.distance > before.distance;
  const [narrow, narrowFoot, wideFoot] = up
    ? [before, before.toFoot, after.fromFoot]
    : [after, after.fromFoot, before.toFoot];
  const { arc } = narrow.side;
  const meets = arc
    ? lineMeetsCircle(corner, wideFoot, arc.centre, narrow.radius, MEETING_TOLERANCE)
    : linesMeet(corner, wideFoot, narrow.fromFoot, narrow.toFoot);
  const [inner = narrowFoot] = meets.sort((a, b) => distance(a, narrowFoot) - distance(b, narrowFoot));
  return up ? [inner, wideFoot] : [wideFoot, inner];
}

/** Where two moved sides meet, prolonged; nowhere when one is moved past its centre. */
export function meetings(before: MovedSide, after: MovedSide): Point[] {
  const a = before.side.arc;
  const b = after.side.arc;
  if ((a && !(before.radius > 0)) || (b && !(after.radius > 0))) return [];
  if (a && b) return circlesMeet(a.centre, before.radius, b.centre, after.radius, MEETING_TOLERANCE);
  if (a) return lineMeetsCircle(after.fromFoot, after.toFoot, a.centre, before.radius, MEETING_TOLERANCE);
  if (b) return lineMeetsCircle(before.fromFoot, before.toFoot, b.centre, after.radius, MEETING_TOLERANCE);
  return linesMeet(before.fromFoot, before.toFoot, after.fromFoot, after.toFoot);
}

/** Whether a point lies ahead of one moved side and before the next. */
function between(before: MovedSide, after: MovedSide, point: Point): boolean {
  return ahead(point, before.toFoot, before.arrives) >= 0 && ahead(point, after.fromFoot, after.setsOut) <= 0;
}

/** Metres a point lies ahead of another along a heading. */
export function ahead(point: Point, from: Point, way: Point): number {
  return (point.x - from.x) * way.x + (point.y - from.y) * way.y;
}

function tangentsMeet(before: MovedSide, after: MovedSide): Point[] {
  const on = ({ x, y }: Point, way: Point): Point => ({ x: x + way.x, y: y + way.y });
  return linesMeet(before.toFoot, on(before.toFoot, before.arrives), after.fromFoot, on(after.fromFoot, after.setsOut));
}

/**
 * A moved side between two points on it, trimmed or prolonged. Undefined when that turns it round: the sides beside it
 * then meet before they reach it.
 */
export function sideBetween({ side, distance: outward, radius }: MovedSide, from: Point, to: Point): Side | undefined {
  const { arc } = side;
  if (!arc) {
    const forward = (to.x - from.x) * (side.to.x - side.from.x) + (to.y - from.y) * (side.to.y - side.from.y);
    return forward > 0 || distance(from, to) <= SAME_POINT ? { from, to } : undefined;
  }
  if (outward > 0 && !(radius > 0)) return undefined;
  const turn = arc.turn + angleBetween(arc.centre, side.to, to) - angleBetween(arc.centre, side.from, from);
  const keeps = turn * arc.turn > 0 && Math.abs(turn) <= 2 * Math.PI;
  return keeps ? { from, to, arc: { centre: arc.centre, turn } } : undefined;
}

/** The turn about a centre from one point to another, in radians: at most a half turn either way. */
export function angleBetween(centre: Point, a: Point, b: Point): number {
  const ax = a.x - centre.x;
  const ay = a.y - centre.y;
  const bx = b.x - centre.x;
  const by = b.y - centre.y;
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}
