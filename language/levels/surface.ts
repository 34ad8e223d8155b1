import type { Point } from '../geometry/index.ts';
import type { StationedLine } from '../setting-out/stationed-line.ts';

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
      readonly stations: readonly { readonly at: number; readonly height: number }[];
      readonly across: Across;
    };

/**
 * `fall`: to one side (ratio > 0 falls to the left of the line, < 0 to the right); `camber`: falls from the line to both
 * sides.
 */
export type Across =
  { readonly kind: 'fall'; readonly toLeft: number } | { readonly kind: 'camber'; readonly fall: number };

export function heightAt(surface: Surface, at: Point): number {
  switch (surface.kind) {
    case 'plane':
      return onPlane(surface.plane, at);
    case 'folded': {
      const { from, to, left, right } = surface;
      const off = (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
      return onPlane(off >= 0 ? left : right, at);
    }
    case 'twisted':
      return onTwist(surface, at);
    case 'along':
      return surface.stations[0]?.height ?? 0;
  }
}

function onPlane({ at, alongX, alongY }: Plane, { x, y }: Point): number {
  return at + x * alongX + y * alongY;
}

function onTwist({ corners, heights }: Extract<Surface, { kind: 'twisted' }>, at: Point): number {
  const [a, b, c, d] = corners;
  let u = 0.5;
  let v = 0.5;
  for (let step = 0; step < 50; step++) {
    const x = (1 - u) * (1 - v) * a.x + u * (1 - v) * b.x + u * v * c.x + (1 - u) * v * d.x - at.x;
    const y = (1 - u) * (1 - v) * a.y + u * (1 - v) * b.y + u * v * c.y + (1 - u) * v * d.y - at.y;
    const xu = (1 - v) * (b.x - a.x) + v * (c.x - d.x);
    const yu = (1 - v) * (b.y - a.y) + v * (c.y - d.y);
    const xv = (1 - u) * (d.x - a.x) + u * (c.x - b.x);
    const yv = (1 - u) * (d.y - a.y) + u * (c.y - b.y);
    const turn = xu * yv - xv * yu;
    u -= (x * yv - y * xv) / turn;
    v -= (y * xu - x * yu) / turn;
  }
  const [ha, hb, hc, hd] = heights;
  return (1 - u) * (1 - v) * ha + u * (1 - v) * hb + u * v * hc + (1 - u) * v * hd;
}
