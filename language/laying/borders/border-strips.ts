import { isDegenerate, type Loop, selfCrossing, type Side, signedAreaOf } from '../../geometry/index.ts';
import { type MovedSide, movedSide, SAME_POINT, sideBetween } from '../../geometry/moved-side.ts';
import { distance, reversedLoop } from '../../geometry/outline.ts';
import { runAs } from '../../geometry/regions-of.ts';
import { type Corner, cornerBetween, type EdgeOfCourse, type StripEnd } from './border-corner.ts';
import { type Curve, curveBeside } from './border-curve.ts';
import type { OutlineSide } from './border-outline.ts';
import { closesRound } from './border-run.ts';
import { type BorderCourse, type FaultReason, sizeOf } from './border.ts';

/** A strip of a course along one side. Outlines anticlockwise, holes clockwise. */
export interface Strip {
  readonly sides: readonly number[];
  /** The edge the units lie along, their ground on its left. */
  readonly edge: Side;
  readonly curve?: Curve;
  readonly closed: boolean;
  /** Where units lie. */
  readonly units: readonly Loop[];
  /** The joint behind them. */
  readonly joint: readonly Loop[];
}

/** A course along an outline. */
export interface CourseStrips {
  readonly strips: readonly Strip[];
  /** Joints at corners. */
  readonly joints: readonly Loop[];
  /** The outline that is left, the same way round. */
  readonly inner: readonly OutlineSide[];
}

/** Why a course has no room, and at which side. */
export interface NoRoom {
  readonly fault: FaultReason;
  readonly side?: number;
}

interface Edge extends EdgeOfCourse {
  readonly from: OutlineSide;
  readonly curve?: Curve;
}

/** Strips of a course along an outline whose ground lies on the right of its sides. */
export function stripsAlong(
  outline: readonly OutlineSide[],
  course: BorderCourse,
  runsAlong: (side: OutlineSide) => boolean
): CourseStrips | NoRoom {
  const edges: Edge[] = [];
  for (const side of outline) {
    const edge = edgeOf(side, course, runsAlong(side));
    if (!edge) return { fault: 'too-tight', ...named(side) };
    edges.push(edge);
  }
  const [only] = edges;
  if (edges.length === 1 && only?.curve) {
    const closed = closesRound(course, only.curve);
    // Where it has ends but no joint between them the strip is a ring as well.
    if (closed || course.joint.usual === 0) return ring(only, only.curve, closed);
  }
  const corners: Corner[] = [];
  for (const [index, edge] of edges.entries()) {
    const corner = cornerBetween(edge, edges[(index + 1) % edges.length] ?? edge, course.joint.usual, course.corners);
    if (!corner) return { fault: 'too-sharp', ...named(edge.from) };
    corners.push(corner);
  }
  return between(edges, corners);
}

function named({ sides }: OutlineSide): { side?: number } {
  return sides[0] === undefined ? {} : { side: sides[0] };
}

function edgeOf(from: OutlineSide, course: BorderCourse, bordered: boolean): Edge | undefined {
  const { side } = from;
  const rank = from.sides[0] ?? Infinity;
  if (!bordered) return { from, side, rank, units: 0, all: 0 };
  const { along, across } = sizeOf(course);
  const joint = course.joint.usual;
  if (!side.arc) return { from, side, rank, units: across, all: across + joint };
  const curve = curveBeside(side, side.arc.turn < 0, along, across);
  if (!curve || !(curve.inner > joint)) return undefined;
  const units = curve.outer - curve.inner;
  return { from, side, rank, curve, units, all: units + joint };
}

/** A course round a circle without ends. */
function ring(edge: Edge, curve: Curve, closed: boolean): CourseStrips {
  const circles = [0, edge.units, edge.all].map(depth => {
    const { side } = edge;
    const { fromFoot } = movedSide(side, depth);
    return [{ ...side, from: fromFoot, to: fromFoot }];
  });
  const between = (one: Loop, other: Loop): Loop[] => {
    const [outer, inner] = Math.abs(signedAreaOf(one)) > Math.abs(signedAreaOf(other)) ? [one, other] : [other, one];
    return [runAs(outer, 'outer'), runAs(inner, 'hole')];
  };
  const [first = [], second = [], third = []] = circles;
  const strip = {
    sides: edge.from.sides,
    edge: reversed(edge.side),
    curve,
    closed,
    units: between(first, second),
    joint: edge.all > edge.units ? between(second, third) : []
  };
  const inner = third.map(side => ({ ...edge.from, side }));
  return { strips: [strip], joints: [], inner };
}

function reversed(side: Side): Side {
  return reversedLoop([side])[0] ?? side;
}

function between(edges: readonly Edge[], corners: readonly Corner[]): CourseStrips | NoRoom {
  const strips: Strip[] = [];
  const inner: OutlineSide[] = [];
  for (const [index, edge] of edges.entries()) {
    const [start, end] = [corners.at(index - 1), corners[index]];
    const [from, to] = [start?.inner.at(-1), end?.inner[0]];
    if (!start || !end || !from || !to) continue;
    const strip = start.after && end.before ? stripOf(edge, start.after, end.before) : undefined;
    const left = sideBetween(movedSide(edge.side, edge.all), from, to);
    if (!left || (edge.all > 0 && !strip)) return { fault: 'too-narrow', ...named(edge.from) };
    if (strip) strips.push(strip);
    if (left.arc || distance(left.from, left.to) > SAME_POINT) inner.push({ ...edge.from, side: left });
    const steps = end.inner.slice(1).map((point, place) => ({ from: end.inner[place] ?? point, to: point }));
    inner.push(...steps.map(side => ({ side, sides: [] })));
  }
  const joints = corners.flatMap(({ joint }) => (joint && signedAreaOf(joint) !== 0 ? [runAs(joint, 'outer')] : []));
  return noRoomWithin(edges, inner) ?? { strips, joints, inner };
}

function noRoomWithin(edges: readonly Edge[], inner: readonly OutlineSide[]): NoRoom | undefined {
  const way = Math.sign(signedAreaOf(edges.map(({ side }) => side)));
  const loop = inner.map(({ side }) => side);
  const crossing = selfCrossing(loop);
  if (!crossing && !isDegenerate(loop) && Math.sign(signedAreaOf(loop)) === way) return undefined;
  const places = crossing ? [crossing.first, crossing.second] : inner.map((_, place) => place);
  const side = places.flatMap(place => inner[place] ?? []).find(({ sides }) => sides.length > 0);
  return { fault: 'too-narrow', ...(side ? named(side) : {}) };
}

function stripOf(edge: Edge, start: StripEnd, end: StripEnd): Strip | undefined {
  const [outer, behind, all] = [0, edge.units, edge.all].map(depth => movedSide(edge.side, depth));
  if (!outer || !behind || !all) return undefined;
  const units = loopBetween(outer, behind, start.face, end.face);
  if (!units) return undefined;
  const joint = edge.all > edge.units ? loopBetween(behind, all, start.back, end.back) : [];
  if (!joint) return undefined;
  return {
    sides: edge.from.sides,
    edge: reversed(edge.side),
    ...(edge.curve && { curve: edge.curve }),
    closed: false,
    units: [units],
    joint: joint.length > 0 ? [joint] : []
  };
}

/** What lies between a side moved to two depths and the lines it starts and ends on. */
function loopBetween(
  outer: MovedSide,
  inner: MovedSide,
  start: readonly Side[],
  end: readonly Side[]
): Loop | undefined {
  const [from, to] = [start[0]?.from, end[0]?.from];
  const [innerFrom, innerTo] = [start.at(-1)?.to, end.at(-1)?.to];
  if (!from || !to || !innerFrom || !innerTo) return undefined;
  const along = sideBetween(outer, from, to);
  const back = sideBetween(inner, innerFrom, innerTo);
  if (!along || !back) return undefined;
  const sides = [along, ...end, ...reversedLoop([back]), ...reversedLoop(start)];
  return runAs(
    sides.filter(side => side.arc ?? distance(side.from, side.to) > SAME_POINT),
    'outer'
  );
}
