import { distance, type Point } from '../geometry/index.ts';
import { IN_LINE, type InOneLine } from './best-plane.ts';
import { heightOfPlane, type Plane } from './surface.ts';

/** A point and the height there, in metres. */
export interface Levelled {
  readonly point: Point;
  readonly height: number;
}

/** Two points lie on top of each other: no direction follows from them. */
export interface NoLength {
  readonly fault: 'no-length';
}

/** Two points nearer than this, in metres, give no direction. */
const SAME_PLACE = 1e-9;

/** Ratio up to which a fall said once more agrees with the others. */
const FALLS_AGREE = 1e-6;

/** Sine below which two directions are one. */
const SAME_DIRECTION = 1e-6;

/** The plane through three points. */
export function planeThrough(a: Levelled, b: Levelled, c: Levelled): Plane | InOneLine {
  const bx = b.point.x - a.point.x;
  const by = b.point.y - a.point.y;
  const cx = c.point.x - a.point.x;
  const cy = c.point.y - a.point.y;
  const span = bx * cy - by * cx;
  const longest = Math.max(distance(a.point, b.point), distance(b.point, c.point), distance(c.point, a.point));
  if (!(Math.abs(span) > IN_LINE * longest * longest)) return { fault: 'in-one-line' };
  const bz = b.height - a.height;
  const cz = c.height - a.height;
  return planeRising(a, { x: (bz * cy - cz * by) / span, y: (cz * bx - bz * cx) / span });
}

/** The plane through a point with a height, with a slope that points uphill (ratios). */
export function planeRising({ point, height }: Levelled, uphill: Point): Plane {
  return { at: height - point.x * uphill.x - point.y * uphill.y, alongX: uphill.x, alongY: uphill.y };
}

/**
 * The plane through two points that falls away from the line between them, square to it, by a ratio (negative: rises),
 * to the side on the left or right of the way from the first to the second.
 */
export function planeAlong(from: Levelled, to: Levelled, fallAway: number, side: 'left' | 'right'): Plane | NoLength {
  const length = distance(from.point, to.point);
  if (!(length > SAME_PLACE)) return { fault: 'no-length' };
  const ux = (to.point.x - from.point.x) / length;
  const uy = (to.point.y - from.point.y) / length;
  const rise = (to.height - from.height) / length;
  const riseLeft = side === 'left' ? -fallAway : fallAway;
  return planeRising(from, { x: rise * ux - riseLeft * uy, y: rise * uy + riseLeft * ux });
}

/** How much a plane falls in a direction of any length; `fall` as a ratio, negative where it rises. */
export interface Fall {
  readonly direction: Point;
  readonly fall: number;
}

/** `no-length`: the direction of that index has none. `falls-disagree`: the fall of that index is not that of the rest. */
export interface FallsFault {
  readonly fault: 'no-length' | 'falls-disagree';
  readonly index: number;
}

/**
 * The slope, pointing uphill, of the plane that falls as said in every direction; level across where only one direction
 * is said. Its length is the steepest fall.
 */
export function combinedFalls(falls: readonly Fall[]): Point | FallsFault {
  const unit: Fall[] = [];
  for (const [index, { direction, fall }] of falls.entries()) {
    const length = Math.hypot(direction.x, direction.y);
    if (!(length > 0)) return { fault: 'no-length', index };
    unit.push({ direction: { x: direction.x / length, y: direction.y / length }, fall });
  }
  const uphill = slopeFromTwo(unit);
  const other = unit.findIndex(
    ({ direction, fall }) => Math.abs(uphill.x * direction.x + uphill.y * direction.y + fall) > FALLS_AGREE
  );
  return other < 0 ? uphill : { fault: 'falls-disagree', index: other };
}

/** From the first fall and the first after it in another direction. */
function slopeFromTwo(falls: readonly Fall[]): Point {
  const [one] = falls;
  if (!one) return { x: 0, y: 0 };
  const sine = ({ direction }: Fall): number => one.direction.x * direction.y - one.direction.y * direction.x;
  const two = falls.find(fall => Math.abs(sine(fall)) > SAME_DIRECTION);
  if (!two) return { x: -one.fall * one.direction.x, y: -one.fall * one.direction.y };
  return {
    x: (two.fall * one.direction.y - one.fall * two.direction.y) / sine(two),
    y: (one.fall * two.direction.x - two.fall * one.direction.x) / sine(two)
  };
}

/**
 * How far the fourth corner lies above the plane through the other three, in metres; below is negative. Nought when the
 * four lie in a plane.
 */
export function twistOf(corners: readonly [Levelled, Levelled, Levelled, Levelled]): number | InOneLine {
  const [a, b, c, d] = corners;
  const plane = planeThrough(a, b, c);
  return 'fault' in plane ? plane : d.height - heightOfPlane(plane, d.point);
}
