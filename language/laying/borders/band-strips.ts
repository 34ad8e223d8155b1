import { boundsOf } from '../../geometry/bounds.ts';
import { contactsBetween } from '../../geometry/contacts.ts';
import { shareAlong } from '../../geometry/containment.ts';
import { onPlan, seenFrom } from '../../geometry/frame.ts';
import { type Loop, type Region, rectangleLoop, type Side } from '../../geometry/index.ts';
import { crossedOddly, runsOf } from '../../geometry/level-line.ts';
import { intersectionOf } from '../../geometry/loop-clip.ts';
import { SAME_POINT } from '../../geometry/moved-side.ts';
import { pointAlong } from '../../geometry/outline.ts';
import { loopsOf, regionsOf } from '../../geometry/regions-of.ts';
import { type BandCourse, sizeOf } from './border.ts';

/** One piece of a band: between two edges of the field, or what is kept out of it. */
export interface BandStrip {
  /** The edge of its units, their ground on its left. */
  readonly edge: Side;
  /** The piece with its joints. */
  readonly all: readonly Loop[];
  readonly units: readonly Loop[];
  readonly joints: readonly Loop[];
}

/** In metres: a band is prolonged by this beyond all of the field, and cut off where it leaves it. */
const BEYOND = 1;

/** The pieces of a band that lie on its line, with the usual joint on either side. */
export function bandStrips(field: readonly Loop[], band: BandCourse): BandStrip[] {
  const { from, to } = band;
  const { across } = sizeOf(band);
  const joint = band.joint.usual;
  const frame = { ...from, direction: Math.atan2(to.y - from.y, to.x - from.x) };
  const { left, right } = boundsOf(field.flatMap(loop => seenFrom(frame, loop)));
  if (!(right > left)) return [];
  const strip = (bottom: number, depth: number): Loop =>
    rectangleLoop(right - left + 2 * BEYOND, depth, { x: left - BEYOND, y: bottom }, 0).map(side => ({
      from: onPlan(frame, { ...side.from, direction: 0 }),
      to: onPlan(frame, { ...side.to, direction: 0 })
    }));
  const half = across / 2;
  const units = strip(-half, across);
  const [edge] = units;
  if (!edge) return [];
  const joints = joint > 0 ? [strip(-half - joint, joint), strip(half, joint)] : [];
  const pieces = regionsOf(intersectionOf([strip(-half - joint, across + 2 * joint)], field));
  return pieces
    .filter(piece => liesOn(piece, { from, to }))
    .map(piece => {
      const all = loopsOf(piece);
      return {
        edge,
        all,
        units: intersectionOf([units], all),
        joints: joints.flatMap(loop => intersectionOf([loop], all))
      };
    });
}

/** Whether some of a line lies within a region. */
function liesOn(region: Region, line: Side): boolean {
  const loops = loopsOf(region);
  const runs = runsOf(loops);
  const meets = loops.flat().flatMap(side => contactsBetween(line, side, SAME_POINT));
  const shares = [0, ...meets.map(point => shareAlong(line, point)), 1].sort((a, b) => a - b);
  return shares.slice(1).some((end, place) => crossedOddly(runs, pointAlong(line, ((shares[place] ?? 0) + end) / 2)));
}
