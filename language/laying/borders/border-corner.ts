import type { Loop, Point, Side } from '../../geometry/index.ts';
import { lineMeetsCircle, linesMeet } from '../../geometry/contacts.ts';
import { angleBetween, meetings, type MovedSide, movedSide, SAME_POINT } from '../../geometry/moved-side.ts';
import { distance, sideLength, turnedAbout } from '../../geometry/outline.ts';
import type { BorderCourse } from './border.ts';

/**
 * A side of an outline with its ground on the right, and the depth of its strip in metres: of its units, and of all
 * with the joint behind them. Nought where no course runs along it.
 */
export interface EdgeOfCourse {
  readonly side: Side;
  readonly units: number;
  readonly all: number;
  /** Its place among the sides as first given; decides between sides of the same length. */
  readonly rank: number;
}

/** One end of a strip. */
export interface StripEnd {
  /** From the outer edge to the inner side of the units. */
  readonly face: readonly Side[];
  /** From there through the joint behind them. */
  readonly back: readonly Side[];
}

/** How two sides' strips meet. */
export interface Corner {
  readonly before?: StripEnd;
  readonly after?: StripEnd;
  /** Points of the outline that is left: the end of the side before, the start of the side after, steps between them. */
  readonly inner: readonly Point[];
  /** The joint between the ends. */
  readonly joint?: Loop;
}

/** Sine of a turn below which sides run on in one line, far above the rounding of tangent arcs. */
const IN_LINE_SINE = 1e-6;

/** A butted end would be a long point where a corner turns by less than this, in radians: common practice. */
const LEAST_BUTTED_TURN = Math.PI / 6;

/** How many times as far as the strip is deep its end may lead from a corner, where the corner would not have it. */
const FURTHEST = 4;

/** How strips meet at the corner after a side; undefined where its angle is too sharp for them. Joint in metres. */
export function cornerBetween(
  before: EdgeOfCourse,
  after: EdgeOfCourse,
  joint: number,
  corners: BorderCourse['corners']
): Corner | undefined {
  if (before.all === 0 && after.all === 0) return { inner: [before.side.to] };
  const turn = turnBetween(before, after);
  if (before.all === 0 || after.all === 0) return openCorner(before, after, turn);
  if (Math.abs(Math.sin(turn)) < IN_LINE_SINE) return Math.abs(turn) < 1 ? seam(before, after, joint) : undefined;
  const meets = meeting(before, before.all, after, after.all);
  const isInner = turn > 0;
  if (!meets || (isInner && distance(meets, before.side.to) > FURTHEST * Math.max(before.all, after.all)))
    return undefined;
  if (corners === 'mitred' || Math.abs(turn) < LEAST_BUTTED_TURN - IN_LINE_SINE) return mitre(before, after, joint);
  return isInner ? innerButt(before, after, joint) : outerButt(before, after);
}

/** Radians the way turns at a corner: right (negative) where the ground has an outer corner, left at an inner one. */
function turnBetween(before: EdgeOfCourse, after: EdgeOfCourse): number {
  const { arrives } = movedSide(before.side, 0);
  const { setsOut } = movedSide(after.side, 0);
  return Math.atan2(arrives.x * setsOut.y - arrives.y * setsOut.x, arrives.x * setsOut.x + arrives.y * setsOut.y);
}

/** Where two sides moved in by depths meet. */
function meeting(before: EdgeOfCourse, depth: number, after: EdgeOfCourse, otherDepth: number): Point | undefined {
  const one = movedSide(before.side, depth);
  const other = movedSide(after.side, otherDepth);
  const middle = {
    x: (one.toFoot.x + other.fromFoot.x) / 2,
    y: (one.toFoot.y + other.fromFoot.y) / 2
  };
  return nearest(meetings(one, other), middle);
}

function nearest(points: readonly Point[], to: Point): Point | undefined {
  return [...points].sort((a, b) => distance(a, to) - distance(b, to))[0];
}

/** From one point to another along a side moved in or out. */
function along({ side }: EdgeOfCourse, from: Point, to: Point): Side[] {
  if (distance(from, to) <= SAME_POINT) return [];
  return [
    side.arc
      ? { from, to, arc: { centre: side.arc.centre, turn: angleBetween(side.arc.centre, from, to) } }
      : { from, to }
  ];
}

function straight(from: Point, to: Point): Side[] {
  return distance(from, to) <= SAME_POINT ? [] : [{ from, to }];
}

/** The strip of one side ends on the other's line, prolonged; square where that leads too far, or they run in one line. */
function openCorner(before: EdgeOfCourse, after: EdgeOfCourse, turn: number): Corner {
  const isBefore = before.all > 0;
  const [strip, open] = isBefore ? [before, after] : [after, before];
  const corner = before.side.to;
  const at = (depth: number): Point | undefined =>
    isBefore ? meeting(before, depth, after, 0) : meeting(before, 0, after, depth);
  const isSharp = turn < 0 && Math.cos(turn) < 0;
  const units = at(strip.units);
  const all = at(strip.all);
  const inLine = Math.abs(Math.sin(turn)) < IN_LINE_SINE;
  if (units && all && !inLine && (isSharp || distance(all, corner) <= FURTHEST * strip.all)) {
    const end = { face: along(open, corner, units), back: along(open, units, all) };
    return isBefore ? { before: end, inner: [all] } : { after: end, inner: [all] };
  }
  const square = squareEnd(strip, isBefore, 0);
  const end = { face: straight(corner, square.units), back: straight(square.units, square.all) };
  return isBefore ? { before: end, inner: [square.all, corner] } : { after: end, inner: [corner, square.all] };
}

/** Points square to a side at its end or start, or so many metres within it: on its edge, behind the units, behind all. */
function squareEnd({ side, units, all }: EdgeOfCourse, atEnd: boolean, within: number) {
  const placed = (depth: number): Point => {
    const moved = movedSide(side, depth);
    return atEnd ? shifted(moved, moved.toFoot, within) : shifted(moved, moved.fromFoot, -within);
  };
  // Round an arc the ends are rays from the centre, so far within where the strip is narrowest.
  const shifted = (moved: MovedSide, { x, y }: Point, back: number): Point => {
    const way = atEnd ? moved.arrives : moved.setsOut;
    if (!side.arc) return { x: x - way.x * back, y: y - way.y * back };
    const radius = Math.min(movedSide(side, 0).radius, movedSide(side, units).radius);
    return turnedAbout({ x, y }, side.arc.centre, -Math.sign(side.arc.turn) * Math.asin(back / radius));
  };
  return { edge: placed(0), units: placed(units), all: placed(all) };
}

/** Two strips in one line: both end square, half a joint from the corner. */
function seam(before: EdgeOfCourse, after: EdgeOfCourse, joint: number): Corner {
  const corner = before.side.to;
  const feet = [squareEnd(before, true, 0), squareEnd(after, false, 0)] as const;
  const ends = [squareEnd(before, true, joint / 2), squareEnd(after, false, joint / 2)] as const;
  const inner = distance(feet[0].all, feet[1].all) <= SAME_POINT ? [feet[0].all] : [feet[0].all, feet[1].all];
  return {
    before: { face: straight(ends[0].edge, ends[0].units), back: straight(feet[0].units, feet[0].all) },
    after: { face: straight(ends[1].edge, ends[1].units), back: straight(feet[1].units, feet[1].all) },
    inner,
    joint: [
      ...along(before, ends[0].edge, corner),
      ...along(after, corner, ends[1].edge),
      ...straight(ends[1].edge, ends[1].units),
      ...along(after, ends[1].units, feet[1].units),
      ...straight(feet[1].units, feet[0].units),
      ...along(before, feet[0].units, ends[0].units),
      ...straight(ends[0].units, ends[0].edge)
    ]
  };
}

/** Both strips end half a joint from the line between the outer and the inner corner. */
function mitre(before: EdgeOfCourse, after: EdgeOfCourse, joint: number): Corner | undefined {
  const corner = before.side.to;
  const units = meeting(before, before.units, after, after.units);
  const all = meeting(before, before.all, after, after.all);
  if (!units || !all) return undefined;
  const ends = [before, after].map(edge => mitredEnd(edge, edge === before ? -1 : 1, corner, units, joint / 2));
  const [one, other] = ends;
  if (!one || !other) return undefined;
  return {
    before: { face: straight(one.edge, one.units), back: straight(units, all) },
    after: { face: straight(other.edge, other.units), back: straight(units, all) },
    inner: [all],
    joint: [
      ...along(before, one.edge, corner),
      ...along(after, corner, other.edge),
      ...straight(other.edge, other.units),
      ...along(after, other.units, units),
      ...along(before, units, one.units),
      ...straight(one.units, one.edge)
    ]
  };
}

/** Where a line beside the mitre, on the side before the corner (-1) or after it (1), meets both sides of a strip. */
function mitredEnd(edge: EdgeOfCourse, way: number, corner: Point, units: Point, off: number) {
  const length = distance(corner, units);
  // Square to the mitre, towards the side after: the mitre leads inward, to the right of the way round.
  const across = { x: -(units.y - corner.y) / length, y: (units.x - corner.x) / length };
  const beside = ({ x, y }: Point): Point => ({ x: x + way * off * across.x, y: y + way * off * across.y });
  const meet = (depth: number, near: Point): Point | undefined => {
    if (off === 0) return near;
    const moved = movedSide(edge.side, depth);
    const { arc } = edge.side;
    const [from, to] = [beside(corner), beside(units)];
    const points = arc
      ? lineMeetsCircle(from, to, arc.centre, moved.radius, SAME_POINT)
      : linesMeet(from, to, moved.fromFoot, moved.toFoot);
    return nearest(points, near);
  };
  const [outer, inner] = [meet(0, corner), meet(edge.units, units)];
  return outer && inner ? { edge: outer, units: inner } : undefined;
}

/** The side whose strip runs through at a butted corner: the longer one; of two the same, the one named first. */
function runsThrough(before: EdgeOfCourse, after: EdgeOfCourse): boolean {
  const longer = sideLength(before.side) - sideLength(after.side);
  return Math.abs(longer) > 1e-6 ? longer > 0 : before.rank < after.rank;
}

/** At an outer corner one strip runs through to the outer face with its joint; the other begins behind that joint. */
function outerButt(before: EdgeOfCourse, after: EdgeOfCourse): Corner | undefined {
  const isBefore = runsThrough(before, after);
  const [through, other] = isBefore ? [before, after] : [after, before];
  const at = (depth: number, otherDepth: number): Point | undefined =>
    isBefore ? meeting(before, depth, after, otherDepth) : meeting(before, otherDepth, after, depth);
  const face = at(through.units, 0);
  const [edge, units, all] = [at(through.all, 0), at(through.all, other.units), at(through.all, other.all)];
  if (!face || !edge || !units || !all) return undefined;
  const running = { face: along(other, before.side.to, face), back: along(other, face, edge) };
  const ending = { face: along(through, edge, units), back: along(through, units, all) };
  // The joint of the strip that runs through goes on to the outer face, so the outline that is left has its own corner.
  return isBefore ? { before: running, after: ending, inner: [all] } : { before: ending, after: running, inner: [all] };
}

/** At an inner corner one strip runs on over the end of the other, which keeps a joint from its outer face. */
function innerButt(before: EdgeOfCourse, after: EdgeOfCourse, joint: number): Corner | undefined {
  const isBefore = runsThrough(before, after);
  const [through, other] = isBefore ? [before, after] : [after, before];
  const at = (depth: number, otherDepth: number): Point | undefined =>
    isBefore ? meeting(before, depth, after, otherDepth) : meeting(before, otherDepth, after, depth);
  const corner = before.side.to;
  const [edge, units, all] = [at(0, other.units), at(through.units, other.units), at(through.all, other.all)];
  const [startEdge, startUnits] = [at(-joint, 0), at(-joint, other.units)];
  if (!edge || !units || !all || !startEdge || !startUnits) return undefined;
  const running = { face: along(other, edge, units), back: straight(units, all) };
  const ending = { face: along(through, startEdge, startUnits), back: straight(units, all) };
  return {
    ...(isBefore ? { before: running, after: ending } : { before: ending, after: running }),
    inner: [all],
    joint: [
      ...along(through, corner, edge),
      ...along(other, edge, startUnits),
      ...along(through, startUnits, startEdge),
      ...along(other, startEdge, corner)
    ]
  };
}
