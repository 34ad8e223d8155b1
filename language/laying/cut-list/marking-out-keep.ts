import { distance, distanceToSide, type Point } from '../../geometry/index.ts';
import type { Keep } from './marking-out.ts';
import { type SawLine, WITHIN } from './saw-lines.ts';
import type { UnitCorner, UnitOutline, UnitSide } from './unit-shape.ts';

/** Which part a saw line leaves. Its piece lies on the left, so a line from side to side leaves what follows its end. */
export function keepOfLine({ sides, closed }: SawLine, unit: UnitOutline): Keep {
  if (closed) return 'inside';
  const start = rimPlace(sides[0]!.from, unit);
  const end = rimPlace(sides[sides.length - 1]!.to, unit);
  const count = unit.sides.length;
  const after = (place: number): number => (((place - end) % count) + count) % count;
  const kept = unit.sides
    .map((side, index) => ({ side, after: after(index), margin: WITHIN / lengthOf(side) }))
    .filter(({ after: place, margin }) => place > margin && place < after(start) - margin)
    .map(({ side }) => side.from);
  return keepOf(kept, unit) ?? 'between the marks';
}

/** A part of a unit by the corners that it keeps: a whole side of it, or its only corner. */
export function keepOf(kept: readonly UnitCorner[], unit: UnitOutline): Keep | undefined {
  const whole = unit.sides.filter(side => kept.includes(side.from) && kept.includes(side.to));
  const side = whole[Math.floor(whole.length / 2)];
  if (side) return { side: side.name };
  return kept[0] && { corner: kept[0].name };
}

/** How far round the unit a point on its rim lies: whole numbers are corners. */
function rimPlace(point: Point, { sides }: UnitOutline): number {
  const off = sides.map(side => distanceToSide(side, point));
  const index = off.indexOf(Math.min(...off));
  const side = sides[index]!;
  return index + distance(side.from, point) / lengthOf(side);
}

function lengthOf(side: UnitSide): number {
  return distance(side.from, side.to);
}
