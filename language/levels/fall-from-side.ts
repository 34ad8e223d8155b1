import { type Point, pointAlong, type Side, sideLength } from '../geometry/index.ts';
import { contactsBetween } from '../geometry/contacts.ts';
import { shareAlong } from '../geometry/containment.ts';
import { heading } from '../geometry/moved-side.ts';
import { extremesBetween, type Found } from './extremes.ts';
import { gradientAt, heightAt, type Surface } from './surface.ts';

/** A measure at a distance along a side, in metres. */
export interface AlongSide {
  readonly at: number;
  readonly value: number;
}

/** How a surface lies along a side of its area: distances and heights in metres, falls as ratios. */
export interface FallFromSide {
  /** Square to the side into the area: positive where water runs away from the side, negative where it runs to it. */
  readonly least: AlongSide;
  readonly most: AlongSide;
  readonly start: number;
  readonly end: number;
  readonly lowest: AlongSide;
  readonly highest: AlongSide;
}

/** The side has no length: nothing is square to it. */
export interface NoSide {
  readonly fault: 'no-length';
}

/** In metres: how near the side comes to a fold it meets. */
const MEETS_FOLD = 1e-6;

/** Fall of a surface away from a side, the area lying on its left or right, and heights along it. */
export function fallFromSide(surface: Surface, side: Side, into: 'left' | 'right'): FallFromSide | NoSide {
  const length = sideLength(side);
  if (!(length > 0)) return { fault: 'no-length' };
  const way = into === 'left' ? 1 : -1;
  const fallAt = (share: number): number => {
    const on = pointAlong(side, share);
    const along = heading(side, on);
    const uphill = gradientAt(surface, on);
    return way * (uphill.x * along.y - uphill.y * along.x);
  };
  const height = (share: number): number => heightAt(surface, pointAlong(side, share));
  const bends = bendsOf(surface, side);
  const fall = extremesBetween(fallAt, 0, 1, bends);
  const heights = extremesBetween(height, 0, 1, bends);
  const onSide = ({ at, value }: Found): AlongSide => ({ at: at * length, value });
  return {
    least: onSide(fall.least),
    most: onSide(fall.most),
    start: height(0),
    end: height(1),
    lowest: onSide(heights.least),
    highest: onSide(heights.most)
  };
}

/** Shares of a side at which it crosses the fold, or the ends of the parts of the line that a surface follows. */
function bendsOf(surface: Surface, side: Side): number[] {
  const points: Point[] = [];
  if (surface.kind === 'folded') points.push(...crossedBy(surface, side));
  if (surface.kind === 'along') {
    for (const part of surface.line.parts) points.push(part.side.from, ...contactsBetween(part.side, side, MEETS_FOLD));
  }
  return points.map(point => shareAlong(side, point));
}

/** Where a side meets the fold, prolonged past both. */
function crossedBy({ from, to }: Surface & { kind: 'folded' }, side: Side): Point[] {
  const fold = prolonged({ from, to }, side);
  return contactsBetween(fold, side, MEETS_FOLD);
}

function prolonged({ from, to }: Side, past: Side): Side {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (!(length > 0)) return { from, to };
  const reach =
    Math.hypot(past.from.x - from.x, past.from.y - from.y) +
    Math.hypot(past.to.x - from.x, past.to.y - from.y) +
    length;
  const more = (reach + sideLength(past)) / length;
  return {
    from: { x: from.x - more * (to.x - from.x), y: from.y - more * (to.y - from.y) },
    to: { x: from.x + more * (to.x - from.x), y: from.y + more * (to.y - from.y) }
  };
}
