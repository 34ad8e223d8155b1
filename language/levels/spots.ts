import type { Point } from '../geometry/index.ts';

/** A height taken at a place on the plan, metres. */
export interface Spot extends Point {
  readonly z: number;
}

/** In metres: spots nearer than this on the plan are one, and what is no wider than this is a line. */
export const SAME_SPOT = 1e-6;

/** In metres: heights at one place that differ by no more are one; sums of feet and inches differ by far less. */
const SAME_HEIGHT = 1e-9;

/** Two spots, by their numbers, that say two heights for one place. */
export interface TwoHeights {
  readonly kind: 'two-heights';
  readonly first: number;
  readonly second: number;
}

/** For each spot the number of the first one named at its place: its own, unless it repeats another. */
export function firstAtPlace(spots: readonly Spot[]): readonly number[] | TwoHeights {
  const first = spots.map((_, index) => index);
  const byX = spots.map((_, index) => index).sort((a, b) => spots[a]!.x - spots[b]!.x || a - b);
  for (let later = 1; later < byX.length; later++) {
    for (let earlier = later - 1; earlier >= 0; earlier--) {
      const [a, b] = [byX[earlier]!, byX[later]!];
      if (spots[b]!.x - spots[a]!.x > SAME_SPOT) break;
      if (Math.abs(spots[a]!.y - spots[b]!.y) <= SAME_SPOT) unite(first, a, b);
    }
  }
  const places = first.map((_, index) => rootOf(first, index));
  const second = spots.findIndex(({ z }, index) => Math.abs(z - spots[places[index]!]!.z) > SAME_HEIGHT);
  return second < 0 ? places : { kind: 'two-heights', first: places[second]!, second };
}

/** The smallest number of the set that a number belongs to, each pointing to a smaller one or itself. */
export function rootOf(parents: readonly number[], member: number): number {
  let root = member;
  while (parents[root] !== root) root = parents[root]!;
  return root;
}

/** Makes one set of the sets of two members. */
export function unite(parents: number[], a: number, b: number): void {
  const [rootA, rootB] = [rootOf(parents, a), rootOf(parents, b)];
  parents[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
}
