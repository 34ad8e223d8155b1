import { sharedLength } from './overlap.ts';
import { distance, radiusOf } from './outline.ts';
import type { Side } from './shapes.ts';

/** Metres: arcs whose centres and radii agree to so much run on top of each other. A joint's worth of slack on site. */
const SAME_ARC = 1e-3;

const FULL_TURN = 2 * Math.PI;

/** Metres along which sides run on top of one side, straight on straight and arc on arc, whichever way each runs. */
export function sharedRun(side: Side, others: readonly Side[]): number {
  const { arc } = side;
  if (arc === undefined) return sharedLength([side], others);
  const radius = radiusOf(side, arc);
  const stretches = others
    .filter(other => other.arc !== undefined && distance(other.arc.centre, arc.centre) <= SAME_ARC)
    .filter(other => Math.abs(radiusOf(other, other.arc!) - radius) <= SAME_ARC)
    .flatMap(other => commonAngles(anglesOf(side), anglesOf(other)))
    .sort(([one], [other]) => one - other);
  let covered = 0;
  let reached = -Infinity;
  for (const [from, to] of stretches) {
    covered += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return covered * radius;
}

type Angles = readonly [from: number, to: number];

/** Anticlockwise, from less than to. */
function anglesOf({ from, arc }: Side): Angles {
  const { centre, turn } = arc!;
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return turn > 0 ? [start, start + turn] : [start + turn, start];
}

/** What two stretches share, the other moved by full turns until it lies there. */
function commonAngles([from, to]: Angles, [otherFrom, otherTo]: Angles): Angles[] {
  return [-2, -1, 0, 1, 2].flatMap((turns): Angles[] => {
    const [low, high] = [Math.max(from, otherFrom + turns * FULL_TURN), Math.min(to, otherTo + turns * FULL_TURN)];
    return high > low ? [[low, high]] : [];
  });
}
