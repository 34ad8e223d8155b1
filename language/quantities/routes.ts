import { distanceToSide, type Loop, type Point, pointAlong, type Side, sideLength } from '../geometry/index.ts';
import { shareAlong } from '../geometry/containment.ts';
import { heading } from '../geometry/moved-side.ts';
import type { Route } from '../job/heights.ts';
import type { Area, Key } from '../job/job.ts';
import { gradientAt, heightAt, type Surface } from '../levels/surface.ts';
import type { EdgeHeights } from './edge-heights-stage.ts';
import type { Book } from './page.ts';
import { leastWidth } from './route-width.ts';
import { pavedRegion, stretchesIn } from './site-area.ts';
import type { RouteQuantities } from './site-contract.ts';

/** An area that a route may lead over. */
export interface RouteArea {
  readonly area: Area;
  readonly edgeHeights: readonly EdgeHeights[];
}

/** Part of a route on one side of its line and on one area; distances along the route, m. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly side: Side;
  /** Distance at which the side begins. */
  readonly start: number;
  readonly on: RouteArea;
}

/** Slopes that differ by no more than this are one: nobody lays finer over a metre. */
const ONE_SLOPE = 0.001;

/** Metres: places at which a slope is looked up where it changes all along. */
const EVERY = 0.1;

/** Places looked up on one part at most. */
const MOST_PLACES = 2000;

/** Metres: parts no further apart follow each other. */
const NEXT_TO = 0.005;

/** Metres: so far past where the steps of a side are known they still hold. */
const PAST_STEPS = 0.002;

/** Metres: lower steps are none. */
const NO_LIP = 1e-6;

/** Routes: how steep they are along and across, their steps, and how wide the paving is along them. */
export function routesOf(routes: readonly Route[], areas: readonly RouteArea[], book: Book): RouteQuantities[] {
  return routes.map((route, index) => {
    const page = book.page('route', `/routes/${index}`);
    const parts = partsOf(route.line, areas);
    const length = parts.reduce((sum, { from, to }) => sum + to - from, 0);
    const whole = route.line.reduce((sum, side) => sum + sideLength(side), 0);
    const stretches = parts.flatMap(stretchesOf).reduce(joined, []);
    const lips = lipsOf(parts);
    page.repeat('length', length);
    page.repeat('running', Math.max(0, ...stretches.map(({ slope }) => Math.abs(slope))));
    page.repeat('cross', Math.max(0, ...stretches.map(({ cross }) => cross)));
    const width = leastWidth(parts, areas);
    if (width !== undefined) page.repeat('clearWidth', width);
    if (lips.length > 0) page.repeat('lip', Math.max(...lips.map(({ step }) => Math.abs(step))));
    if (whole - length > NEXT_TO) page.repeat('offPaving', whole - length);
    return {
      id: route.key,
      name: route.name,
      stretches: stretches.map(({ area, ...numbers }, at) => {
        const row = book.page('stretch', `/routes/${index}/stretches/${at}`);
        for (const key of ['from', 'length', 'slope', 'cross'] as const) row.repeat(key, numbers[key]);
        return { area, ...row.numbers };
      }),
      lips,
      ...page.numbers
    };
  });
}

/** In order along the line; where areas lie over each other the first counts. */
function partsOf(line: Loop, areas: readonly RouteArea[]): Part[] {
  const parts: Part[] = [];
  let start = 0;
  for (const side of line) {
    const length = sideLength(side);
    const found = areas.flatMap(on =>
      on.area.finish === undefined
        ? []
        : stretchesIn(side, pavedRegion(on.area)).map(({ from, to }) => ({
            from: start + from * length,
            to: start + to * length,
            side,
            start,
            on
          }))
    );
    let reached = start;
    for (const part of found.sort((a, b) => a.from - b.from || b.to - a.to)) {
      if (part.to - Math.max(part.from, reached) <= NO_LIP) continue;
      parts.push({ ...part, from: Math.max(part.from, reached) });
      reached = part.to;
    }
    start += length;
  }
  return parts;
}

/** The place of a part at a distance along the route. */
function placeOn({ side, start }: Pick<Part, 'side' | 'start'>, at: number): Point {
  return pointAlong(side, (at - start) / sideLength(side));
}

interface Stretch {
  readonly from: number;
  readonly length: number;
  readonly slope: number;
  readonly cross: number;
  readonly area: Key;
}

function stretchesOf(part: Part): Stretch[] {
  const { from, to, side, on } = part;
  const surface = on.area.finish!.surface;
  const isStraight = side.arc === undefined && surface.kind === 'plane';
  const count = isStraight ? 1 : Math.min(MOST_PLACES, Math.max(1, Math.ceil((to - from) / EVERY)));
  const size = (to - from) / count;
  return Array.from({ length: count }, (_, index): Stretch => {
    const ends = [from + index * size, from + (index + 1) * size].map(at => placeOn(part, at));
    const rise = heightAt(surface, ends[1]!) - heightAt(surface, ends[0]!);
    const middle = placeOn(part, from + (index + 0.5) * size);
    const cross = Math.max(...[...ends, middle].map(at => crossAt(surface, side, at)));
    return { from: from + index * size, length: size, slope: rise / size, cross, area: on.area.key };
  });
}

function crossAt(surface: Surface, side: Side, at: Point): number {
  const way = heading(side, at);
  const uphill = gradientAt(surface, at);
  return Math.abs(uphill.y * way.x - uphill.x * way.y);
}

/** Neighbouring stretches of one slope are one; the slope is that from end to end. */
function joined(stretches: readonly Stretch[], next: Stretch): readonly Stretch[] {
  const last = stretches.at(-1);
  const follows = last !== undefined && last.area === next.area && next.from - last.from - last.length <= NEXT_TO;
  if (!follows || Math.abs(last.slope - next.slope) > ONE_SLOPE) return [...stretches, next];
  const length = last.length + next.length;
  const slope = (last.slope * last.length + next.slope * next.length) / length;
  return [...stretches.slice(0, -1), { ...last, length, slope, cross: Math.max(last.cross, next.cross) }];
}

/** Steps from area to area, and at the rims of the paving where heights were taken on what is there. */
function lipsOf(parts: readonly Part[]): { at: number; step: number }[] {
  const lips: { at: number; step: number }[] = [];
  const add = (at: number, step: number | undefined): void => {
    if (step !== undefined && Math.abs(step) > NO_LIP) lips.push({ at, step });
  };
  parts.forEach((part, index) => {
    const before = parts[index - 1];
    const after = parts[index + 1];
    const follows = before !== undefined && part.from - before.to <= NEXT_TO;
    if (!follows) add(part.from, negative(stepAtRim(part, part.from)));
    else if (before.on.area.key !== part.on.area.key)
      add(part.from, finishAt(part, part.from) - finishAt(before, before.to));
    if (after === undefined || after.from - part.to > NEXT_TO) add(part.to, stepAtRim(part, part.to));
  });
  return lips;
}

function negative(step: number | undefined): number | undefined {
  return step === undefined ? undefined : -step;
}

function finishAt(part: Part, at: number): number {
  return heightAt(part.on.area.finish!.surface, placeOn(part, at));
}

/** What lies beyond the side that the route comes to there, less the finish; undefined where nothing is known of it. */
function stepAtRim(part: Part, at: number): number | undefined {
  const { area, edgeHeights } = part.on;
  const place = placeOn(part, at);
  const index = area.outline.findIndex(side => distanceToSide(side, place) <= NO_LIP);
  const meets = area.edges[index]?.meets;
  const steps = edgeHeights[index]?.steps;
  // A lawn at its height today is no step of the paving.
  if (meets === undefined || meets.openGround || meets.area !== undefined || steps === undefined || steps.length === 0)
    return undefined;
  const side = area.outline[index]!;
  const along = shareAlong(side, place) * sideLength(side);
  if (along < steps[0]!.at - PAST_STEPS || along > steps.at(-1)!.at + PAST_STEPS) return undefined;
  const after = steps.findIndex(step => step.at >= along);
  const [low, high] = [steps[after - 1] ?? steps[after], steps[after] ?? steps.at(-1)];
  if (low === undefined || high === undefined) return undefined;
  if (high.at === low.at) return high.step;
  return low.step + ((high.step - low.step) * (along - low.at)) / (high.at - low.at);
}
