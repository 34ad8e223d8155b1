import { type Loop, type Point, pointAlong, type Side } from '../../geometry/index.ts';
import type { LiveCorners } from './live-plan.ts';

/** Metres to millimetres on the ground, to a tenth. */
export function mm(metres: number): number {
  return rounded(metres * 1000, 10);
}

/** A step from unit to unit, mm: finer, since it is taken many times. */
export function mmOfStep(metres: number): number {
  return rounded(metres * 1000, 10_000);
}

/** Radians: a unit is turned by less than anybody sees. */
export function turnOf(radians: number): number {
  return rounded(radians, 100_000);
}

/** A number that JSON knows: never `-0`; nought for the way of a side without length. */
function rounded(value: number, parts: number): number {
  return Number.isFinite(value) ? Math.round(value * parts) / parts || 0 : 0;
}

/** An outline as its corners and how its sides bend. */
export function cornersOf(loop: Loop): LiveCorners {
  return loop.flatMap(corners);
}

/** Sides that follow each other and need not close: with the last corner. */
export function lineOf(sides: Loop): LiveCorners {
  const last = sides.at(-1);
  return last === undefined ? [] : [...sides.flatMap(corners), mm(last.to.x), mm(last.to.y), 0];
}

/** The start of a side and its bend; of one that turns more than half a circle two or more in its place. */
function corners(side: Side): number[] {
  const { from, arc } = side;
  if (arc === undefined) return [mm(from.x), mm(from.y), 0];
  const parts = Math.max(1, Math.ceil(Math.abs(arc.turn) / Math.PI - HAIR));
  const bend = turnOf(Math.tan(arc.turn / parts / 4));
  return Array.from({ length: parts }, (_, part) => {
    const { x, y } = part === 0 ? from : pointAlong(side, part / parts);
    return [mm(x), mm(y), bend];
  }).flat();
}

/** A half circle is one part, whatever its last digit. */
const HAIR = 1e-9;

export type MmBounds = readonly [number, number, number, number];

/** Left, bottom, right, top of what is a list of bounds; all nought of nothing. */
export function aroundAll(all: readonly MmBounds[]): MmBounds {
  const [first, ...rest] = all;
  return rest.reduce(
    ([left, bottom, right, top], one): MmBounds => [
      Math.min(left, one[0]),
      Math.min(bottom, one[1]),
      Math.max(right, one[2]),
      Math.max(top, one[3])
    ],
    first ?? [0, 0, 0, 0]
  );
}

export function mmBounds(bounds: {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}): MmBounds {
  return [mm(bounds.left), mm(bounds.bottom), mm(bounds.right), mm(bounds.top)];
}

export function mmPoint({ x, y }: Point): MmBounds {
  return [mm(x), mm(y), mm(x), mm(y)];
}
