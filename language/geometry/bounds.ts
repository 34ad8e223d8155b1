import { radiusOf } from './outline.ts';
import type { Arc, Loop, Side } from './shapes.ts';

/** An upright box, in metres. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A box round a side. */
export function boundsOfSide(side: Side): Bounds {
  const { from, to, arc } = side;
  const reaches = (quarter: number): boolean => arc !== undefined && turnsPast(side, arc, (quarter * Math.PI) / 2);
  const radius = arc ? radiusOf(side, arc) : 0;
  return {
    left: reaches(2) ? arc!.centre.x - radius : Math.min(from.x, to.x),
    right: reaches(0) ? arc!.centre.x + radius : Math.max(from.x, to.x),
    bottom: reaches(3) ? arc!.centre.y - radius : Math.min(from.y, to.y),
    top: reaches(1) ? arc!.centre.y + radius : Math.max(from.y, to.y)
  };
}

/** Whether an arc comes through a direction from its centre, radians; its ends, give or take a hair, count. */
function turnsPast({ from }: Side, { centre, turn }: Arc, direction: number): boolean {
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const full = 2 * Math.PI;
  const ahead = ((((direction - start) * Math.sign(turn)) % full) + full) % full;
  return ahead <= Math.abs(turn) + HAIR || ahead >= full - HAIR;
}

/** Radians: a quarter of a circle that an arc just reaches is taken into the box. */
const HAIR = 1e-9;

/** A box round an outline. */
export function boundsOf(loop: Loop): Bounds {
  let left = Infinity;
  let right = -Infinity;
  let bottom = Infinity;
  let top = -Infinity;
  for (const side of loop) {
    const box = boundsOfSide(side);
    left = Math.min(left, box.left);
    right = Math.max(right, box.right);
    bottom = Math.min(bottom, box.bottom);
    top = Math.max(top, box.top);
  }
  return { left, right, bottom, top };
}

/** Whether two boxes lie further apart than a gap in metres. */
export function apart(a: Bounds, b: Bounds, gap: number): boolean {
  return a.left > b.right + gap || b.left > a.right + gap || a.bottom > b.top + gap || b.bottom > a.top + gap;
}

/** What two boxes have in common, a gap in metres wider all round. */
export function common(a: Bounds, b: Bounds, gap: number): Bounds {
  return {
    left: Math.max(a.left, b.left) - gap,
    right: Math.min(a.right, b.right) + gap,
    bottom: Math.max(a.bottom, b.bottom) - gap,
    top: Math.min(a.top, b.top) + gap
  };
}

/** The box round two boxes. */
export function around(a: Bounds, b: Bounds): Bounds {
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top)
  };
}
