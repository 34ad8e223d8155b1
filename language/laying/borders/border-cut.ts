import { areaOf, CUTTING_TOLERANCE, type Loop, rectangleLoop, signedAreaOf } from '../../geometry/index.ts';
import { intersectionOf } from '../../geometry/loop-clip.ts';
import { pathOf } from '../../geometry/path-clip.ts';
import { isNoWiderThan } from '../../geometry/pieces.ts';
import { regionsOf } from '../../geometry/regions-of.ts';
import type { Piece } from '../laid.ts';

/** What an area leaves of a unit. */
export interface Cut {
  /** Square metres of the unit that lie within the area. */
  readonly area: number;
  /** Laid as it is: what it lacks is within the cutting tolerance. */
  readonly whole: boolean;
  /** Pieces to be laid, largest first; a shaving is none. */
  readonly pieces: readonly Piece[];
}

/** In shares of a unit, and in metres: rounding that must not turn a miss of just the tolerance into more than it. */
const ROUNDING = 1e-9;

/** What an area leaves of a unit, the area's outlines seen in the unit's own frame; its size in metres. */
export function cutTo(area: readonly Loop[], length: number, width: number): Cut {
  const loops = intersectionOf([unitLoop(length, width, 0)], area);
  const covered = sumOf(loops);
  if (covered <= ROUNDING * length * width) return { area: 0, whole: false, pieces: [] };
  if (isWhole(area, covered, length, width)) return { area: covered, whole: true, pieces: [] };
  const pieces = regionsOf(loops)
    .map(({ outer, holes }) => ({ outline: outer, holes, area: sumOf([outer, ...holes]) }))
    .filter(piece => !isShaving(piece))
    .sort((a, b) => b.area - a.area);
  return { area: covered, whole: false, pieces };
}

function unitLoop(length: number, width: number, margin: number): Loop {
  return rectangleLoop(length - 2 * margin, width - 2 * margin, { x: margin, y: margin }, 0);
}

function isWhole(area: readonly Loop[], covered: number, length: number, width: number): boolean {
  const missing = length * width - covered;
  if (missing <= ROUNDING * length * width) return true;
  if (missing > CUTTING_TOLERANCE * 2 * (length + width) + ROUNDING) return false;
  // Not more than a quarter, so that there is always something left of a small unit to look at.
  const core = unitLoop(length, width, Math.min(CUTTING_TOLERANCE + ROUNDING, length / 4, width / 4));
  return areaOf(core) - sumOf(intersectionOf([core], area)) <= ROUNDING * areaOf(core);
}

function isShaving({ outline, area }: Piece): boolean {
  return isNoWiderThan({ rim: pathOf(outline), holes: [], area }, CUTTING_TOLERANCE + ROUNDING);
}

/** Square metres within outlines, holes clockwise. */
export function sumOf(loops: readonly Loop[]): number {
  return loops.reduce((sum, loop) => sum + signedAreaOf(loop), 0);
}
