import { boundsOf, distance, type Loop, type Point } from '../geometry/index.ts';
import { seenFrom } from '../geometry/frame.ts';
import { type Run, runsOf } from '../geometry/level-line.ts';
import { signedAreaOf } from '../geometry/outline.ts';
import { LEVEL_SLOPE, steepestOver } from './steepest.ts';
import type { Surface } from './surface.ts';

/** How much of an area drains over each side of its outlines, and how much to low places within it; square metres. */
export interface Drainage {
  readonly sides: readonly { readonly loop: number; readonly side: number; readonly area: number }[];
  readonly lowPlaces: readonly { readonly at: Point; readonly area: number }[];
  /** Share of the whole by which the areas may be off: nought for a plane. */
  readonly tolerance: number;
}

/** Share of the whole area by which those of a surface that bends, taken from places looked up, may be off. */
export const LOOKED_UP_TOLERANCE = 0.03;

/** About how many places are looked up on a surface that bends. */
const PLACES = 400;

/** Lines of places at most, for areas that are all length. */
const MOST_LINES = 400;

/** In metres: a strip straight uphill no wider than this is rounding, not a share. */
const NO_STRIP = 1e-9;

/** Share of the extent within which low places are one. */
const ONE_LOW_PLACE = 0.02;

/**
 * Where water of an area goes, over its surface alone; outer outlines anticlockwise, holes clockwise. Exact for a plane.
 * What drains is an area, never an amount of water.
 */
export function drainageOf(surface: Surface, region: readonly Loop[]): Drainage {
  if (surface.kind === 'plane') {
    const { alongX, alongY } = surface.plane;
    if (Math.hypot(alongX, alongY) > LEVEL_SLOPE) return drainageDown(Math.atan2(alongY, alongX), region);
  }
  return drainageLookedUp(surface, region);
}

interface NumberedRun {
  readonly run: Run;
  readonly loop: number;
  readonly side: number;
}

/** What lies straight uphill of each side. */
function drainageDown(uphill: number, region: readonly Loop[]): Drainage {
  const first = region[0]?.[0]?.from ?? { x: 0, y: 0 };
  // Seen so that water runs to the left.
  const seen = region.map(loop => seenFrom({ ...first, direction: uphill }, loop));
  const runs = seen.flatMap((loop, index) =>
    loop.flatMap((side, place) => runsOf([[side]]).map((run): NumberedRun => ({ run, loop: index, side: place })))
  );
  const levels = [...new Set(runs.flatMap(({ run }) => [run.from.y, run.to.y]))].sort((a, b) => a - b);
  const shares = new Shares();
  for (const [index, top] of levels.slice(1).entries()) {
    const bottom = levels[index] ?? top;
    if (top - bottom <= NO_STRIP) continue;
    const across = runs
      .filter(({ run }) => Math.min(run.from.y, run.to.y) <= bottom && Math.max(run.from.y, run.to.y) >= top)
      .map(numbered => ({ ...numbered, x: reachAt(numbered.run, (bottom + top) / 2) }))
      .sort((a, b) => a.x - b.x);
    for (let pair = 0; pair + 1 < across.length; pair += 2) {
      const [low, high] = [across[pair]!, across[pair + 1]!];
      shares.add(low, areaLeftOf(high.run, bottom, top) - areaLeftOf(low.run, bottom, top));
    }
  }
  return { sides: shares.all(), lowPlaces: [], tolerance: 0 };
}

function reachAt({ from, to, centre, radius, bow }: Run, level: number): number {
  if (!centre) return from.x + ((level - from.y) / (to.y - from.y)) * (to.x - from.x);
  const rise = level - centre.y;
  return centre.x + bow * Math.sqrt(Math.max(0, (radius - rise) * (radius + rise)));
}

/** Area between a run and the upright through nought, from one level to another. */
function areaLeftOf(run: Run, bottom: number, top: number): number {
  const { centre, radius, bow } = run;
  if (!centre) return reachAt(run, (bottom + top) / 2) * (top - bottom);
  const within = (level: number): number => {
    const rise = Math.min(radius, Math.max(-radius, level - centre.y));
    return (rise * Math.sqrt((radius - rise) * (radius + rise)) + radius * radius * Math.asin(rise / radius)) / 2;
  };
  return centre.x * (top - bottom) + bow * (within(top) - within(bottom));
}

function drainageLookedUp(surface: Surface, region: readonly Loop[]): Drainage {
  const whole = region.reduce((sum, loop) => sum + signedAreaOf(loop), 0);
  const places = placesWithin(region, whole);
  const trace = steepestOver(surface, region);
  const shares = new Shares();
  const lowPlaces: { at: Point; area: number }[] = [];
  const total = places.reduce((sum, { area }) => sum + area, 0);
  const apart = ONE_LOW_PLACE * Math.sqrt(Math.max(0, whole));
  for (const { at, area } of places) {
    const { end } = trace(at);
    const share = (area / total) * whole;
    if (end.kind === 'leaves') shares.add(end, share);
    if (end.kind !== 'rests') continue;
    const same = lowPlaces.find(place => distance(place.at, end.at) <= apart);
    if (same) same.area += share;
    else lowPlaces.push({ at: end.at, area: share });
  }
  return { sides: shares.all(), lowPlaces, tolerance: LOOKED_UP_TOLERANCE };
}

/** Places spread evenly over the outlines, on level lines, with the area each stands for. */
function placesWithin(region: readonly Loop[], whole: number): { at: Point; area: number }[] {
  if (!(whole > 0)) return [];
  const bounds = boundsOf(region.flat());
  const apart = Math.sqrt(whole / PLACES);
  const height = bounds.top - bounds.bottom;
  const lines = Math.min(MOST_LINES, Math.ceil(height / apart));
  const runs = runsOf(region);
  return Array.from({ length: lines }, (_, line) => bounds.bottom + ((line + 0.5) / lines) * height).flatMap(level => {
    const crossed = runs
      .filter(({ from, to }) => from.y > level !== to.y > level)
      .map(run => reachAt(run, level))
      .sort((a, b) => a - b);
    const found: { at: Point; area: number }[] = [];
    for (let pair = 0; pair + 1 < crossed.length; pair += 2) {
      const [left, right] = [crossed[pair]!, crossed[pair + 1]!];
      const count = Math.min(PLACES, Math.ceil((right - left) / apart));
      const width = (right - left) / Math.max(1, count);
      for (let place = 0; place < count; place++) {
        found.push({ at: { x: left + (place + 0.5) * width, y: level }, area: (width * height) / lines });
      }
    }
    return found;
  });
}

/** Areas summed by side. */
class Shares {
  readonly #areas = new Map<string, { loop: number; side: number; area: number }>();

  add({ loop, side }: { loop: number; side: number }, area: number): void {
    const key = `${loop} ${side}`;
    const share = this.#areas.get(key) ?? { loop, side, area: 0 };
    share.area += area;
    this.#areas.set(key, share);
  }

  /** In the order of the outlines and their sides. */
  all(): { loop: number; side: number; area: number }[] {
    return [...this.#areas.values()].sort((a, b) => a.loop - b.loop || a.side - b.side);
  }
}
