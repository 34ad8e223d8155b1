import { type Path, pathsArea, type Point } from '../geometry/index.ts';
import { chordsOf, type Chord } from './chords.ts';
import { type Extremes, type Sums } from './dig-tally.ts';
import { considerAlong } from './along-edge.ts';
import { integral } from './quadrature.ts';

/** Depth over a twisted parallelogram: at + u · alongU + v · alongV + u · v · twist, by its shares along two sides. */
export interface TwistedDepth {
  readonly corner: Point;
  readonly sideU: Point;
  readonly sideV: Point;
  readonly at: number;
  readonly alongU: number;
  readonly alongV: number;
  readonly twist: number;
}

/**
 * Sums over paths. Along each chord the depth is summed from a level below all of them, square to it exactly and along it
 * by quadrature between the places where the sign changes; straight sides are right to rounding.
 */
export function twistedSums(paths: readonly Path[], depth: TwistedDepth, extremes: Extremes): Sums {
  const depthOf = (point: Point): number => depthAt(depth, shares(depth, point));
  for (const path of paths) for (const edge of path) considerAlong(edge, depthOf, extremes);
  const chords = paths.flatMap(path => chordsOf(path));
  const base = Math.min(...chords.map(({ from }) => shares(depth, from).v));
  const size = depth.sideU.x * depth.sideV.y - depth.sideU.y * depth.sideV.x;
  const sums = { net: 0, deeper: 0, shallowArea: 0 };
  for (const chord of chords) {
    const under = underChord(depth, chord, base);
    for (const [place, key] of (['net', 'deeper', 'shallowArea'] as const).entries()) sums[key] += size * under[place]!;
    const { bow } = chord;
    if (!bow) continue;
    const middle = depthOf(bow.middle);
    sums.net += bow.area * middle;
    sums.deeper += bow.area * Math.max(0, middle);
    if (middle < 0) sums.shallowArea += bow.area;
  }
  return { area: pathsArea(paths), ...sums };
}

interface Shares {
  readonly u: number;
  readonly v: number;
}

function shares({ corner, sideU, sideV }: TwistedDepth, { x, y }: Point): Shares {
  const size = sideU.x * sideV.y - sideU.y * sideV.x;
  const [dx, dy] = [x - corner.x, y - corner.y];
  return { u: (dx * sideV.y - dy * sideV.x) / size, v: (dy * sideU.x - dx * sideU.y) / size };
}

function depthAt({ at, alongU, alongV, twist }: TwistedDepth, { u, v }: Shares): number {
  return at + u * alongU + v * alongV + u * v * twist;
}

/** Net, deeper and shallow area between a chord and the base, in shares; positive when the chord runs against u. */
function underChord(depth: TwistedDepth, chord: Chord, base: number): readonly number[] {
  const from = shares(depth, chord.from);
  const to = shares(depth, chord.to);
  const length = to.u - from.u;
  if (length === 0) return [0, 0, 0];
  const on = (share: number): Shares => ({ u: from.u + share * length, v: from.v + share * (to.v - from.v) });
  const stops = [
    ...rootsOf(share => depthAt(depth, on(share))),
    ...rootsOf(share => depthAt(depth, { u: on(share).u, v: base }))
  ];
  return integral(share => {
    const top = on(share);
    const [low, high] = [depthAt(depth, { u: top.u, v: base }), depthAt(depth, top)];
    const wide = -length * (top.v - base);
    const deeper = wide * meanAboveNought(low, high);
    return [(wide * (low + high)) / 2, deeper, wide * shareBelowNought(low, high)];
  }, stops);
}

/** Where between 0 and 1 a quadratic passes nought. */
function rootsOf(quadratic: (share: number) => number): number[] {
  const [start, middle, end] = [quadratic(0), quadratic(0.5), quadratic(1)];
  const a = 2 * (start - 2 * middle + end);
  const b = end - start - a;
  const inside = b * b - 4 * a * start;
  if (!(inside >= 0)) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(inside)) / 2;
  return [q / a, start / q].filter(share => share > 0 && share < 1);
}

/** Of what changes evenly from one value to another: the mean of its part above nought. */
function meanAboveNought(from: number, to: number): number {
  if (from >= 0 && to >= 0) return (from + to) / 2;
  if (from <= 0 && to <= 0) return 0;
  const above = Math.max(from, to);
  return (above * above) / (2 * Math.abs(to - from));
}

function shareBelowNought(from: number, to: number): number {
  if (from >= 0 && to >= 0) return 0;
  if (from <= 0 && to <= 0) return 1;
  return -Math.min(from, to) / Math.abs(to - from);
}
