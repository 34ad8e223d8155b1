import { distance, type Point } from '../geometry/index.ts';
import type { NamedPoint } from '../job/job.ts';

/** How a place is found again with two tapes, m. */
export type TapedFrom = readonly { readonly point: string; readonly distance: number }[];

/**
 * From the two points furthest apart of those that have coordinates: what was found from others may be gone. Where fewer
 * than two have, from any two. Of pairs as far apart those with the shorter tapes.
 */
export function tapedFrom(points: readonly NamedPoint[], place: Point): TapedFrom {
  const lasting = points.filter(({ fixed }) => fixed);
  const from = lasting.length < 2 ? points : lasting;
  const tapes = from.map(point => ({ at: point, point: point.name, distance: distance(point, place) }));
  return furthestApart(tapes).map(({ point, distance: tape }) => ({ point, distance: tape }));
}

/** Less than a tape tells, m. */
const AS_FAR = 1e-6;

function furthestApart<T extends { readonly at: Point; readonly distance: number }>(tapes: readonly T[]): readonly T[] {
  let best = tapes.slice(0, 1);
  let most = 0;
  for (const [index, one] of tapes.entries()) {
    for (const other of tapes.slice(index + 1)) {
      const apart = distance(one.at, other.at);
      const isShorter = one.distance + other.distance < sumOf(best);
      if (apart < most - AS_FAR || (apart <= most + AS_FAR && !isShorter)) continue;
      most = Math.max(most, apart);
      best = [one, other];
    }
  }
  return best;
}

function sumOf(tapes: readonly { readonly distance: number }[]): number {
  return tapes.reduce((sum, { distance: tape }) => sum + tape, 0);
}
