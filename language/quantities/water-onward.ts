import { distance, type Point, pointAlong, type Side, sideLength, signedAreaOf } from '../geometry/index.ts';
import { shareAlong } from '../geometry/containment.ts';
import { heading } from '../geometry/moved-side.ts';
import type { Area, Edge, Key } from '../job/job.ts';
import { steepestOver } from '../levels/steepest.ts';
import { gradientAt, heightAt, type Surface } from '../levels/surface.ts';
import { pavedRegion } from './site-area.ts';

/** Where a share of the water ends that comes to a side. */
export interface Followed {
  readonly share: number;
  readonly end: WaterEnd;
}

/** A drain takes it, it leaves the paving over a side, it rests on an area, by index, or nobody knows. */
export type WaterEnd =
  | { readonly drain: Key }
  | { readonly leaves: Key; readonly side: number }
  | { readonly rests: Point; readonly on: number }
  | { readonly unknown: true };

/**
 * Places on a side from which its water is followed on, each with an equal share: where water of one side parts further
 * on, that is taken to be spread evenly along it.
 */
const PLACES = 16;

/** Areas and sides that water is followed over at most. */
const MOST_TURNS = 32;

/** Metres: so far within the next area it is looked up where water goes on. */
const JUST_IN = 1e-4;

/** Metres: water that comes back no further off than this runs along the side that it came over. */
const SAME_PLACE = 0.25;

/** Slope, and metres, that are level. */
const LEVEL = 1e-6;

/** Steps along a side to where water that runs along it comes to rest. */
const STEPS = 32;

/** Where the water goes on to that comes to a side of an area from within. */
export function followed(areas: readonly Area[], area: number, side: number): Followed[] {
  return Array.from({ length: PLACES }, (_, place) => ({
    share: 1 / PLACES,
    end: followOn(areas, { area, side, at: pointAlong(areas[area]!.outline[side]!, (place + 0.5) / PLACES) })
  }));
}

/** Water at a side, from within the area. */
interface AtSide {
  readonly area: number;
  readonly side: number;
  readonly at: Point;
}

function followOn(areas: readonly Area[], start: AtSide): WaterEnd {
  let here = start;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const area = areas[here.area]!;
    const edge = area.edges[here.side]!;
    if (edge.meets?.drain !== undefined) return { drain: edge.meets.drain };
    const next = edge.meets?.area === undefined ? -1 : areas.findIndex(({ key }) => key === edge.meets!.area);
    if (next < 0 && edge.meets?.area !== undefined && !standsUp(edge)) return UNKNOWN;
    if (next < 0 && !isHeldBack(edge)) return { leaves: area.key, side: here.side };
    const onward = next < 0 ? alongSide(areas, here) : acrossTo(areas, next, here);
    if (!('at' in onward)) return onward;
    here = onward;
  }
  return { rests: here.at, on: here.area };
}

const UNKNOWN: WaterEnd = { unknown: true };

/** Shipped kinds of sides that stand above what is laid against them; of any other the text says what stands up. */
export const STANDING: ReadonlySet<string> = new Set(['house-wall', 'garden-wall', 'steps']);

/** Edging that stands up and walls keep water on the paving: it runs along them. */
function isHeldBack(edge: Edge): boolean {
  const { meets, wall, flush } = edge;
  return standsUp(edge) || (!flush && (wall !== undefined || (meets !== undefined && STANDING.has(meets.name))));
}

function standsUp({ standing }: Edge): boolean {
  return standing !== undefined && standing.value > 0;
}

/** From a shared side over the next area to where it leaves that one; along the side where both fall towards it. */
function acrossTo(areas: readonly Area[], next: number, here: AtSide): AtSide | WaterEnd {
  // An area that is half written has no finish yet.
  if (areas[next]!.finish === undefined) return UNKNOWN;
  const from = areas[here.area]!;
  const onward = over(areas, next, besideOf(from, here, 1));
  if (onward === undefined) return { rests: here.at, on: here.area };
  const isBack = 'at' in onward && areas[next]!.edges[onward.side]!.meets?.area === from.key;
  return isBack && distance(onward.at, here.at) <= SAME_PLACE ? alongValley(areas, next, here) : onward;
}

/** Over the surface of an area from a place within it; undefined where the place is not within, or nothing is known. */
function over(areas: readonly Area[], index: number, from: Point): AtSide | WaterEnd | undefined {
  const area = areas[index]!;
  const surface = area.finish?.surface;
  if (surface === undefined) return undefined;
  const holes = area.drains.filter(drain => drain.area === area.key);
  const region = [...pavedRegion(area), ...holes.map(({ outline }) => outline)];
  const { end } = steepestOver(surface, region)(from);
  if (end.kind === 'outside') return undefined;
  if (end.kind === 'rests') return { rests: end.at, on: index };
  if (end.loop > 0) return { drain: holes[end.loop - 1]!.key };
  const isTurned = signedAreaOf(area.outline) < 0;
  return { area: index, side: isTurned ? area.outline.length - 1 - end.side : end.side, at: end.at };
}

/** Down a shared side that both areas fall towards, and on over the one that leads further down from its lower end. */
function alongValley(areas: readonly Area[], next: number, here: AtSide): AtSide | WaterEnd {
  const area = areas[here.area]!;
  const surface = area.finish!.surface;
  const down = lowerEnd(area.outline[here.side]!, surface, here.at);
  if (down.isEnd === undefined) return { rests: down.at, on: here.area };
  const height = heightAt(surface, down.at);
  const end = { ...here, at: down.at };
  const leads = [over(areas, next, besideOf(area, end, 1)), over(areas, here.area, besideOf(area, end, -1))].flatMap(
    (way): { readonly way: AtSide | WaterEnd; readonly height: number }[] => {
      if (way === undefined) return [];
      if (!('at' in way)) return [{ way, height: -Infinity }];
      return [{ way, height: heightAt(areas[way.area]!.finish!.surface, way.at) }];
    }
  );
  const [lowest] = leads.filter(lead => lead.height < height - LEVEL).sort((a, b) => a.height - b.height);
  return lowest?.way ?? { rests: down.at, on: here.area };
}

/** A place just beside a side, outside its area (1) or within it (-1); at a corner a little away from that. */
function besideOf({ outline }: Area, { side, at }: AtSide, outward: 1 | -1): Point {
  const run = outline[side]!;
  const way = heading(run, at);
  const out = outward * (signedAreaOf(outline) < 0 ? -1 : 1);
  const inward = distance(at, run.from) < JUST_IN ? 1 : distance(at, run.to) < JUST_IN ? -1 : 0;
  return {
    x: at.x + JUST_IN * (out * way.y + 2 * inward * way.x),
    y: at.y + JUST_IN * (-out * way.x + 2 * inward * way.y)
  };
}

/** Along a side that holds water back, down to its lower end and on from there. */
function alongSide(areas: readonly Area[], here: AtSide): AtSide | WaterEnd {
  const area = areas[here.area]!;
  const { outline, finish } = area;
  if (finish === undefined) return UNKNOWN;
  const down = lowerEnd(outline[here.side]!, finish.surface, here.at);
  if (down.isEnd === undefined) return { rests: down.at, on: here.area };
  const side = (here.side + (down.isEnd === 'to' ? 1 : outline.length - 1)) % outline.length;
  const corner = { area: here.area, side, at: down.at };
  if (isHeldBack(area.edges[side]!) || fallsOut(area, corner)) return corner;
  const onward = over(areas, here.area, besideOf(area, corner, -1));
  return onward ?? corner;
}

function fallsOut({ outline, finish }: Area, { side, at }: AtSide): boolean {
  const way = heading(outline[side]!, at);
  const out = signedAreaOf(outline) < 0 ? -1 : 1;
  const uphill = gradientAt(finish!.surface, at);
  return out * (uphill.x * way.y - uphill.y * way.x) <= LEVEL;
}

interface LowerEnd {
  readonly at: Point;
  /** Which end of the side it is; absent where water rests on the way, or lies level. */
  readonly isEnd?: 'from' | 'to';
}

/** Where water that runs along a side comes to. */
function lowerEnd(run: Side, surface: Surface, at: Point): LowerEnd {
  const start = shareAlong(run, at);
  const step = 1 / STEPS;
  const heightOn = (share: number): number => heightAt(surface, pointAlong(run, share));
  const heights = [0, 0.5, 1].map(heightOn);
  if (Math.max(...heights) - Math.min(...heights) <= LEVEL * sideLength(run)) return { at: pointAlong(run, 0.5) };
  const way = heightOn(Math.min(1, start + step)) < heightOn(Math.max(0, start - step)) ? 1 : -1;
  const end = way > 0 ? 1 : 0;
  const isEnd = way > 0 ? 'to' : 'from';
  if (Math.abs(end - start) * sideLength(run) < JUST_IN) return { at, isEnd };
  let height = heightOn(start);
  for (let index = 1; index <= STEPS; index++) {
    const share = start + ((end - start) * index) / STEPS;
    const next = heightOn(share);
    if (next > height) return { at: pointAlong(run, share) };
    height = next;
  }
  return { at: pointAlong(run, end), isEnd };
}
