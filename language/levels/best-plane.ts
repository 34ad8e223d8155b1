import type { Point } from '../geometry/index.ts';
import type { Plane } from './surface.ts';

/** The plane that fits heights best, by least squares of the heights, and the corner that lies furthest off it. */
export interface BestPlane {
  readonly plane: Plane;
  /** Place in the list of the corner that lies furthest off. */
  readonly furthest: number;
  /** How far it lies above the plane, in metres; below is negative. */
  readonly deviation: number;
}

/** The points lie in one line, or there are fewer than three: no plane follows from them. */
export interface InOneLine {
  readonly fault: 'in-one-line';
}

/** Width of a set of points, as a share of its length, below which they lie in one line. */
export const IN_LINE = 1e-4;

/** The best plane through the heights of corners; heights in the order of the corners, in metres. */
export function bestPlane(corners: readonly Point[], heights: readonly number[]): BestPlane | InOneLine {
  const count = Math.max(1, corners.length);
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / count,
    y: corners.reduce((sum, { y }) => sum + y, 0) / count,
    z: corners.reduce((sum, _, index) => sum + (heights[index] ?? 0), 0) / count
  };
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const [index, corner] of corners.entries()) {
    const x = corner.x - middle.x;
    const y = corner.y - middle.y;
    const z = (heights[index] ?? 0) - middle.z;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const spread = xx * yy - xy * xy;
  if (!(spread > (IN_LINE * (xx + yy)) ** 2)) return { fault: 'in-one-line' };
  const alongX = (xz * yy - yz * xy) / spread;
  const alongY = (yz * xx - xz * xy) / spread;
  const plane = { at: middle.z - alongX * middle.x - alongY * middle.y, alongX, alongY };
  const deviations = corners.map(
    ({ x, y }, index) => (heights[index] ?? 0) - middle.z - alongX * (x - middle.x) - alongY * (y - middle.y)
  );
  const furthest = deviations.reduce(
    (most, deviation, index) => (Math.abs(deviation) > Math.abs(deviations[most] ?? 0) ? index : most),
    0
  );
  return { plane, furthest, deviation: deviations[furthest] ?? 0 };
}
