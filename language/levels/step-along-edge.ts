import { type Point, pointAlong, type Side, sideLength } from '../geometry/index.ts';
import { extremesBetween, stopsBetween, whereItBegins } from './extremes.ts';

/** How much higher the neighbour stands than this side of an edge, at a distance along it; metres, lower is negative. */
export interface StepAt {
  readonly at: number;
  readonly point: Point;
  readonly difference: number;
}

/** The steps along an edge; it stands up nowhere when `up` is absent, and likewise down. */
export interface StepsAlong {
  /** In order along the edge: its ends and corners, the breaks, where it is most up and down, where it is nought. */
  readonly places: readonly StepAt[];
  readonly up?: StepAt;
  readonly down?: StepAt;
  /** Distances along the edge at which both sides are level. */
  readonly level: readonly number[];
}

/** In metres: both sides are level when no further apart. */
export const LEVEL_STEP = 1e-6;

/** In metres: places along an edge no further apart are one. */
const SAME_PLACE = 1e-9;

/** Looked up between two breaks for places where the step is nought. */
const LOOKED_UP = 32;

/**
 * The step along an edge from one height to another; `breaks` are distances along it at which either may bend. Empty for
 * an edge of no length.
 */
export function stepsAlong(
  edge: readonly Side[],
  here: (at: Point) => number,
  there: (at: Point) => number,
  breaks: readonly number[]
): StepsAlong {
  const corners = [0];
  for (const side of edge) corners.push((corners[corners.length - 1] ?? 0) + sideLength(side));
  const length = corners[corners.length - 1] ?? 0;
  if (!(length > 0)) return { places: [], level: [] };
  const stepAt = (at: number): StepAt => {
    const point = pointOn(edge, corners, at);
    return { at, point, difference: there(point) - here(point) };
  };
  const measure = (at: number): number => stepAt(at).difference;
  const stops = stopsBetween(0, length, [...breaks, ...corners]);
  const { least, most } = extremesBetween(measure, 0, length, stops);
  const found = [...stops, least.at, most.at, ...crossings(measure, stops)].sort((a, b) => a - b);
  const places = found.filter((at, index) => !(at - (found[index - 1] ?? -1) <= SAME_PLACE)).map(stepAt);
  return {
    places,
    ...(most.value > LEVEL_STEP ? { up: stepAt(most.at) } : {}),
    ...(least.value < -LEVEL_STEP ? { down: stepAt(least.at) } : {}),
    level: places.filter(({ difference }) => Math.abs(difference) <= LEVEL_STEP).map(({ at }) => at)
  };
}

function pointOn(edge: readonly Side[], corners: readonly number[], at: number): Point {
  const after = corners.findIndex((corner, index) => index > 0 && at <= corner && corner > (corners[index - 1] ?? 0));
  const index = after < 0 ? edge.length : after;
  const start = corners[index - 1] ?? 0;
  const length = (corners[index] ?? 0) - start;
  return pointAlong(edge[index - 1]!, length > 0 ? Math.min(1, (at - start) / length) : 1);
}

function crossings(measure: (at: number) => number, stops: readonly number[]): number[] {
  const found: number[] = [];
  for (const [index, end] of stops.slice(1).entries()) {
    const start = stops[index] ?? 0;
    let before = { at: start, sign: Math.sign(measure(start)) };
    for (let step = 1; step <= LOOKED_UP; step++) {
      const at = start + ((end - start) * step) / LOOKED_UP;
      const sign = Math.sign(measure(at));
      if (sign * before.sign < 0)
        found.push(whereItBegins(place => Math.sign(measure(place)) !== before.sign, before.at, at));
      before = { at, sign };
    }
  }
  return found;
}
