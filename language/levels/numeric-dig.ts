import { distance, type Path, pathsArea, type Point } from '../geometry/index.ts';
import { considerAlong } from './along-edge.ts';
import { chordsOf } from './chords.ts';
import { added, type Extremes, NOTHING, type Sums } from './dig-tally.ts';
import { trianglesWithin } from './trapezoids.ts';

/** A part of the plan and how deep the dig is over it. */
export interface NumericPart {
  readonly paths: readonly Path[];
  readonly depthOf: (at: Point) => number;
}

/**
 * Cubic metres per square metre that the sum of the estimated errors may reach: a micrometre of depth. Found errors are a
 * tenth of the estimate or less.
 */
const PRECISION = 1e-6;

/** The most triangles ever kept: about half a second's work. What error is left then is told with the sums. */
const MOST_TRIANGLES = 20_000;

/** Triangles whose error is at least this share of the greatest are parted together, so that there are few rounds. */
const PARTED_TOGETHER = 1 / 16;

/** Weights of the corners where the fit is looked up: off all lines on which a sharp bend could hide by symmetry. */
const LOOKED_UP = [
  [1 / 3, 1 / 3, 1 / 3],
  [0.58, 0.31, 0.11],
  [0.11, 0.58, 0.31],
  [0.31, 0.11, 0.58]
] as const;

/** Metres by which the deepest and shallowest places may be out, unless the search for them ends early. */
const DEPTH_PRECISION = 1e-7;

/** The most triangles parted in search of the deepest and shallowest places. */
const MOST_SEARCHED = 20_000;

/** Sums over parts by sampling, with the error left by estimate (cubic metres) and the triangles made. */
export function numericSums(
  parts: readonly NumericPart[],
  extremes: Extremes
): { sums: Sums; error: number; triangles: number } {
  let sums = NOTHING;
  const triangles: Sampled[] = [];
  for (const { paths, depthOf } of parts) {
    const chords = paths.flatMap(path => chordsOf(path));
    for (const [a, b, c] of trianglesWithin(chords)) triangles.push(sampled(depthOf, [a, b, c]));
    for (const { bow } of chords) if (bow) sums = added(sums, bowSums(bow.area, depthOf(bow.middle)));
    for (const path of paths) for (const edge of path) considerAlong(edge, depthOf, extremes);
  }
  const area = parts.reduce((sum, { paths }) => sum + pathsArea(paths), 0);
  search(triangles, extremes);
  const refined = refine(triangles, PRECISION * area);
  for (const triangle of refined.triangles) sums = added(sums, triangle.sums);
  return { sums: { ...sums, area }, error: refined.error, triangles: refined.triangles.length };
}

function bowSums(area: number, depth: number): Sums {
  return { area, net: area * depth, deeper: area * Math.max(0, depth), shallowArea: depth < 0 ? area : 0 };
}

/** Corners and the middles of sides, `middles[n]` between corners n and n + 1, each with its depth. */
interface Sampled {
  readonly depthOf: (at: Point) => number;
  readonly corners: readonly Sample[];
  readonly middles: readonly Sample[];
  readonly sums: Sums;
  readonly error: number;
}

interface Sample extends Point {
  readonly depth: number;
}

function sampled(depthOf: (at: Point) => number, points: readonly Point[]): Sampled {
  const sample = ({ x, y }: Point): Sample => ({ x, y, depth: depthOf({ x, y }) });
  const corners = points.map(sample);
  const [a, b, c] = corners as [Sample, Sample, Sample];
  return sampledBetween(depthOf, corners, [between(a, b), between(b, c), between(c, a)].map(sample));
}

function between(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function sampledBetween(
  depthOf: (at: Point) => number,
  corners: readonly Sample[],
  middles: readonly Sample[]
): Sampled {
  const [a, b, c] = corners as [Sample, Sample, Sample];
  const [ab, bc, ca] = middles as [Sample, Sample, Sample];
  const area = ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
  const depths = [...corners, ...middles].map(({ depth }) => depth);
  const centre = depthOf({ x: (a.x + b.x + c.x) / 3, y: (a.y + b.y + c.y) / 3 });
  // Exact up to the third power.
  const smooth = (area * (3 * (a.depth + b.depth + c.depth) + 8 * (ab.depth + bc.depth + ca.depth) + 27 * centre)) / 60;
  const parts = [
    [a, ab, ca],
    [ab, b, bc],
    [ca, bc, c],
    [ab, bc, ca]
  ] as const;
  const flat = parts.map(([p, q, r]) => flatSums(area / 4, p.depth, q.depth, r.depth)).reduce(added, NOTHING);
  const crossed = Math.min(...depths, centre) < 0 && Math.max(...depths, centre) > 0;
  const misfit = Math.max(...LOOKED_UP.map(weights => misfitOf(depthOf, corners, middles, weights)));
  // Where it passes nought, what the flat parts miss counts by the share of the area that is deeper.
  const bulge = (smooth - flat.net) * (1 - flat.shallowArea / area);
  const deeper = crossed ? Math.max(0, flat.deeper + bulge) : Math.max(0, smooth);
  const once = flatSums(area, a.depth, b.depth, c.depth);
  const error = area * misfit + (crossed ? Math.abs(flat.deeper - once.deeper - bulge) : 0);
  return { depthOf, corners, middles, sums: { area, net: smooth, deeper, shallowArea: flat.shallowArea }, error };
}

/** How far the depth at a place, by the weights of the corners, is off the parabola through corners and middles. */
function misfitOf(
  depthOf: (at: Point) => number,
  [a, b, c]: readonly Sample[],
  [ab, bc, ca]: readonly Sample[],
  [p, q, r]: readonly [number, number, number]
): number {
  const fitted =
    p * (2 * p - 1) * a!.depth +
    q * (2 * q - 1) * b!.depth +
    r * (2 * r - 1) * c!.depth +
    4 * (p * q * ab!.depth + q * r * bc!.depth + r * p * ca!.depth);
  return Math.abs(depthOf({ x: p * a!.x + q * b!.x + r * c!.x, y: p * a!.y + q * b!.y + r * c!.y }) - fitted);
}

/** Sums over a triangle whose depth changes evenly. */
function flatSums(area: number, ...depths: readonly [number, number, number]): Sums {
  const [least, mean, most] = [...depths].sort((a, b) => a - b) as [number, number, number];
  const net = (area * (least + mean + most)) / 3;
  if (least >= 0) return { area, net, deeper: net, shallowArea: 0 };
  if (most <= 0) return { area, net, deeper: 0, shallowArea: area };
  // The corner that lies alone on its side of nought is cut off.
  if (mean <= 0) {
    const deep = area * (most / (most - least)) * (most / (most - mean));
    return { area, net, deeper: (deep * most) / 3, shallowArea: area - deep };
  }
  const shallow = area * (least / (least - most)) * (least / (least - mean));
  return { area, net, deeper: net - (shallow * least) / 3, shallowArea: shallow };
}

/** In two, across the longest side: long thin triangles soon are none. */
function parted({ depthOf, corners, middles }: Sampled): Sampled[] {
  const lengths = corners.map((corner, side) => distance(corner, corners[(side + 1) % 3]!));
  const longest = lengths.indexOf(Math.max(...lengths));
  const [a, b, c] = [0, 1, 2].map(step => corners[(longest + step) % 3]!) as [Sample, Sample, Sample];
  const [ab, bc, ca] = [0, 1, 2].map(step => middles[(longest + step) % 3]!) as [Sample, Sample, Sample];
  const sample = (from: Sample, to: Sample): Sample => {
    const point = between(from, to);
    return { ...point, depth: depthOf(point) };
  };
  const across = sample(ab, c);
  return [
    sampledBetween(depthOf, [a, ab, c], [sample(a, ab), across, ca]),
    sampledBetween(depthOf, [ab, b, c], [sample(ab, b), bc, across])
  ];
}

function refine(triangles: readonly Sampled[], slack: number): { triangles: readonly Sampled[]; error: number } {
  let now = triangles;
  for (;;) {
    const error = now.reduce((sum, triangle) => sum + triangle.error, 0);
    const greatest = now.reduce((most, triangle) => Math.max(most, triangle.error), 0);
    const worst = new Set(now.filter(triangle => triangle.error >= greatest * PARTED_TOGETHER));
    if (error <= slack || now.length + worst.size > MOST_TRIANGLES) return { triangles: now, error };
    now = now.flatMap(triangle => (worst.has(triangle) ? parted(triangle) : [triangle]));
  }
}

/** Parts triangles that may hold a deeper or shallower place than those known, as their bend lets one expect. */
function search(triangles: readonly Sampled[], extremes: Extremes): void {
  let searched = 0;
  let now = triangles;
  while (now.length > 0 && searched < MOST_SEARCHED) {
    searched += now.length;
    for (const { corners, middles } of now) {
      for (const { x, y, depth } of [...corners, ...middles]) extremes.consider(depth, { x, y });
    }
    const deepest = extremes.deepest?.depth ?? -Infinity;
    const shallowest = extremes.shallowest?.depth ?? Infinity;
    now = now.filter(triangle => mayPass(triangle, deepest, shallowest)).flatMap(parted);
  }
}

function mayPass({ corners, middles }: Sampled, deepest: number, shallowest: number): boolean {
  const bend = Math.max(
    ...middles.map(({ depth }, side) => Math.abs(depth - (corners[side]!.depth + corners[(side + 1) % 3]!.depth) / 2))
  );
  if (2 * bend <= DEPTH_PRECISION) return false;
  const depths = [...corners, ...middles].map(({ depth }) => depth);
  return (
    Math.max(...depths) + bend > deepest + DEPTH_PRECISION || Math.min(...depths) - bend < shallowest - DEPTH_PRECISION
  );
}
