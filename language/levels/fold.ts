import { distance, type Point } from '../geometry/index.ts';
import { type Levelled, planeAlong } from './planes.ts';
import type { Plane, Surface } from './surface.ts';

/** In metres: corners of one side of a fold lie in its plane when none lies further off. */
const FLAT_SIDE = 0.0005;

/** In metres: a corner this near to the line of the fold, or over it, does not lie on its own side. */
const ON_FOLD = 1e-4;

/**
 * `no-fold`: the two corners are the same, neighbours, or lie on top of each other. `over-fold`: the corner of that
 * index does not lie on its own side of the line. `not-flat`: the corners of a side lie in no plane with the fold; the
 * corner of that index lies furthest above (positive) or below it, in metres.
 */
export type FoldFault =
  | { readonly fault: 'no-fold' }
  | { readonly fault: 'over-fold'; readonly corner: number }
  | { readonly fault: 'not-flat'; readonly corner: number; readonly deviation: number };

/** Two planes over an outline of corners with heights, that meet in the line from one corner to another, by index. */
export function foldAlong(
  corners: readonly Levelled[],
  from: number,
  to: number
): (Surface & { kind: 'folded' }) | FoldFault {
  const first = corners[from];
  const second = corners[to];
  if (!first || !second || !(distance(first.point, second.point) > ON_FOLD)) return { fault: 'no-fold' };
  const oneSide = planeBeside(corners, from, to);
  const otherSide = planeBeside(corners, to, from);
  if ('fault' in oneSide) return oneSide;
  if ('fault' in otherSide) return otherSide;
  if (oneSide.isLeft === otherSide.isLeft) return { fault: 'over-fold', corner: (to + 1) % corners.length };
  const [left, right] = oneSide.isLeft ? [oneSide.plane, otherSide.plane] : [otherSide.plane, oneSide.plane];
  const [lower, higher] = from < to ? [first, second] : [second, first];
  return { kind: 'folded', from: lower.point, to: higher.point, left, right };
}

/** The plane through the fold that fits best what lies between two corners, going round in order. */
function planeBeside(
  corners: readonly Levelled[],
  start: number,
  end: number
): { plane: Plane; isLeft: boolean } | FoldFault {
  // For both sides the line runs from the lower index: their planes then agree along it to the last digit.
  const from = corners[Math.min(start, end)]!;
  const to = corners[Math.max(start, end)]!;
  const beside: { corner: number; off: number; rise: number }[] = [];
  for (let corner = (start + 1) % corners.length; corner !== end; corner = (corner + 1) % corners.length) {
    const { point, height } = corners[corner]!;
    const { share, off } = fromLine(from.point, to.point, point);
    beside.push({ corner, off, rise: height - from.height - share * (to.height - from.height) });
  }
  const [next] = beside;
  if (!next) return { fault: 'no-fold' };
  const way = Math.sign(next.off);
  const astray = beside.find(({ off }) => off * way < ON_FOLD);
  if (astray) return { fault: 'over-fold', corner: astray.corner };
  const riseLeft =
    beside.reduce((sum, { off, rise }) => sum + off * rise, 0) / beside.reduce((sum, { off }) => sum + off * off, 0);
  const deviations = beside.map(({ corner, off, rise }) => ({ corner, deviation: rise - off * riseLeft }));
  const worst = deviations.reduce((a, b) => (Math.abs(b.deviation) > Math.abs(a.deviation) ? b : a));
  if (Math.abs(worst.deviation) > FLAT_SIDE) return { fault: 'not-flat', ...worst };
  const plane = planeAlong(from, to, -riseLeft, 'left');
  if ('fault' in plane) return { fault: 'no-fold' };
  return { plane, isLeft: way > 0 };
}

/** How far along a line a point lies, as a share of it, and metres to the left of it. */
function fromLine(from: Point, to: Point, { x, y }: Point): { share: number; off: number } {
  const length = distance(from, to);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  return {
    share: ((x - from.x) * ux + (y - from.y) * uy) / length,
    off: ux * (y - from.y) - uy * (x - from.x)
  };
}
