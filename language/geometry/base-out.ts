import { Clipper, FillRule } from 'clipper2-ts';
import { cornerLoop } from './builders.ts';
import { fromPlan, inPlan, planArea, planFor } from './chords.ts';
import { selfCrossing, SMALLEST_OUTLINE_AREA } from './crossing.ts';
import { ahead, angleBetween, cornerPoints, type MovedSide, movedSide, SAME_POINT, sideBetween } from './moved-side.ts';
import { areaOf, distance, reversedLoop, sideLength, signedAreaOf } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** An outline moved outward. */
export interface BaseOutline {
  /** Anticlockwise whichever way the outline ran; clockwise ones are gaps the base leaves open within. */
  readonly loops: readonly Loop[];
  /** In square metres. */
  readonly area: number;
  /** Arcs are arcs and the area is exact. Otherwise moved sides ran into each other and arcs are fine chords. */
  readonly exact: boolean;
}

/** A moved side and the points that lead on to the next. */
interface Corner {
  readonly moved: MovedSide;
  readonly points: readonly Point[];
}

/**
 * The outline of a base that reaches beyond a paved outline, by so many metres (nought or more) at each side in turn.
 * Moved sides are prolonged to where they meet; beside a side with nought the base ends on that side's prolonged line.
 * Sides in one line with different distances make a square step, corners sharper than the mitre limit are cut off.
 */
export function baseOut(loop: Loop, distances: readonly number[]): BaseOutline {
  const moved = outwardSides(loop, distances);
  if (moved.length === 0) return { loops: [loop], area: areaOf(loop), exact: true };
  const corners = moved.map((before, index) => ({
    moved: before,
    points: cornerPoints(before, moved[(index + 1) % moved.length] ?? before)
  }));
  const outline = joinedOutline(corners);
  if (outline && !selfCrossing(outline)) return { loops: [outline], area: areaOf(outline), exact: true };
  return unitedStrips(loop, corners);
}

function outwardSides(loop: Loop, distances: readonly number[]): MovedSide[] {
  const backwards = signedAreaOf(loop) < 0;
  const sides = backwards ? reversedLoop(loop) : loop;
  return sides
    .map((side, index) => ({ side, outward: distances[backwards ? loop.length - 1 - index : index] ?? 0 }))
    .filter(({ side }) => sideLength(side) > SAME_POINT)
    .map(({ side, outward }) => movedSide(side, outward));
}

function firstOf(points: readonly Point[], otherwise: Point): Point {
  return points[0] ?? otherwise;
}

function lastOf(points: readonly Point[], otherwise: Point): Point {
  return points[points.length - 1] ?? otherwise;
}

/** A moved side between the corners before and after it, or undefined where that turns it round. */
function fittedSide(corners: readonly Corner[], index: number): Side | undefined {
  const corner = corners[index];
  if (!corner) return undefined;
  const previous = corners.at(index - 1)?.points ?? [];
  return sideBetween(
    corner.moved,
    lastOf(previous, corner.moved.fromFoot),
    firstOf(corner.points, corner.moved.toFoot)
  );
}

/** The moved sides one after another, or undefined where one has been turned round. */
function joinedOutline(corners: readonly Corner[]): Loop | undefined {
  const outline: Side[] = [];
  for (const [index, { points }] of corners.entries()) {
    const side = fittedSide(corners, index);
    if (!side) return undefined;
    if (side.arc || distance(side.from, side.to) > SAME_POINT) outline.push(side);
    outline.push(...points.slice(1).map((to, place) => ({ from: points[place] ?? to, to })));
  }
  return outline;
}

/** What the paving, a strip outside each side and the corners between them cover together. */
function unitedStrips(loop: Loop, corners: readonly Corner[]): BaseOutline {
  const parts = [loop, ...corners.flatMap((_, index) => [strip(corners, index), patch(corners, index)])];
  const plan = planFor(parts);
  if (!plan) return { loops: [loop], area: areaOf(loop), exact: false };
  const covered = Clipper.union(
    parts.flatMap(part => inPlan(part, plan)),
    FillRule.NonZero
  ).filter(path => Math.abs(planArea([path], plan)) > SMALLEST_OUTLINE_AREA);
  return {
    loops: covered.map(path => cornerLoop(path.map(point => fromPlan(point, plan)))),
    area: planArea(covered, plan),
    exact: false
  };
}

function strip(corners: readonly Corner[], index: number): Loop {
  const corner = corners[index];
  if (!corner || corner.moved.distance === 0) return [];
  const { moved, points } = corner;
  const { side, fromFoot, toFoot } = moved;
  const start = lastOf(corners.at(index - 1)?.points ?? [], fromFoot);
  const end = firstOf(points, toFoot);
  // Where a side would be turned round, the sides beside it meet before they reach it: one end at least stays square.
  const outer =
    fittedSide(corners, index) ??
    sideBetween(moved, fromFoot, end) ??
    sideBetween(moved, start, toFoot) ??
    squarelyMoved(moved);
  const previous = corners.at(index - 1)?.moved;
  const next = corners[(index + 1) % corners.length]?.moved;
  return [
    side,
    endOfStrip(next, side.to, outer.to),
    ...reversedLoop([outer]),
    endOfStrip(previous, outer.from, side.from)
  ];
}

/** The end of a strip, along the neighbour's prolonged arc where that has no base and the strip ends on it. */
function endOfStrip(neighbour: MovedSide | undefined, from: Point, to: Point): Side {
  const arc = neighbour?.distance === 0 ? neighbour.side.arc : undefined;
  if (!arc || Math.abs(distance(from, arc.centre) - distance(to, arc.centre)) > SAME_POINT) return { from, to };
  const turn = angleBetween(arc.centre, from, to);
  return turn === 0 ? { from, to } : { from, to, arc: { centre: arc.centre, turn } };
}

function squarelyMoved({ side, fromFoot, toFoot }: MovedSide): Side {
  return side.arc ? { from: fromFoot, to: toFoot, arc: side.arc } : { from: fromFoot, to: toFoot };
}

/** What lies at a corner beyond the ends of strips moved squarely. */
function patch(corners: readonly Corner[], index: number): Loop {
  const corner = corners[index];
  const next = corners[(index + 1) % corners.length];
  if (!corner || !next) return [];
  const fits = fittedSide(corners, index) && fittedSide(corners, (index + 1) % corners.length);
  if (fits && corner.points.length === 1) return [];
  const before = corner.moved;
  const after = next.moved;
  const [first, ...more] = corner.points;
  if (!first || more.length > 0) return cornerLoop([before.side.to, ...corner.points]);
  return cornerLoop([
    before.side.to,
    ...(ahead(first, before.toFoot, before.arrives) > 0 ? [before.toFoot] : []),
    first,
    ...(ahead(first, after.fromFoot, after.setsOut) < 0 ? [after.fromFoot] : [])
  ]);
}
