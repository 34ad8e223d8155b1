import { distance, type Point } from '../geometry/index.ts';
import { bestPlane } from './best-plane.ts';
import type { Plane, Surface } from './surface.ts';

type Twisted = Surface & { kind: 'twisted' };
type Corners = Twisted['corners'];
type Heights = Twisted['heights'];

/** `no-quadrilateral`: the corners do not go round an area that bulges outward at all four. */
export interface TwistedFault {
  readonly fault: 'no-quadrilateral';
}

/**
 * How much the lines that part the opposite sides alike may close up outside the corners, as a share of how close they
 * lie at the corner where they are closest. From there on the surface is prolonged by its tangent.
 */
const CLOSED_UP = 0.5;

/**
 * Share of the square of the longer diagonal below which the area spanned at a corner is none: three corners then lie in
 * one line.
 */
const FLAT_CORNER = 1e-6;

/** In metres: corners no further apart than this make no quadrilateral. */
const SAME_PLACE = 1e-3;

/** In metres: half the step over which the slope is taken where the surface is prolonged. */
const SLOPE_STEP = 1e-4;

/** Bilinear on four corners, in their order round either way. */
export function twistedSurface(corners: Corners, heights: Heights): Twisted | TwistedFault {
  return quadrilateral(corners) ? { kind: 'twisted', corners, heights } : { fault: 'no-quadrilateral' };
}

/** Height of a twisted surface, in metres; of corners that make no quadrilateral, that of the best plane through them. */
export function heightOfTwisted(corners: Corners, heights: Heights, at: Point): number {
  const place = placeOn(corners, at);
  if ('fault' in place) {
    const { at: height, alongX, alongY } = standIn(corners, heights);
    return height + at.x * alongX + at.y * alongY;
  }
  const { u, v, beyond } = place;
  const slope = slopeAt(place.quad, heights, u, v);
  return bilinear(heights, u, v) + slope.x * beyond.x + slope.y * beyond.y;
}

/** Slope of a twisted surface, pointing uphill. */
export function gradientOfTwisted(corners: Corners, heights: Heights, at: Point): Point {
  const place = placeOn(corners, at);
  if ('fault' in place) {
    const { alongX, alongY } = standIn(corners, heights);
    return { x: alongX, y: alongY };
  }
  if (!place.isBeyond) return slopeAt(place.quad, heights, place.u, place.v);
  const { x, y } = at;
  const height = (moved: Point): number => heightOfTwisted(corners, heights, moved);
  return {
    x: (height({ x: x + SLOPE_STEP, y }) - height({ x: x - SLOPE_STEP, y })) / (2 * SLOPE_STEP),
    y: (height({ x, y: y + SLOPE_STEP }) - height({ x, y: y - SLOPE_STEP })) / (2 * SLOPE_STEP)
  };
}

function standIn(corners: Corners, heights: Heights): Plane {
  const best = bestPlane(corners, heights);
  if (!('fault' in best)) return best.plane;
  return { at: heights.reduce((sum, height) => sum + height, 0) / heights.length, alongX: 0, alongY: 0 };
}

/** A quadrilateral as origin + u · e + v · f + u · v · g; u and v run from 0 to 1 across it. */
interface Quadrilateral {
  readonly origin: Point;
  readonly e: Point;
  readonly f: Point;
  readonly g: Point;
  /** Area spanned by a step of u and one of v at the corner where it is least: how close the lines lie. */
  readonly least: number;
  /** 1 when the corners run anticlockwise, -1 otherwise. */
  readonly way: number;
}

function quadrilateral([a, b, c, d]: Corners): Quadrilateral | undefined {
  const e = minus(b, a);
  const f = minus(d, a);
  const g = { x: a.x - b.x + c.x - d.x, y: a.y - b.y + c.y - d.y };
  const atCorners = [cross(e, f), cross(e, minus(c, b)), cross(minus(c, d), minus(c, b)), cross(minus(c, d), f)];
  const way = Math.sign(atCorners[0] ?? 0);
  const least = Math.min(...atCorners.map(area => area * way));
  const longest = Math.max(SAME_PLACE, distance(a, c), distance(b, d));
  return way !== 0 && least > FLAT_CORNER * longest * longest ? { origin: a, e, f, g, least, way } : undefined;
}

interface PlaceOn {
  readonly quad: Quadrilateral;
  readonly u: number;
  readonly v: number;
  /** Metres from the place of u and v to the point: nought unless the surface is prolonged there. */
  readonly beyond: Point;
  readonly isBeyond: boolean;
}

/** Where a point lies as u and v: on the side of the quadrilateral where they are single-valued. */
function placeOn(corners: Corners, point: Point): PlaceOn | TwistedFault {
  const quad = quadrilateral(corners);
  if (!quad) return { fault: 'no-quadrilateral' };
  const share = shareUntilClosedUp(quad, corners, point);
  if (share === undefined) return { quad, ...inverse(quad, point), beyond: { x: 0, y: 0 }, isBeyond: false };
  const middle = middleOf(corners);
  const on = { x: middle.x + share * (point.x - middle.x), y: middle.y + share * (point.y - middle.y) };
  return { quad, ...inverse(quad, on), beyond: minus(point, on), isBeyond: true };
}

function middleOf([a, b, c, d]: Corners): Point {
  return { x: (a.x + b.x + c.x + d.x) / 4, y: (a.y + b.y + c.y + d.y) / 4 };
}

/** v solves square · v² + linear · v + fixed = 0; the root's own slope is the area spanned there, of the sign `way`. */
function equationFor({ origin, e, f, g }: Quadrilateral, point: Point): Record<'square' | 'linear' | 'fixed', number> {
  const h = minus(point, origin);
  return { square: cross(g, f), linear: cross(e, f) + cross(h, g), fixed: cross(h, e) };
}

/** Share of the way from the middle to a point at which the lines have closed up; undefined when they have not. */
function shareUntilClosedUp(quad: Quadrilateral, corners: Corners, point: Point): number | undefined {
  const here = equationFor(quad, middleOf(corners));
  const there = equationFor(quad, point);
  const linearGain = there.linear - here.linear;
  const fixedGain = there.fixed - here.fixed;
  // The square of the area spanned, along the way: it starts above the limit.
  const a = linearGain * linearGain;
  const b = 2 * here.linear * linearGain - 4 * here.square * fixedGain;
  const c = here.linear * here.linear - 4 * here.square * here.fixed - (CLOSED_UP * quad.least) ** 2;
  const inner = b * b - 4 * a * c;
  if (!(b < 0) || !(inner >= 0)) return undefined;
  const share = (2 * c) / (-b + Math.sqrt(inner));
  return share < 1 ? share : undefined;
}

function inverse(quad: Quadrilateral, point: Point): { u: number; v: number } {
  const { origin, e, f, g, way } = quad;
  const { square, linear, fixed } = equationFor(quad, point);
  const root = Math.sqrt(Math.max(0, linear * linear - 4 * square * fixed));
  const v = linear * way >= 0 ? (-2 * fixed) / (linear + way * root) : (way * root - linear) / (2 * square);
  const rest = { x: point.x - origin.x - v * f.x, y: point.y - origin.y - v * f.y };
  const across = { x: e.x + v * g.x, y: e.y + v * g.y };
  const u = Math.abs(across.x) > Math.abs(across.y) ? rest.x / across.x : rest.y / across.y;
  return { u, v };
}

function bilinear([a, b, c, d]: Heights, u: number, v: number): number {
  return a + u * (b - a) + v * (d - a) + u * v * (a - b + c - d);
}

function slopeAt({ e, f, g }: Quadrilateral, [a, b, c, d]: Heights, u: number, v: number): Point {
  const alongU = { x: e.x + v * g.x, y: e.y + v * g.y };
  const alongV = { x: f.x + u * g.x, y: f.y + u * g.y };
  const riseU = b - a + v * (a - b + c - d);
  const riseV = d - a + u * (a - b + c - d);
  const area = cross(alongU, alongV);
  return {
    x: (riseU * alongV.y - riseV * alongU.y) / area,
    y: (riseV * alongU.x - riseU * alongV.x) / area
  };
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}
