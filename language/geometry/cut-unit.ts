import type { Convex } from './convex.ts';
import { type Path, pathsArea } from './path-clip.ts';
import { isNoWiderThan, type Piece, piecesOf } from './pieces.ts';

/**
 * In metres: what a saw takes anyway. A unit the region misses by no more than this along its sides is laid whole, and
 * a piece no wider than this is not laid.
 */
export const CUTTING_TOLERANCE = 0.0005;

/** In metres and square metres: rounding that must not turn a miss of just the tolerance into more than it. */
const ROUNDING = 1e-9;

/** What a region leaves of one unit. */
export interface UnitCut {
  /** Square metres of the region that the unit covers, shavings too narrow to be laid among them. */
  readonly area: number;
  readonly isWhole: boolean;
  /** What is laid of a unit that is not whole; none when only shavings are left. */
  readonly pieces: readonly Piece[];
}

/** Reads off paths clipped to a unit what is laid of it, the tolerance in metres. Undefined when the region misses it. */
export function cutOf(paths: readonly Path[], unit: Convex, tolerance: number): UnitCut | undefined {
  const area = pathsArea(paths);
  if (area <= ROUNDING * unit.area) return undefined;
  if (isWhole(paths, area, unit, tolerance)) return { area, isWhole: true, pieces: [] };
  const pieces = piecesOf(paths, unit).filter(piece => !isNoWiderThan(piece, tolerance + ROUNDING));
  return { area, isWhole: false, pieces };
}

function isWhole(paths: readonly Path[], area: number, unit: Convex, tolerance: number): boolean {
  const missing = unit.area - area;
  if (missing <= ROUNDING * unit.area) return true;
  if (missing > tolerance * unit.perimeter + ROUNDING) return false;
  // Not so much that nothing would be left of a small unit to look at.
  const core = unit.within(Math.min(tolerance + ROUNDING, unit.area / unit.perimeter / 2));
  return core.area - pathsArea(core.clip(paths)) <= ROUNDING * core.area;
}
