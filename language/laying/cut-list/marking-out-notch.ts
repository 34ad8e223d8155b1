import { distance, distanceToSide, type Point, type Side } from '../../geometry/index.ts';
import type { CornerNotch, SideNotch } from './marking-out.ts';
import { markOn } from './marking-out-marks.ts';
import { leftOf } from './marking-out-straight.ts';
import { WITHIN } from './saw-lines.ts';
import type { UnitOutline } from './unit-shape.ts';

/** A saw line that leaves a square notch out of a corner or a side. Undefined when it is anything else. */
export function notchMarking(sides: readonly Side[], unit: UnitOutline): CornerNotch | SideNotch | undefined {
  const points = [...sides.map(side => side.from), sides[sides.length - 1]!.to];
  if (!sides.every(isSquare) || !turnsInwardOnly(sides)) return undefined;
  return cornerNotch(points, unit) ?? sideNotch(points, unit);
}

/** Along the length or square to it. */
function isSquare({ from, to, arc }: Side): boolean {
  return !arc && (Math.abs(to.x - from.x) <= WITHIN || Math.abs(to.y - from.y) <= WITHIN);
}

function turnsInwardOnly(sides: readonly Side[]): boolean {
  return sides.slice(1).every((side, index) => leftOf(sides[index]!, side.to) < 0);
}

function cornerNotch([start, inner, end, ...more]: readonly Point[], unit: UnitOutline): CornerNotch | undefined {
  if (!start || !inner || !end || more.length > 0) return undefined;
  const lost = { x: start.x + end.x - inner.x, y: start.y + end.y - inner.y };
  const corner = unit.corners.find(each => distance(each, lost) <= 2 * WITHIN);
  if (!corner) return undefined;
  const along = Math.abs(corner.x - inner.x);
  return { kind: 'corner-notch', corner: corner.name, along, across: Math.abs(corner.y - inner.y) };
}

function sideNotch([start, ...rest]: readonly Point[], unit: UnitOutline): SideNotch | undefined {
  const [inner, next, end, ...more] = rest;
  if (!start || !inner || !next || !end || more.length > 0) return undefined;
  const side = unit.sides.find(each => [start, end].every(point => distanceToSide(each, point) <= WITHIN));
  if (!side) return undefined;
  const [first, second] = [markOn(side, start), markOn(side, end)];
  return {
    kind: 'side-notch',
    side: side.name,
    start: first.at < second.at ? first : second,
    width: Math.abs(second.at - first.at),
    depth: (leftOf(side, inner) + leftOf(side, next)) / 2
  };
}
