import { distanceToSide, EDGE_TOLERANCE, type Loop, type Point, pointAlong, type Side } from '../geometry/index.ts';
import { contactsBetween } from '../geometry/contacts.ts';
import { shareAlong } from '../geometry/containment.ts';
import { crossedOddly, runsOf } from '../geometry/level-line.ts';

/** Whether points lie inside outlines, their edges included within a micrometre; what lies in a hole is outside. */
export function lookUpWithin(region: readonly Loop[]): (point: Point) => boolean {
  const runs = runsOf(region);
  const sides = region.flat();
  return point => crossedOddly(runs, point) || sides.some(side => distanceToSide(side, point) <= EDGE_TOLERANCE);
}

/** A part of a side, by its shares of it; both ends are the same where it only touches. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretches of a side that lie within something bounded by others; where it touches them counts. */
export function stretchesWithin(
  side: Side,
  bounds: readonly Side[],
  isWithin: (point: Point) => boolean
): readonly Stretch[] {
  const met = bounds.flatMap(bound => [
    ...contactsBetween(side, bound, EDGE_TOLERANCE),
    ...[bound.from, bound.to].filter(end => distanceToSide(side, end) <= EDGE_TOLERANCE)
  ]);
  const cuts = [0, ...met.map(point => shareAlong(side, point)), 1].sort((a, b) => a - b);
  const between = cuts
    .slice(1)
    .map((to, index) => ({ from: cuts[index] ?? 0, to }))
    .filter(({ from, to }) => to > from && isWithin(pointAlong(side, (from + to) / 2)));
  const touched = cuts.filter(cut => isWithin(pointAlong(side, cut))).map(cut => ({ from: cut, to: cut }));
  return [...between, ...touched];
}
