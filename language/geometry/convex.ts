import type { Bounds } from './bounds.ts';
import { cutToColumns, cutToRows } from './courses.ts';
import { cutToLeft } from './line-clip.ts';
import { distance } from './outline.ts';
import { alongRim, type Edge, type Path, pathsArea, RIM_TOLERANCE, straightEdge } from './path-clip.ts';
import type { Point } from './shapes.ts';

/** A convex shape with straight sides that paths are clipped to: a unit, or a joint. Metres and square metres. */
export interface Convex {
  /** Anticlockwise. */
  readonly corners: readonly Point[];
  /** Metres along the rim, anticlockwise from the first corner, to each corner. */
  readonly cornerPlaces: readonly number[];
  readonly area: number;
  readonly perimeter: number;
  /** What of paths lies within. */
  clip(paths: readonly Path[]): Path[];
  /** Whether an edge of what was clipped runs along one of the sides. */
  isAlongRim(edge: Edge): boolean;
  /** Metres along the rim, anticlockwise from the first corner, to a point on it. */
  rimPlace(x: number, y: number): number;
  /** The shape with each side moved inward. */
  within(margin: number): Convex;
}

/** An upright box as a convex shape. */
export function boxShape(box: Bounds): Convex {
  const { left, right, bottom, top } = box;
  const length = right - left;
  const width = top - bottom;
  return {
    corners: [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top }
    ],
    cornerPlaces: [0, length, length + width, 2 * length + width],
    area: length * width,
    perimeter: 2 * (length + width),
    clip: paths => cutToRows(cutToColumns(paths, left, right), bottom, top),
    isAlongRim: edge => alongRim(edge, box),
    rimPlace: (x, y) => boxPlace(x, y, box),
    within: margin =>
      boxShape({ left: left + margin, right: right - margin, bottom: bottom + margin, top: top - margin })
  };
}

function boxPlace(x: number, y: number, { left, right, bottom, top }: Bounds): number {
  const length = right - left;
  const width = top - bottom;
  const nearest = Math.min(Math.abs(y - bottom), Math.abs(x - right), Math.abs(y - top), Math.abs(x - left));
  if (Math.abs(y - bottom) === nearest) return x - left;
  if (Math.abs(x - right) === nearest) return length + y - bottom;
  if (Math.abs(y - top) === nearest) return length + width + right - x;
  return 2 * length + width + top - y;
}

interface ConvexSide {
  readonly from: Point;
  readonly to: Point;
  /** Metres along the rim to where it starts. */
  readonly place: number;
  /** Of length one. */
  readonly way: Point;
}

/** A convex shape by its corners, anticlockwise, no two of them in one place. */
export function convexShape(corners: readonly Point[]): Convex {
  let perimeter = 0;
  const sides = corners.map((from, index): ConvexSide => {
    const to = corners[(index + 1) % corners.length] ?? from;
    const length = distance(from, to);
    const place = perimeter;
    perimeter += length;
    return { from, to, place, way: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
  });
  return {
    corners,
    cornerPlaces: sides.map(({ place }) => place),
    area: pathsArea([rimOf(corners)]),
    perimeter,
    clip: paths => sides.reduce<Path[]>((left, { from, to }) => cutToLeft(left, from, to), [...paths]),
    isAlongRim: ({ x0, y0, x1, y1, radius }) =>
      radius === 0 && sides.some(side => off(side, x0, y0) < RIM_TOLERANCE && off(side, x1, y1) < RIM_TOLERANCE),
    rimPlace: (x, y) => {
      const nearest = sides.reduce((best, side) => (off(side, x, y) < off(best, x, y) ? side : best));
      const { from, way, place } = nearest;
      return place + way.x * (x - from.x) + way.y * (y - from.y);
    },
    within: margin => convexShape(sides.map((side, index) => movedCorner(sides.at(index - 1) ?? side, side, margin)))
  };
}

/** Metres from the line along a side to a point. */
function off({ from, way }: ConvexSide, x: number, y: number): number {
  return Math.abs(way.x * (y - from.y) - way.y * (x - from.x));
}

/** The corner between two sides when both are moved inward. */
function movedCorner(before: ConvexSide, after: ConvexSide, margin: number): Point {
  const share = margin / (1 + before.way.x * after.way.x + before.way.y * after.way.y);
  return {
    x: after.from.x - share * (before.way.y + after.way.y),
    y: after.from.y + share * (before.way.x + after.way.x)
  };
}

/** The outline through corners as a path. */
export function rimOf(corners: readonly Point[]): Path {
  return corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length] ?? from;
    return straightEdge(from.x, from.y, to.x, to.y);
  });
}
