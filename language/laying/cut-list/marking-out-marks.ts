import { distance, distanceToSide, type Point } from '../../geometry/index.ts';
import type { Mark } from './marking-out.ts';
import { WITHIN } from './saw-lines.ts';
import type { UnitOutline, UnitSide } from './unit-shape.ts';

/** Marks on sides that run from left to right are measured from the left, on others from the near corner. */
export function markOn(side: UnitSide, point: Point): Mark {
  const fromStart = Math.abs(side.to.x - side.from.x) > WITHIN ? side.from.x < side.to.x : side.from.y < side.to.y;
  return markFrom(side, fromStart ? 'from' : 'to', point);
}

/** A mark measured from an end of a side. */
export function markFrom(side: UnitSide, end: 'from' | 'to', point: Point): Mark {
  return { side: side.name, from: side[end].name, at: distance(side[end], point) };
}

/** Where a point on the rim of a unit is marked: at a corner that it is no further from than the saw is exact. */
export function markAt(point: Point, unit: UnitOutline): Mark | undefined {
  const corner = unit.sides.find(({ from }) => distance(from, point) <= WITHIN);
  if (corner) return { side: corner.name, from: corner.from.name, at: 0 };
  const side = unit.sides.find(each => distanceToSide(each, point) <= WITHIN);
  return side && markOn(side, point);
}
