import { distance, type Point } from '../geometry/index.ts';
import type { NamedPoint } from '../job/job.ts';

/** How a place is found again with two tapes, m. */
export type TapedFrom = readonly { readonly point: string; readonly distance: number }[];

/**
 * From the two points furthest apart of those that have coordinates: what was found from others may be gone. Where fewer
 * than two have, from any two.
 */
export function tapedFrom(points: readonly NamedPoint[], place: Point): TapedFrom {
  const lasting = points.filter(({ fixed }) => fixed);
  return furthestApart(lasting.length < 2 ? points : lasting).map(point => ({
    point: point.name,
    distance: distance(point, place)
  }));
}

function furthestApart(points: readonly NamedPoint[]): readonly NamedPoint[] {
  let best = points.slice(0, 1);
  let most = 0;
  for (const [index, one] of points.entries()) {
    for (const other of points.slice(index + 1)) {
      const apart = distance(one, other);
      if (apart <= most) continue;
      most = apart;
      best = [one, other];
    }
  }
  return best;
}
