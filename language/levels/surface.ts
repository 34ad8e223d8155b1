import { distance, type Point, pointAlong, sideLength } from '../geometry/index.ts';
import { shareAlong } from '../geometry/containment.ts';
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
      return onLine(surface, at);
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

function onLine({ line, stations, across }: Extract<Surface, { kind: 'along' }>, at: Point): number {
  let start = 0;
  let nearest = { station: 0, away: Infinity, left: true };
  for (const side of line.sides) {
    const share = shareAlong(side, at);
    const foot = pointAlong(side, share);
    const away = distance(foot, at);
    const [dx, dy] = side.arc
      ? [
          (side.arc.centre.y - foot.y) * Math.sign(side.arc.turn),
          (foot.x - side.arc.centre.x) * Math.sign(side.arc.turn)
        ]
      : [side.to.x - side.from.x, side.to.y - side.from.y];
    const left = dx * (at.y - foot.y) - dy * (at.x - foot.x) >= 0;
    if (away < nearest.away) nearest = { station: start + share * sideLength(side), away, left };
    start += sideLength(side);
  }
  const after = stations.findIndex(station => station.at > nearest.station);
  const [one, two] = [
    stations.at(after < 0 ? -2 : Math.max(0, after - 1)),
    stations.at(after < 0 ? -1 : Math.max(1, after))
  ];
  const from = one ?? { at: 0, height: 0 };
  const to = two ?? from;
  const share = to.at > from.at ? (nearest.station - from.at) / (to.at - from.at) : 0;
  const middle = from.height + Math.min(1, Math.max(0, share)) * (to.height - from.height);
  if (across.kind === 'camber') return middle - across.fall * nearest.away;
  return middle - across.toLeft * (nearest.left ? nearest.away : -nearest.away);
}
