import { Clipper, FillRule } from 'clipper2-ts';
import { apart, around, type Bounds, boundsOf, common } from './bounds.ts';
import { CHORD_AREA_ERROR, inWindow, planArea, planFor } from './chords.ts';
import { SMALLEST_OUTLINE_AREA } from './crossing.ts';
import { areaOf, distance, reversedLoop, signedAreaOf } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/** In metres: straight sides no further apart than this run on top of each other. A joint's worth of slack on site. */
const SHARED_SIDE_TOLERANCE = 1e-3;

/** In metres: chords of an arc that only just leaves the window still count. */
const WINDOW_MARGIN = 1e-3;

/**
 * Area two outlines share, in square metres; nought when they only touch. Straight sides are exact to a nanometre, arcs
 * short by up to 1e-7 of the outlines' areas. Less than a square millimetre, or than that error, is nought.
 */
export function overlapArea(a: Loop, b: Loop): number {
  const [boxA, boxB] = [boundsOf(a), boundsOf(b)];
  if (apart(boxA, boxB, 0)) return 0;
  const window = common(boxA, boxB, WINDOW_MARGIN);
  const plan = planFor([a, b]);
  if (!plan) return 0;
  const area = planArea(
    Clipper.intersect(inWindow(a, plan, window), inWindow(b, plan, window), FillRule.NonZero),
    plan
  );
  const arcs = a.some(side => side.arc) || b.some(side => side.arc);
  const error = arcs ? CHORD_AREA_ERROR * Math.min(areaOf(a), areaOf(b)) : 0;
  return area > Math.max(SMALLEST_OUTLINE_AREA, error) ? area : 0;
}

/** Ground taken up: loops as `baseOut` gives them, clockwise ones being gaps, less shapes kept out of them. */
export interface Ground {
  readonly loops: readonly Loop[];
  readonly keptOut: readonly Loop[];
}

/**
 * Area of one ground that at least one of the others takes up too, in square metres: ground under several is counted
 * once. As exact as {@link overlapArea}.
 */
export function sharedWithAny(ground: Ground, others: readonly Ground[]): number {
  const outlines = [ground, ...others].flatMap(({ loops }) => loops);
  const plan = planFor(outlines);
  const window = ground.loops
    .map(boundsOf)
    .reduce<Bounds | undefined>((all, box) => (all ? around(all, box) : box), undefined);
  if (!plan || !window) return 0;
  const wide = common(window, window, WINDOW_MARGIN);
  const paths = ({ loops, keptOut }: Ground): Point[][] =>
    [...loops, ...keptOut.map(loop => (signedAreaOf(loop) > 0 ? reversedLoop(loop) : loop))].flatMap(loop =>
      inWindow(loop, plan, wide)
    );
  // Windings of the others add up: a place is taken where they are not nought.
  return planArea(Clipper.intersect(paths(ground), others.flatMap(paths), FillRule.NonZero), plan);
}

/** Metres along which straight sides of two outlines run on top of each other, whichever way each runs. */
export function sharedLength(a: Loop, b: Loop): number {
  return a.reduce((sum, side) => sum + (side.arc ? 0 : coveredLength(side, b)), 0);
}

function coveredLength(side: Side, others: Loop): number {
  const stretches = others
    .map(other => coveredStretch(side, other))
    .filter(stretch => stretch !== undefined)
    .sort((one, two) => one.from - two.from);
  let covered = 0;
  let reached = 0;
  for (const { from, to } of stretches) {
    covered += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return covered;
}

/** The stretch of a straight side, in metres from its start, that another lies on over all of their common length. */
function coveredStretch(side: Side, other: Side): { from: number; to: number } | undefined {
  const length = distance(side.from, side.to);
  if (other.arc || !(length > 0)) return undefined;
  const ux = (side.to.x - side.from.x) / length;
  const uy = (side.to.y - side.from.y) / length;
  const ends = [other.from, other.to]
    .map(({ x, y }) => ({
      along: (x - side.from.x) * ux + (y - side.from.y) * uy,
      off: (y - side.from.y) * ux - (x - side.from.x) * uy
    }))
    .sort((one, two) => one.along - two.along);
  const [low, high] = ends;
  if (!low || !high) return undefined;
  const from = Math.max(0, low.along);
  const to = Math.min(length, high.along);
  if (!(to > from)) return undefined;
  const slope = (high.off - low.off) / (high.along - low.along);
  const offAt = (along: number): number => Math.abs(low.off + slope * (along - low.along));
  return Math.max(offAt(from), offAt(to)) <= SHARED_SIDE_TOLERANCE ? { from, to } : undefined;
}
