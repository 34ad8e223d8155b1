import { distance, type Path, type Point } from '../geometry/index.ts';
import { cutToLeft } from '../geometry/line-clip.ts';
import { onSlope, type Slope } from './ground-cells.ts';
import type { EvenDepth } from './planar-dig.ts';
import { heightAt, type Plane, type Surface } from './surface.ts';
import type { TwistedDepth } from './twisted-dig.ts';

type Fold = Extract<Surface, { kind: 'folded' }>;
type Twist = Extract<Surface, { kind: 'twisted' }>;

/** How a depth changes over the plan, about a local origin. */
export type DepthOver =
  | { readonly kind: 'even'; readonly depth: EvenDepth }
  | { readonly kind: 'twisted'; readonly depth: TwistedDepth }
  /** On any other surface: it is known place by place. */
  | { readonly kind: 'sampled'; readonly depthOf: (at: Point) => number };

/** Share of the length of its sides by which opposite sides of a parallelogram may differ: rounding far off the origin. */
const PARALLEL = 1e-9;

/**
 * The depth from one plane of ground down to a surface, in paths parted where it folds. Paths and depths are about the
 * origin; `lower` is added to all depths.
 */
export function depthOver(
  paths: readonly Path[],
  slope: Slope,
  surface: Surface,
  lower: number,
  origin: Point
): { paths: readonly Path[]; over: DepthOver }[] {
  switch (surface.kind) {
    case 'plane':
      return [{ paths, over: evenDepth(slope, surface.plane, lower, origin) }];
    case 'folded':
      return foldParts(paths, surface, origin).map(({ paths, plane }) => ({
        paths,
        over: evenDepth(slope, plane, lower, origin)
      }));
    case 'twisted':
      return [
        { paths, over: twistedDepth(slope, surface, lower, origin) ?? sampledDepth(slope, surface, lower, origin) }
      ];
    case 'along':
      return [{ paths, over: sampledDepth(slope, surface, lower, origin) }];
  }
}

function evenDepth(slope: Slope, plane: Plane, lower: number, origin: Point): DepthOver {
  const surface = plane.at + origin.x * plane.alongX + origin.y * plane.alongY;
  return {
    kind: 'even',
    depth: {
      at: onSlope(slope, origin) - surface + lower,
      alongX: slope.alongX - plane.alongX,
      alongY: slope.alongY - plane.alongY
    }
  };
}

function foldParts(
  paths: readonly Path[],
  { from, to, left, right }: Fold,
  origin: Point
): { paths: readonly Path[]; plane: Plane }[] {
  if (!(distance(from, to) > 0)) return [{ paths, plane: left }];
  const [start, end] = [about(origin, from), about(origin, to)];
  return [
    { paths: cutToLeft(paths, start, end), plane: left },
    { paths: cutToLeft(paths, end, start), plane: right }
  ];
}

function sampledDepth(slope: Slope, surface: Surface, lower: number, origin: Point): DepthOver {
  const depthOf = ({ x, y }: Point): number => {
    const at = { x: x + origin.x, y: y + origin.y };
    return onSlope(slope, at) - heightAt(surface, at) + lower;
  };
  return { kind: 'sampled', depthOf };
}

/** Undefined when the corners make no parallelogram. */
function twistedDepth(slope: Slope, { corners, heights }: Twist, lower: number, origin: Point): DepthOver | undefined {
  const [a, b, c, d] = corners;
  const sideU = about(a, b);
  const sideV = about(a, d);
  const size = distance(a, b) + distance(a, d);
  const isParallelogram = distance(about(b, c), sideV) <= PARALLEL * size;
  if (!isParallelogram || Math.abs(sideU.x * sideV.y - sideU.y * sideV.x) <= PARALLEL * size * size) return undefined;
  const [atA, atB, atC, atD] = heights;
  return {
    kind: 'twisted',
    depth: {
      corner: about(origin, a),
      sideU,
      sideV,
      at: onSlope(slope, a) - atA + lower,
      alongU: slope.alongX * sideU.x + slope.alongY * sideU.y - (atB - atA),
      alongV: slope.alongX * sideV.x + slope.alongY * sideV.y - (atD - atA),
      twist: atB + atD - atA - atC
    }
  };
}

/** A point about a local origin. */
export function about(origin: Point, { x, y }: Point): Point {
  return { x: x - origin.x, y: y - origin.y };
}
