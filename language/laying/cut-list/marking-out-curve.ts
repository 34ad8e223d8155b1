import { distance, radiusOf } from '../../geometry/index.ts';
import type { Curve, Height } from './marking-out.ts';
import { keepOfLine } from './marking-out-keep.ts';
import { markAt } from './marking-out-marks.ts';
import { bowOf, type SawLine } from './saw-lines.ts';
import type { UnitOutline } from './unit-shape.ts';

/** The most between two heights marked off a chord, in metres (common practice: two inches). */
const BETWEEN_HEIGHTS = 0.0508;

/** A single arc from side to side. Undefined of straight lines, and of arcs of more than a half turn. */
export function curveMarking(line: SawLine, unit: UnitOutline): Curve | undefined {
  const [side, ...more] = line.sides;
  if (!side?.arc || more.length > 0 || Math.abs(side.arc.turn) > Math.PI) return undefined;
  const start = markAt(side.from, unit);
  const end = markAt(side.to, unit);
  if (!start || !end) return undefined;
  const radius = radiusOf(side, side.arc);
  const chord = distance(side.from, side.to);
  const bow = bowOf(side);
  const bows = side.arc.turn > 0 ? 'out' : 'in';
  return {
    kind: 'curve',
    marks: [start, end],
    radius,
    bow,
    bows,
    chord,
    heights: heightsOff(chord, radius, bow),
    keep: keepOfLine(line, unit)
  };
}

/** Evenly spread, an odd number of them, so that the middle one is the bow. */
function heightsOff(chord: number, radius: number, bow: number): Height[] {
  const parts = 2 * Math.ceil(chord / (2 * BETWEEN_HEIGHTS));
  return Array.from({ length: parts - 1 }, (_, index) => {
    const at = (chord * (index + 1)) / parts;
    const fromMiddle = at - chord / 2;
    // The sagitta to the middle less that to here, without taking one long length from another.
    const drop = (fromMiddle * fromMiddle) / (radius + Math.sqrt((radius - fromMiddle) * (radius + fromMiddle)));
    return { at, height: bow - drop };
  });
}
