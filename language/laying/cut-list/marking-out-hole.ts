import { boundsOf, cornerLoop, distanceToSide, radiusOf, type Side } from '../../geometry/index.ts';
import type { Circle, Opening } from './marking-out.ts';
import { WITHIN } from './saw-lines.ts';

/** In radians: a turn this near to a full one is a circle. */
const FULL = 1e-6;

/** A line that is one full circle. */
export function circleMarking([side, ...more]: readonly Side[]): Circle | undefined {
  if (!side?.arc || more.length > 0 || Math.abs(side.arc.turn) < 2 * Math.PI - FULL) return undefined;
  const { centre, turn } = side.arc;
  const keep = turn > 0 ? 'inside' : 'outside';
  return { kind: 'circle', diameter: 2 * radiusOf(side, side.arc), along: centre.x, across: centre.y, keep };
}

/** A hole whose sides run along the length and square to it. */
export function openingMarking(sides: readonly Side[]): Opening | undefined {
  const { left, right, bottom, top } = boundsOf(sides);
  const box = cornerLoop([
    { x: left, y: bottom },
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom }
  ]);
  const along = (side: Side): boolean =>
    !side.arc && box.some(edge => [side.from, side.to].every(point => distanceToSide(edge, point) <= WITHIN));
  if (sides.length !== 4 || !sides.every(along)) return undefined;
  return { kind: 'opening', along: left, across: bottom, length: right - left, width: top - bottom };
}
