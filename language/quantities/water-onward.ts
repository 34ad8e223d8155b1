import { distance, type Point, pointAlong, type Side, signedAreaOf } from '../geometry/index.ts';
import { heading } from '../geometry/moved-side.ts';
import type { Area, Edge, Key } from '../job/job.ts';
import { steepestOver } from '../levels/steepest.ts';
import { heightAt, type Surface } from '../levels/surface.ts';
import { pavedRegion } from './site-area.ts';

/** Where a share of the water ends that comes to a side. */
export interface Followed {
  readonly share: number;
  readonly end: WaterEnd;
}

/** A drain takes it, it leaves the paving over a side, or it rests. */
export type WaterEnd =
  { readonly drain: Key } | { readonly leaves: Key; readonly side: number } | { readonly rests: Point };

/**
 * Places on a side from which its water is followed on, each with an equal share: where water of one side parts further
 * on, that is taken to be spread evenly along it.
 */
const PLACES = 16;

/** Areas and sides that water is followed over at most. */
const MOST_TURNS = 32;

/** Metres: so far within the next area it is looked up where water goes on. */
const JUST_IN = 1e-4;

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
  const entered = new Set([start.area]);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const area = areas[here.area]!;
    const edge = area.edges[here.side]!;
    if (edge.meets?.drain !== undefined) return { drain: edge.meets.drain };
    const next = edge.meets?.area === undefined ? -1 : areas.findIndex(({ key }) => key === edge.meets!.area);
    if (next >= 0) {
      const onward = entered.has(next) ? undefined : acrossTo(areas[next]!, next, area, here);
      if (onward === undefined) return { rests: here.at };
      if ('rests' in onward || 'drain' in onward) return onward;
      entered.add(next);
      here = onward;
      continue;
    }
    if (!isHeldBack(edge)) return { leaves: area.key, side: here.side };
    const along = alongSide(area, here);
    if (along === undefined) return { rests: here.at };
    if ('rests' in along) return along;
    here = { area: here.area, ...along };
  }
  return { rests: here.at };
}

/** Edging that stands up and walls keep water on the paving: it runs along them. */
function isHeldBack({ standing, meets, flush }: Edge): boolean {
  if (standing !== undefined && standing.value > 0) return true;
  return meets !== undefined && meets.holds && !flush && !meets.openGround && meets.existing === undefined;
}

/** From a shared side over the next area to where it leaves that one. */
function acrossTo(
  next: Area,
  index: number,
  from: Area,
  { side, at }: AtSide
): AtSide | { readonly rests: Point } | { readonly drain: Key } | undefined {
  const surface = next.finish?.surface;
  if (surface === undefined) return undefined;
  const holes = next.drains.filter(({ area }) => area === next.key);
  const region = [...pavedRegion(next), ...holes.map(({ outline }) => outline)];
  const { end } = steepestOver(surface, region)(outOf(from, side, at));
  if (end.kind === 'outside') return undefined;
  if (end.kind === 'rests') return { rests: end.at };
  if (end.loop > 0) return { drain: holes[end.loop - 1]!.key };
  const isTurned = signedAreaOf(next.outline) < 0;
  return { area: index, side: isTurned ? next.outline.length - 1 - end.side : end.side, at: end.at };
}

/** A place just over a side, seen from within; a corner a little away from it. */
function outOf({ outline }: Area, side: number, at: Point): Point {
  const way = heading(outline[side]!, at);
  const right = signedAreaOf(outline) < 0 ? -1 : 1;
  const { from, to } = outline[side]!;
  const inward = distance(at, from) < JUST_IN ? 1 : distance(at, to) < JUST_IN ? -1 : 0;
  return {
    x: at.x + JUST_IN * (right * way.y + 2 * inward * way.x),
    y: at.y + JUST_IN * (-right * way.x + 2 * inward * way.y)
  };
}

/** Down along a side to its lower end, and to the side that begins there; rests where that one does not lead on. */
function alongSide(
  { outline, finish }: Area,
  { side, at }: AtSide
): { readonly side: number; readonly at: Point } | { readonly rests: Point } | undefined {
  const surface = finish?.surface;
  const run = outline[side]!;
  if (surface === undefined) return undefined;
  const isAtStart = distance(at, run.from) < JUST_IN;
  const isAtEnd = distance(at, run.to) < JUST_IN;
  const start = isAtStart ? 0 : isAtEnd ? 1 : shareOn(run, at);
  const way = downhillWay(run, surface, start);
  if (way === 0) return { rests: at };
  const end = way > 0 ? 1 : 0;
  let height = heightAt(surface, at);
  for (let step = 1; step <= STEPS; step++) {
    const place = pointAlong(run, start + ((end - start) * step) / STEPS);
    const next = heightAt(surface, place);
    if (next > height) return { rests: place };
    height = next;
  }
  const other = (side + (way > 0 ? 1 : outline.length - 1)) % outline.length;
  return { side: other, at: way > 0 ? run.to : run.from };
}

/** 1 where a side falls on towards its end, -1 towards its start, nought where neither. */
function downhillWay(run: Side, surface: Surface, share: number): -1 | 0 | 1 {
  const here = heightAt(surface, pointAlong(run, share));
  const drop = (to: number): number => (to < 0 || to > 1 ? -Infinity : here - heightAt(surface, pointAlong(run, to)));
  const [back, on] = [drop(share - 1 / STEPS), drop(share + 1 / STEPS)];
  if (Math.max(back, on) <= 0) return 0;
  return on >= back ? 1 : -1;
}

/** The share of a side at which it is nearest to a place. */
function shareOn(run: Side, at: Point): number {
  let best = 0;
  let least = Infinity;
  for (let step = 0; step <= 4 * STEPS; step++) {
    const apart = distance(pointAlong(run, step / (4 * STEPS)), at);
    if (apart < least) [best, least] = [step / (4 * STEPS), apart];
  }
  return best;
}
