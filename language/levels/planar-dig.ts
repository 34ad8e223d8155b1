import { pathsArea, type Path, type Point } from '../geometry/index.ts';
import { cutToLeft } from '../geometry/line-clip.ts';
import { firstMomentOf } from '../geometry/moment.ts';
import { loopOf, turnsTo } from '../geometry/path-clip.ts';
import { type Extremes, NOTHING, type Sums } from './dig-tally.ts';

/** Depth that changes evenly over the plan: at the origin, and per metre each way. */
export interface EvenDepth {
  readonly at: number;
  readonly alongX: number;
  readonly alongY: number;
}

/** In metres: depths that differ by less over a part are one, and no line is cut where they pass nought. */
const LEVEL = 1e-12;

/** Sums over paths, exact with arcs. */
export function planarSums(paths: readonly Path[], depth: EvenDepth, extremes: Extremes): Sums {
  const area = pathsArea(paths);
  const spread = spreadOf(paths, depth, extremes);
  if (spread === undefined) return NOTHING;
  const net = volumeUnder(paths, depth);
  if (spread.least >= -LEVEL) return { area, net, deeper: net, shallowArea: 0 };
  if (spread.most <= LEVEL) return { area, net, deeper: 0, shallowArea: area };
  const deep = cutToLeft(paths, ...lineAtNought(depth, spread.about));
  return { area, net, deeper: volumeUnder(deep, depth), shallowArea: area - pathsArea(deep) };
}

function depthAt({ at, alongX, alongY }: EvenDepth, { x, y }: Point): number {
  return at + x * alongX + y * alongY;
}

function spreadOf(
  paths: readonly Path[],
  depth: EvenDepth,
  extremes: Extremes
): { least: number; most: number; about: Point } | undefined {
  let least = Infinity;
  let most = -Infinity;
  let about: Point | undefined;
  for (const point of paths.flatMap(path => extremePlaces(path, depth))) {
    const here = depthAt(depth, point);
    extremes.consider(here, point);
    least = Math.min(least, here);
    most = Math.max(most, here);
    about ??= point;
  }
  return about && { least, most, about };
}

/** Corners, and the places on arcs where the depth is greatest or least. */
function extremePlaces(path: Path, { alongX, alongY }: EvenDepth): Point[] {
  const uphill = Math.atan2(alongY, alongX);
  return path.flatMap(edge => {
    const { x0, y0, centreX, centreY, radius, start } = edge;
    const corner = { x: x0, y: y0 };
    if (radius === 0) return [corner];
    const turns = turnsTo(edge, uphill, uphill + Math.PI);
    const tops = turns.map(turn => ({
      x: centreX + radius * Math.cos(start + turn),
      y: centreY + radius * Math.sin(start + turn)
    }));
    return [corner, ...tops];
  });
}

/** Two points of the line of no depth, with what is deeper on its left: the line's nearest place to a point, and onward. */
function lineAtNought(depth: EvenDepth, about: Point): [Point, Point] {
  const { alongX, alongY } = depth;
  const back = depthAt(depth, about) / (alongX * alongX + alongY * alongY);
  const from = { x: about.x - back * alongX, y: about.y - back * alongY };
  const steep = Math.hypot(alongX, alongY);
  return [from, { x: from.x + alongY / steep, y: from.y - alongX / steep }];
}

function volumeUnder(paths: readonly Path[], { at, alongX, alongY }: EvenDepth): number {
  const { x, y } = paths
    .map(path => firstMomentOf(loopOf(path)))
    .reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return at * pathsArea(paths) + alongX * x + alongY * y;
}
