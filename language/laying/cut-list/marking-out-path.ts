import { radiusOf, type Point, type Side } from '../../geometry/index.ts';
import type { Keep, Leg, Offset, SawPath } from './marking-out.ts';
import { bowOf, type SawLine } from './saw-lines.ts';

/** Any saw line, corner by corner. */
export function pathMarking({ sides, closed }: SawLine, keep: Keep): SawPath {
  return { kind: 'saw-path', start: offsetOf(sides[0]!.from), legs: sides.map(legOf), closed, keep };
}

function legOf(side: Side): Leg {
  const to = offsetOf(side.to);
  if (!side.arc) return to;
  const bows = side.arc.turn > 0 ? 'out' : 'in';
  return { ...to, arc: { radius: radiusOf(side, side.arc), bow: bowOf(side), bows } };
}

function offsetOf({ x, y }: Point): Offset {
  return { along: x, across: y };
}
