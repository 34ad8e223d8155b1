import { distance, distanceToSide, type Loop, type Point, reversedLoop, signedAreaOf } from '../geometry/index.ts';
import type { Area, Key } from '../job/job.ts';
import { type Drainage, drainageOf } from '../levels/drainage.ts';
import { LEVEL_SLOPE } from '../levels/steepest.ts';
import type { Surface } from '../levels/surface.ts';
import { pavedRegion } from './site-area.ts';
import type { WaterQuantities } from './site-contract.ts';
import { type Followed, followed } from './water-onward.ts';

/** What is looked at of an area for its water: its finish, its outline anticlockwise, and the drains within it. */
export interface WaterInputs {
  readonly surface: Surface;
  readonly region: readonly Loop[];
}

/** Of an area, how much of the water that falls on it a drain takes, m2 of paving. */
export interface DrainedBy {
  readonly drain: Key;
  readonly area: Key;
  readonly drained: number;
}

/** Where the water of all areas goes. */
export interface Water {
  readonly areas: readonly WaterQuantities[];
  readonly drains: readonly DrainedBy[];
}

/** Metres: a low place no further than this from a drain drains into it. */
const AT_DRAIN = 0.3;

/** What to look at; undefined where the finish is not said, or lies level: there water goes nowhere by itself. */
export function waterInputs(area: Area): WaterInputs | undefined {
  const surface = area.finish?.surface;
  if (surface === undefined) return undefined;
  if (surface.kind === 'plane' && Math.hypot(surface.plane.alongX, surface.plane.alongY) <= LEVEL_SLOPE)
    return undefined;
  return { surface, region: [...pavedRegion(area), ...drainsWithin(area).map(({ outline }) => clockwise(outline))] };
}

/** Where water goes on an area alone: over its sides, into drains within it, to low places. */
export function waterStage({ surface, region }: WaterInputs): Drainage {
  return drainageOf(surface, region);
}

/** Water of each area led on: over shared sides, along kerbs and walls, to drains and low places. */
export function waterLedOn(areas: readonly Area[], alone: readonly (Drainage | undefined)[]): Water {
  const drains = new Map<string, DrainedBy>();
  const take = (drain: Key, area: Key, drained: number): void => {
    const key = `${drain}\n${area}`;
    drains.set(key, { drain, area, drained: (drains.get(key)?.drained ?? 0) + drained });
  };
  const lowPlaces = areas.map(() => new LowPlaces());
  for (const [index, area] of areas.entries()) {
    const drainage = alone[index];
    if (drainage === undefined) continue;
    const within = drainsWithin(area);
    const rest = (on: number, at: Point, drained: number): void => {
      const drain = areas.flatMap(other => other.drains).find(({ outline }) => isAt(outline, at));
      if (drain === undefined) lowPlaces[on]!.add(at, drained);
      else take(drain.key, area.key, drained);
    };
    const settle = ({ end, share }: Followed, drained: number): void => {
      if ('drain' in end) take(end.drain, area.key, share * drained);
      else if ('rests' in end) rest(end.on, end.rests, share * drained);
    };
    for (const { loop, side, area: drained } of drainage.sides) {
      if (loop > 0) take(within[loop - 1]!.key, area.key, drained);
      else for (const one of followed(areas, index, sideOf(area, side))) settle(one, drained);
    }
    for (const { at, area: drained } of drainage.lowPlaces) rest(index, at, drained);
  }
  const numbers = areas.flatMap((area, index): WaterQuantities[] => {
    const drainage = alone[index];
    const { all } = lowPlaces[index]!;
    if (drainage === undefined && all.length === 0) return [];
    const over = (drainage?.sides ?? [])
      .filter(({ loop }) => loop === 0)
      .map(({ side, area: drained }) => {
        const at = sideOf(area, side);
        const { name, meets } = area.edges[at]!;
        return { side: name, index: at, ...(meets === undefined ? {} : { meets: meets.name }), drained };
      });
    return [{ area: area.key, over, lowPlaces: all, tolerance: drainage?.tolerance ?? 0 }];
  });
  return { areas: numbers, drains: [...drains.values()] };
}

/** Drains that take their place from an area. */
function drainsWithin({ key, drains }: Area): Area['drains'] {
  return drains.filter(drain => drain.area === key);
}

function clockwise(loop: Loop): Loop {
  return signedAreaOf(loop) > 0 ? reversedLoop(loop) : loop;
}

/** The side of an outline whose region was turned round so that it runs anticlockwise. */
function sideOf({ outline }: Area, side: number): number {
  return signedAreaOf(outline) < 0 ? outline.length - 1 - side : side;
}

function isAt(outline: Loop, at: Point): boolean {
  return outline.some(side => distanceToSide(side, at) <= AT_DRAIN);
}

/** Places no further apart than this are one, m. */
const ONE_PLACE = 0.05;

class LowPlaces {
  readonly #all: { readonly at: Point; drained: number }[] = [];

  add(at: Point, drained: number): void {
    const same = this.#all.find(place => distance(place.at, at) <= ONE_PLACE);
    if (same === undefined) this.#all.push({ at, drained });
    else same.drained += drained;
  }

  get all(): WaterQuantities['lowPlaces'] {
    return this.#all.map(({ at, drained }) => ({ x: at.x, y: at.y, drained }));
  }
}
