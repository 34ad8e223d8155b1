import { boundsOf, type Loop, type Point, pointAlong, type Side, sideLength } from '../geometry/index.ts';
import { heading } from '../geometry/moved-side.ts';
import { extremesBetween } from '../levels/extremes.ts';
import type { RouteArea } from './routes.ts';
import { pavedRegion, stretchesIn } from './site-area.ts';

/** A part of a route: distances along it, m. */
interface Along {
  readonly from: number;
  readonly to: number;
  readonly side: Side;
  readonly start: number;
}

/** Metres from place to place at which the width is looked up. */
const EVERY = 0.05;

/** Places looked up on a route at most. */
const MOST_PLACES = 4000;

/** Metres: paving no further apart is one. */
const TOGETHER = 0.005;

interface Reach {
  readonly from: number;
  readonly to: number;
}

/** Least width of paving square to a route, m; pits take theirs from it. Undefined where it leads over no paving. */
export function leastWidth(parts: readonly Along[], areas: readonly RouteArea[]): number | undefined {
  const paved = areas.map(({ area }) => pavedRegion(area));
  const pits = areas.flatMap(({ area }) =>
    area.keptOut.filter(({ kind }) => kind === 'pit').map(({ outline }) => [outline])
  );
  const reach = reachOf(paved);
  const length = parts.reduce((sum, { from, to }) => sum + to - from, 0);
  const every = Math.max(EVERY, length / MOST_PLACES);
  let least: number | undefined;
  let nearest: { readonly part: Along; readonly at: number } | undefined;
  const widthAt = (part: Along, at: number): number => widthSquareTo(part, at, paved, pits, reach);
  for (const part of parts) {
    const count = Math.max(1, Math.ceil((part.to - part.from) / every));
    // Its very ends lie on the rim: the places begin half a step in.
    for (let index = 0; index < count; index++) {
      const at = part.from + ((index + 0.5) * (part.to - part.from)) / count;
      const width = widthAt(part, at);
      if (least === undefined || width < least) [least, nearest] = [width, { part, at }];
    }
  }
  if (least === undefined || nearest === undefined) return undefined;
  const { part, at } = nearest;
  const [low, high] = [Math.max(part.from, at - every), Math.min(part.to, at + every)].map((end, index) =>
    index === 0 ? Math.max(end, part.from + TOGETHER) : Math.min(end, part.to - TOGETHER)
  );
  if (!(high! > low!)) return least;
  return Math.min(least, extremesBetween(place => widthAt(part, place), low!, high!).least.value);
}

function reachOf(paved: readonly (readonly Loop[])[]): number {
  if (paved.length === 0) return 0;
  const { left, right, bottom, top } = boundsOf(paved.flat(2));
  return Math.hypot(right - left, top - bottom);
}

function widthSquareTo(
  { side, start }: Along,
  at: number,
  paved: readonly (readonly Loop[])[],
  pits: readonly (readonly Loop[])[],
  reach: number
): number {
  const middle = pointAlong(side, (at - start) / sideLength(side));
  const way = heading(side, middle);
  const end = (out: number): Point => ({ x: middle.x - out * way.y, y: middle.y + out * way.x });
  const across: Side = { from: end(-reach), to: end(reach) };
  const metres = ({ from, to }: Reach): Reach => ({ from: (2 * from - 1) * reach, to: (2 * to - 1) * reach });
  const on = paved.flatMap(region => stretchesIn(across, region).map(metres)).sort((a, b) => a.from - b.from);
  let { from, to } = { from: 0, to: 0 };
  for (const run of together(on)) if (run.from <= TOGETHER && run.to >= -TOGETHER) [from, to] = [run.from, run.to];
  for (const pit of pits.flatMap(region => stretchesIn(across, region).map(metres))) {
    if (pit.from <= 0 && pit.to >= 0) return 0;
    if (pit.to < 0) from = Math.max(from, pit.to);
    else to = Math.min(to, pit.from);
  }
  return to - from;
}

function together(inOrder: readonly Reach[]): Reach[] {
  const runs: Reach[] = [];
  for (const next of inOrder) {
    const last = runs.at(-1);
    if (last === undefined || next.from - last.to > TOGETHER) runs.push(next);
    else runs[runs.length - 1] = { from: last.from, to: Math.max(last.to, next.to) };
  }
  return runs;
}
