import { distance, radiusOf } from './outline.ts';
import type { Arc, Point, Side } from './shapes.ts';

/** Sine below which two straight sides count as parallel: they then meet nowhere, or run on top of each other. */
const PARALLEL_SINE = 1e-12;

/** Distance from a point to the nearest point of a side, in metres. */
export function distanceToSide(side: Side, point: Point): number {
  if (side.arc) {
    if (withinTurn(side, side.arc, point)) return Math.abs(distance(point, side.arc.centre) - radiusOf(side, side.arc));
    return Math.min(distance(point, side.from), distance(point, side.to));
  }
  const dx = side.to.x - side.from.x;
  const dy = side.to.y - side.from.y;
  const square = dx * dx + dy * dy;
  const share = square > 0 ? ((point.x - side.from.x) * dx + (point.y - side.from.y) * dy) / square : 0;
  const within = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - side.from.x - within * dx, point.y - side.from.y - within * dy);
}

/** How far along the arc's turn a point lies as seen from the centre, as a share of the turn: 0 at `from`, 1 at `to`. */
export function shareOfTurn(side: Side, arc: Arc, point: Point): number {
  const ax = side.from.x - arc.centre.x;
  const ay = side.from.y - arc.centre.y;
  const bx = point.x - arc.centre.x;
  const by = point.y - arc.centre.y;
  const angle = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * Math.sign(arc.turn);
  return (angle < 0 ? angle + 2 * Math.PI : angle) / Math.abs(arc.turn);
}

function withinTurn(side: Side, arc: Arc, point: Point): boolean {
  return shareOfTurn(side, arc, point) <= 1;
}

/** Points where two sides cross or come within a tolerance (metres) of touching; none where they run on each other. */
export function contactsBetween(a: Side, b: Side, tolerance: number): Point[] {
  const points = a.arc
    ? b.arc
      ? circlesMeet(a.arc.centre, radiusOf(a, a.arc), b.arc.centre, radiusOf(b, b.arc), tolerance)
      : lineMeetsCircle(b.from, b.to, a.arc.centre, radiusOf(a, a.arc), tolerance)
    : b.arc
      ? lineMeetsCircle(a.from, a.to, b.arc.centre, radiusOf(b, b.arc), tolerance)
      : linesMeet(a.from, a.to, b.from, b.to);
  return points.filter(point => distanceToSide(a, point) <= tolerance && distanceToSide(b, point) <= tolerance);
}

/** Where the line through two points meets the line through two others, prolonged; none when they are parallel. */
export function linesMeet(from: Point, to: Point, otherFrom: Point, otherTo: Point): Point[] {
  const ax = to.x - from.x;
  const ay = to.y - from.y;
  const bx = otherTo.x - otherFrom.x;
  const by = otherTo.y - otherFrom.y;
  const cross = ax * by - ay * bx;
  if (!(Math.abs(cross) > PARALLEL_SINE * Math.hypot(ax, ay) * Math.hypot(bx, by))) return [];
  const share = ((otherFrom.x - from.x) * by - (otherFrom.y - from.y) * bx) / cross;
  return [{ x: from.x + share * ax, y: from.y + share * ay }];
}

/** Where the prolonged line through two points meets a circle; a miss by no more than the tolerance is one point. */
export function lineMeetsCircle(from: Point, to: Point, centre: Point, radius: number, tolerance: number): Point[] {
  const length = distance(from, to);
  if (!(length > 0)) return [];
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const along = (centre.x - from.x) * ux + (centre.y - from.y) * uy;
  const foot = { x: from.x + along * ux, y: from.y + along * uy };
  const off = (centre.x - from.x) * uy - (centre.y - from.y) * ux;
  return oneOrTwo(foot, ux, uy, (radius - off) * (radius + off), Math.abs(off) - radius <= tolerance);
}

/** Where two circles meet; a miss by no more than the tolerance is one point, circles about one centre meet nowhere. */
export function circlesMeet(a: Point, radiusA: number, b: Point, radiusB: number, tolerance: number): Point[] {
  const apart = distance(a, b);
  const miss = Math.max(apart - radiusA - radiusB, Math.abs(radiusA - radiusB) - apart);
  if (!(apart > 0)) return [];
  const ux = (b.x - a.x) / apart;
  const uy = (b.y - a.y) / apart;
  const along = (apart + ((radiusA - radiusB) * (radiusA + radiusB)) / apart) / 2;
  const reach = Math.min(radiusA, Math.max(-radiusA, along));
  const foot = { x: a.x + reach * ux, y: a.y + reach * uy };
  return oneOrTwo(foot, -uy, ux, (radiusA - reach) * (radiusA + reach), miss <= tolerance);
}

function oneOrTwo(foot: Point, ux: number, uy: number, square: number, touching: boolean): Point[] {
  if (!touching) return [];
  if (!(square > 0)) return [foot];
  const half = Math.sqrt(square);
  return [
    { x: foot.x - half * ux, y: foot.y - half * uy },
    { x: foot.x + half * ux, y: foot.y + half * uy }
  ];
}
