import {
  type Bounds,
  boundsOf,
  distance,
  distanceToSide,
  type Loop,
  type Point,
  pointAlong,
  type Side
} from '../geometry/index.ts';
import { apart, boundsOfSide } from '../geometry/bounds.ts';
import { contactsBetween } from '../geometry/contacts.ts';
import { heading } from '../geometry/moved-side.ts';
import { gradientAt, gradientOfPlane, heightAt, type Surface } from './surface.ts';
import { lookUpWithin } from './within.ts';

/** The way water takes over a surface. */
export interface SteepestLine {
  readonly path: readonly Point[];
  readonly end: SteepestEnd;
}

/**
 * `leaves`: over that side of that outline. `rests`: in a low place, or where the surface is level. `outside`: the point
 * it starts from is not within the outlines.
 */
export type SteepestEnd =
  | { readonly kind: 'leaves'; readonly at: Point; readonly loop: number; readonly side: number }
  | { readonly kind: 'rests'; readonly at: Point }
  | { readonly kind: 'outside' };

/** Slope below which a surface is level: a millimetre in a kilometre. */
export const LEVEL_SLOPE = 1e-6;

/** Steps over the extent of the outlines where a surface bends all over; the line is off by a fraction of one. */
const STEPS_ACROSS = 64;

/** Steps at most, and pieces at most over a fold. */
const MOST_STEPS = 2000;

/** Halvings of a step that does not lead down before water rests. */
const HALVINGS = 12;

/** In metres: how far past an edge water is looked for, to see whether it has left. */
const JUST_PAST = 1e-5;

/** In metres: a point this near to an edge or a fold is on it. */
const ON_LINE = 1e-6;

/** The line straight downhill from a point to where it leaves the outlines, outer ones anticlockwise and holes clockwise. */
export function steepestFrom(surface: Surface, region: readonly Loop[], from: Point): SteepestLine {
  return steepestOver(surface, region)(from);
}

/** As {@link steepestFrom}, for many points of one region. */
export function steepestOver(surface: Surface, region: readonly Loop[]): (from: Point) => SteepestLine {
  const isWithin = lookUpWithin(region);
  const edges = edgesOf(region);
  const extent = extentOf(region);
  const step = surface.kind === 'plane' || surface.kind === 'folded' ? 2 * extent : extent / STEPS_ACROSS;
  return from => {
    const path = [from];
    if (!isWithin(from)) return { path, end: { kind: 'outside' } };
    let at = from;
    for (let count = 0; count < MOST_STEPS; count++) {
      const next = downhill(surface, at, step);
      if (!next) break;
      const leaves = leaving(edges, isWithin, at, next);
      path.push(leaves ? leaves.at : next);
      if (leaves) return { path, end: leaves };
      at = next;
    }
    return { path, end: { kind: 'rests', at } };
  };
}

function extentOf(region: readonly Loop[]): number {
  const { left, right, bottom, top } = boundsOf(region.flat());
  return Math.hypot(right - left, top - bottom);
}

/** A step straight downhill; undefined where there is none. */
function downhill(surface: Surface, at: Point, step: number): Point | undefined {
  if (surface.kind === 'plane') return stepped(at, gradientOfPlane(surface.plane), step);
  if (surface.kind === 'folded') return downFold(surface, at, step);
  const here = gradientAt(surface, at);
  const height = heightAt(surface, at);
  let size = step;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = stepped(at, here, size / 2);
    if (!middle) return undefined;
    const there = gradientAt(surface, middle);
    // Where the slope turns round within a step there is a valley between: what both have in common leads along it.
    const turnsRound = here.x * there.x + here.y * there.y <= 0;
    const next = stepped(at, turnsRound ? { x: here.x + there.x, y: here.y + there.y } : there, size);
    if (next && heightAt(surface, next) < height) return next;
    size /= 2;
  }
  return undefined;
}

function stepped(at: Point, uphill: Point, step: number): Point | undefined {
  const steepness = Math.hypot(uphill.x, uphill.y);
  if (!(steepness > LEVEL_SLOPE)) return undefined;
  return { x: at.x - (step * uphill.x) / steepness, y: at.y - (step * uphill.y) / steepness };
}

/** Down one plane to the fold at most; from the fold down the other plane, or along it where both fall to it. */
function downFold(surface: Surface & { kind: 'folded' }, at: Point, step: number): Point | undefined {
  const { from, to } = surface;
  const left = gradientOfPlane(surface.left);
  const right = gradientOfPlane(surface.right);
  const length = distance(from, to);
  if (!(length > 0)) return stepped(at, left, step);
  const way = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const offOf = ({ x, y }: Point): number => way.x * (y - from.y) - way.y * (x - from.x);
  const off = offOf(at);
  if (Math.abs(off) > ON_LINE) {
    const next = stepped(at, off > 0 ? left : right, step);
    if (!next || offOf(next) * off >= 0) return next;
    const share = off / (off - offOf(next));
    return { x: at.x + share * (next.x - at.x), y: at.y + share * (next.y - at.y) };
  }
  const riseToLeft = ({ x, y }: Point): number => way.x * y - way.y * x;
  const leavesLeft = riseToLeft(left) < 0;
  const leavesRight = riseToLeft(right) > 0;
  const isLeftSteeper = Math.hypot(left.x, left.y) >= Math.hypot(right.x, right.y);
  if (leavesLeft && (isLeftSteeper || !leavesRight)) return stepped(at, left, step);
  if (leavesRight) return stepped(at, right, step);
  const along = left.x * way.x + left.y * way.y;
  return stepped(at, { x: along * way.x, y: along * way.y }, step);
}

/** A side of an outline, where it stands and the box round it. */
interface Edge {
  readonly side: Side;
  readonly loop: number;
  readonly place: number;
  readonly box: Bounds;
}

function edgesOf(region: readonly Loop[]): Edge[] {
  return region.flatMap((loop, index) =>
    loop.map((side, place) => ({ side, loop: index, place, box: boundsOfSide(side) }))
  );
}

/** Where a straight way first leaves the outlines. */
function leaving(
  edges: readonly Edge[],
  isWithin: (point: Point) => boolean,
  from: Point,
  to: Point
): (SteepestEnd & { kind: 'leaves' }) | undefined {
  const way: Side = { from, to };
  const length = distance(from, to);
  const box = boundsOfSide(way);
  const met = edges
    .filter(edge => !apart(edge.box, box, ON_LINE))
    .flatMap(({ side }) => [
      ...contactsBetween(way, side, ON_LINE),
      ...[side.from].filter(corner => distanceToSide(way, corner) <= ON_LINE)
    ])
    .map(point => ({ point, ahead: distance(from, point) }))
    .sort((a, b) => a.ahead - b.ahead);
  const isOut = (ahead: number): boolean => !isWithin(pointAlong(way, Math.min(1, (ahead + JUST_PAST) / length)));
  const exit = met.find(({ ahead }) => isOut(ahead));
  if (exit) return leavesAt(edges, exit.point, way);
  return isWithin(to) ? undefined : leavesAt(edges, to, way);
}

/** Over the side at a point that is crossed most squarely: water that comes to a corner leaves over one of two. */
function leavesAt(edges: readonly Edge[], at: Point, way: Side): SteepestEnd & { kind: 'leaves' } {
  const { x, y } = heading(way, at);
  const nearest = Math.min(...edges.map(({ side }) => distanceToSide(side, at)));
  const outward = (side: Side): number => {
    const along = heading(side, at);
    const square = x * along.y - y * along.x;
    return Number.isNaN(square) ? -Infinity : square;
  };
  const [best] = edges
    .filter(({ side }) => distanceToSide(side, at) <= nearest + 2 * ON_LINE)
    .sort((a, b) => outward(b.side) - outward(a.side));
  return { kind: 'leaves', at, loop: best?.loop ?? 0, side: best?.place ?? 0 };
}
