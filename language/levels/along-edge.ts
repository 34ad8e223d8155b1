import type { Point } from '../geometry/index.ts';
import type { Edge } from '../geometry/path-clip.ts';
import type { Extremes } from './dig-tally.ts';

/** The most an arc turns, in radians, between places looked up: depths between them follow a parabola to 1e-6 m. */
const TURN_PER_LOOK_UP = 0.02;

/** Shows the corner at the start of an edge, and the places along the edge where the depth is greatest or least. */
export function considerAlong(edge: Edge, depthOf: (point: Point) => number, extremes: Extremes): void {
  const { x0, y0, x1, y1, centreX, centreY, radius, start, turn } = edge;
  const at = (share: number): Point =>
    radius === 0
      ? { x: x0 + share * (x1 - x0), y: y0 + share * (y1 - y0) }
      : { x: centreX + radius * Math.cos(start + share * turn), y: centreY + radius * Math.sin(start + share * turn) };
  const count = radius === 0 ? 1 : Math.max(1, Math.ceil(Math.abs(turn) / TURN_PER_LOOK_UP));
  const show = (point: Point): number => {
    const depth = depthOf(point);
    extremes.consider(depth, point);
    return depth;
  };
  let from = show({ x: x0, y: y0 });
  for (let part = 0; part < count; part++) {
    const middle = depthOf(at((part + 0.5) / count));
    const to = part === count - 1 ? depthOf({ x: x1, y: y1 }) : show(at((part + 1) / count));
    const bend = from - 2 * middle + to;
    const turned = 0.5 - (to - from) / (4 * bend);
    if (turned > 0 && turned < 1) show(at((part + turned) / count));
    from = to;
  }
}
