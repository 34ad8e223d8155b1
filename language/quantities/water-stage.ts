import {
  distance,
  distanceToSide,
  inside,
  type Loop,
  type Point,
  reversedLoop,
  signedAreaOf
} from '../geometry/index.ts';
import type { Area, Key } from '../job/job.ts';
import { type Drainage, drainageOf } from '../levels/drainage.ts';
import { LEVEL_SLOPE } from '../levels/steepest.ts';
import { heightAt, type Surface } from '../levels/surface.ts';
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
  const lowPlaces: LowPlace[] = [];
  const stays = areas.map(() => new Map<number, number>());
  for (const [index, area] of areas.entries()) {
    const drainage = alone[index];
    if (drainage === undefined) continue;
    const within = drainsWithin(area);
    /** Whether it stays there: no drain takes it. */
    const rest = (on: number, at: Point, drained: number): boolean => {
      const drain = areas.flatMap(other => other.drains).find(({ outline }) => isAt(outline, at));
      if (drain === undefined) lowPlaces.push({ on, at, drained });
      else take(drain.key, area.key, drained);
      return drain === undefined;
    };
    const settle = ({ end, share }: Followed, side: number, drained: number): void => {
      if ('drain' in end) take(end.drain, area.key, share * drained);
      else if ('rests' in end && rest(end.on, end.rests, share * drained))
        stays[index]!.set(side, (stays[index]!.get(side) ?? 0) + share * drained);
    };
    for (const { loop, side, area: drained } of drainage.sides) {
      if (loop > 0) take(within[loop - 1]!.key, area.key, drained);
      else for (const one of followed(areas, index, sideOf(area, side))) settle(one, sideOf(area, side), drained);
    }
    for (const { at, area: drained } of drainage.lowPlaces) rest(index, at, drained);
  }
  const pools = pooled(lowPlaces, areas).filter(({ drained }) => drained > LEAST_POOL);
  const numbers = areas.flatMap((area, index): WaterQuantities[] => {
    const drainage = alone[index];
    const here = pools.filter(({ on }) => on === index).map(({ at, drained }) => ({ x: at.x, y: at.y, drained }));
    if (drainage === undefined && here.length === 0) return [];
    const over = (drainage?.sides ?? [])
      .filter(({ loop }) => loop === 0)
      .map(({ side, area: drained }) => {
        const at = sideOf(area, side);
        const { name, meets } = area.edges[at]!;
        const still = stays[index]!.get(at);
        const met = meets === undefined ? {} : { meets: meets.name };
        return { side: name, index: at, ...met, drained, ...(still === undefined ? {} : { stays: still }) };
      });
    return [{ area: area.key, over, lowPlaces: here, tolerance: drainage?.tolerance ?? 0 }];
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

/** Less water than runs to so much paving is no pool: tapes close to a few millimetres, m2. */
const LEAST_POOL = 0.02;

/** Places no further apart than this are one, m. */
const ONE_PLACE = 0.05;

/** Metres: water stands over a rise no higher than this, and is one pool. */
const OVER_RISE = 0.002;

/** Places looked up between two low places. */
const LOOKED_UP = 16;

interface LowPlace {
  /** The area, by index. */
  readonly on: number;
  readonly at: Point;
  readonly drained: number;
}

/** Low places between which the paving does not rise are one, whatever areas they lie on: where most water comes to. */
function pooled(places: readonly LowPlace[], areas: readonly Area[]): LowPlace[] {
  const spots: LowPlace[] = [];
  for (const place of places) {
    const at = spots.findIndex(spot => spot.on === place.on && distance(spot.at, place.at) <= ONE_PLACE);
    if (at < 0) spots.push(place);
    else spots[at] = { ...spots[at]!, drained: spots[at]!.drained + place.drained };
  }
  const keyOf = ({ on }: LowPlace): string => areas[on]!.key;
  const pools: LowPlace[] = [];
  for (const spot of spots.sort((a, b) => b.drained - a.drained || (keyOf(a) < keyOf(b) ? -1 : 1))) {
    const at = pools.findIndex(pool => isOnePool(pool, spot, areas));
    if (at < 0) pools.push(spot);
    else pools[at] = { ...pools[at]!, drained: pools[at]!.drained + spot.drained };
  }
  return pools;
}

function isOnePool(one: LowPlace, other: LowPlace, areas: readonly Area[]): boolean {
  if (distance(one.at, other.at) <= ONE_PLACE) return true;
  const heightOn = ({ on, at }: LowPlace): number => heightAt(areas[on]!.finish!.surface, at);
  const [from, to] = [heightOn(one), heightOn(other)];
  if (Math.abs(from - to) > OVER_RISE) return false;
  return Array.from({ length: LOOKED_UP }, (_, index) => (index + 0.5) / LOOKED_UP).every(share => {
    const at = { x: one.at.x + (other.at.x - one.at.x) * share, y: one.at.y + (other.at.y - one.at.y) * share };
    const over = areas.find(({ outline, finish }) => finish !== undefined && inside(outline, at));
    return over !== undefined && heightAt(over.finish!.surface, at) <= Math.max(from, to) + OVER_RISE;
  });
}
