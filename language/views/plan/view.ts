import { type Bounds, boundsOf, inside, type Loop, type Point, type Side } from '../../geometry/index.ts';
import { around } from '../../geometry/bounds.ts';

/** What lies further from the areas than this share of their extent, or this many metres, is left off the plan. */
const SHARE = 0.3;
const LEAST = 0.6;

/** As far round the areas as a plan shows; undefined where there is nothing to be seen. */
export function viewOf(outlines: readonly Loop[]): Bounds | undefined {
  const all = outlines.filter(outline => outline.length > 0).map(boundsOf);
  if (all.length === 0) return undefined;
  const { left, right, bottom, top } = all.reduce(around);
  const past = Math.max(LEAST, SHARE * Math.max(right - left, top - bottom));
  return { left: left - past, right: right + past, bottom: bottom - past, top: top + past };
}

export function isInView({ x, y }: Point, view: Bounds): boolean {
  return x >= view.left && x <= view.right && y >= view.bottom && y <= view.top;
}

/** What of sides is in view: straight ones are cut at its rim, arcs stay whole or away. */
export function sidesInView(sides: readonly Side[], view: Bounds): Side[] {
  return sides.flatMap(side => {
    if (side.arc !== undefined) return [side.from, side.to].some(end => isInView(end, view)) ? [side] : [];
    const shares = sharesInView(side, view);
    if (shares === undefined) return [];
    const at = (share: number): Point => ({
      x: side.from.x + share * (side.to.x - side.from.x),
      y: side.from.y + share * (side.to.y - side.from.y)
    });
    return [{ from: shares.from === 0 ? side.from : at(shares.from), to: shares.to === 1 ? side.to : at(shares.to) }];
  });
}

function sharesInView({ from, to }: Side, view: Bounds): { from: number; to: number } | undefined {
  let [first, last] = [0, 1];
  for (const [start, way, low, high] of [
    [from.x, to.x - from.x, view.left, view.right],
    [from.y, to.y - from.y, view.bottom, view.top]
  ] as const) {
    if (way === 0) {
      if (start < low || start > high) return undefined;
      continue;
    }
    const [a, b] = [(low - start) / way, (high - start) / way];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  return first < last ? { from: first, to: last } : undefined;
}

/** Places spread evenly over an area, clear of what is kept out; at most so many each way. */
export function spreadOver(outline: Loop, keptOut: readonly Loop[], eachWay: number): Point[] {
  const { left, right, bottom, top } = boundsOf(outline);
  const step = Math.max(right - left, top - bottom) / eachWay;
  if (!(step > 0) || !Number.isFinite(step)) return [];
  const places: Point[] = [];
  for (let y = bottom + step / 2; y < top; y += step) {
    for (let x = left + step / 2; x < right; x += step) {
      const place = { x, y };
      if (inside(outline, place) && !keptOut.some(loop => inside(loop, place))) places.push(place);
    }
  }
  return places;
}
