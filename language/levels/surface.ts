import type { Point } from '../geometry/index.ts';
import type { StationedLine } from '../setting-out/stationed-line.ts';
import { gradientOfAlong, heightOfAlong } from './along-line.ts';
import { gradientOfTwisted, heightOfTwisted } from './twisted.ts';

/** z = at + x · alongX + y · alongY, m and slopes as ratios. */
export interface Plane {
  readonly at: number;
  readonly alongX: number;
  readonly alongY: number;
}

/** A finished surface; it is prolonged beyond what it was given for. Heights in m. */
export type Surface =
  | { readonly kind: 'plane'; readonly plane: Plane }
  /** Two planes that meet in a line: `left` counts on the left of `from` to `to`. */
  | { readonly kind: 'folded'; readonly from: Point; readonly to: Point; readonly left: Plane; readonly right: Plane }
  /** Bilinear on four corners, in their order round. */
  | {
      readonly kind: 'twisted';
      readonly corners: readonly [Point, Point, Point, Point];
      readonly heights: readonly [number, number, number, number];
    }
  /** Follows a line: height at stations, straight between; fall across. */
  | {
      readonly kind: 'along';
      readonly line: StationedLine;
      /** In order of their stations. */
      readonly stations: readonly { readonly at: number; readonly height: number }[];
      readonly across: Across;
    };

/**
 * `fall`: to one side (ratio > 0 falls to the left of the line, < 0 to the right); `camber`: falls from the line to both
 * sides.
 */
export type Across =
  { readonly kind: 'fall'; readonly toLeft: number } | { readonly kind: 'camber'; readonly fall: number };

/** Height of a surface at a point, in metres; finite wherever the surface and the point are. */
export function heightAt(surface: Surface, at: Point): number {
  switch (surface.kind) {
    case 'plane':
      return heightOfPlane(surface.plane, at);
    case 'folded':
      return heightOfPlane(planeOfFold(surface, at), at);
    case 'twisted':
      return heightOfTwisted(surface.corners, surface.heights, at);
    case 'along':
      return heightOfAlong(surface, at);
  }
}

/** Slope as a vector pointing uphill (ratios). On a fold that of its left side, on the line of a camber that along it. */
export function gradientAt(surface: Surface, at: Point): Point {
  switch (surface.kind) {
    case 'plane':
      return gradientOfPlane(surface.plane);
    case 'folded':
      return gradientOfPlane(planeOfFold(surface, at));
    case 'twisted':
      return gradientOfTwisted(surface.corners, surface.heights, at);
    case 'along':
      return gradientOfAlong(surface, at);
  }
}

/** Height of a plane at a point, in metres. */
export function heightOfPlane({ at, alongX, alongY }: Plane, { x, y }: Point): number {
  return at + x * alongX + y * alongY;
}

/** Slope of a plane, pointing uphill. */
export function gradientOfPlane({ alongX, alongY }: Plane): Point {
  return { x: alongX, y: alongY };
}

function planeOfFold({ from, to, left, right }: Surface & { kind: 'folded' }, { x, y }: Point): Plane {
  return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) >= 0 ? left : right;
}
