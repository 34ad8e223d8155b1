import { columnsOf, coursesOf, cutToColumns, cutToRows } from './courses.ts';
import { inFrame, isLayable, shiftOf, type UnitGrid } from './grid-frame.ts';
import { perimeterOf, regionArea } from './outline.ts';
import { filling, type Path, pathOf, pathsArea } from './path-clip.ts';
import { isNoWiderThan, piecesOf } from './pieces.ts';
import type { Region } from './shapes.ts';

/**
 * In metres: what a saw takes anyway. A unit the region misses by no more than this along its sides is laid whole, and
 * a piece no wider than this is not laid.
 */
export const CUTTING_TOLERANCE = 0.0005;

/** The most units laid out one by one: some tenths of a second of work. Beyond it a job is figured by area. */
export const MOST_UNITS = 300_000;

/** In metres and square metres: rounding that must not turn a miss of just the tolerance into more than it. */
const ROUNDING = 1e-9;

/** What laying a region takes. */
export interface LaidUnits {
  readonly whole: number;
  /** Units cut; one unit may leave several pieces. */
  readonly cut: number;
  /** Units the clip was really run on: a counter of work that grows with the border, not with the area. */
  readonly clipped: number;
  /** Square metres of the region that units cover, whole, cut and shavings, without the joints. */
  readonly unitArea: number;
  /** Square metres of the smallest piece cut. */
  readonly smallestPieceArea?: number;
}

/** A region of more units than are laid one by one, and about how many. */
export interface TooManyUnits {
  readonly tooMany: number;
}

/** About how many units of a grid meet a region: the mean over all places and turns, exact when it is convex. */
export function unitsAbout(region: Region, { length, width, joint }: UnitGrid): number {
  const along = length + joint;
  const across = width + joint;
  const border = [region.outer, ...region.holes].reduce((sum, loop) => sum + perimeterOf(loop), 0);
  return Math.ceil(1 + (regionArea(region) + (border * (along + across)) / Math.PI) / (along * across));
}

/**
 * Lays a grid of units over a region and counts them. Yields after each course, so that a caller can abandon it. The
 * tolerance is in metres. A grid or region that holds no area, or no numbers, takes no units.
 */
export function* layUnits(
  region: Region,
  grid: UnitGrid,
  tolerance = CUTTING_TOLERANCE
): Generator<void, LaidUnits | TooManyUnits> {
  const about = unitsAbout(region, grid);
  if (!isLayable(grid) || !Number.isFinite(about)) return { whole: 0, cut: 0, clipped: 0, unitArea: 0 };
  if (about > MOST_UNITS) return { tooMany: about };

  const { length, width, joint } = grid;
  let whole = 0;
  let cut = 0;
  let clipped = 0;
  let unitArea = 0;
  let smallest = Infinity;

  const layPart = (paths: readonly Path[], left: number, bottom: number): void => {
    clipped++;
    const unit = { left, right: left + length, bottom, top: bottom + width };
    const inUnit = joint > 0 ? cutToColumns(paths, unit.left, unit.right) : paths;
    if (filling(inUnit, unit) === 'empty') return;
    const area = pathsArea(inUnit);
    if (area <= ROUNDING * length * width) return;
    unitArea += area;
    if (isWhole(inUnit, area, left, bottom)) {
      whole++;
      return;
    }
    const pieces = piecesOf(inUnit, unit).filter(piece => !isNoWiderThan(piece, tolerance + ROUNDING));
    if (pieces.length > 0) cut++;
    for (const piece of pieces) smallest = Math.min(smallest, piece.area);
  };

  const isWhole = (paths: readonly Path[], area: number, left: number, bottom: number): boolean => {
    const missing = length * width - area;
    if (missing <= ROUNDING * length * width) return true;
    if (missing > tolerance * 2 * (length + width) + ROUNDING) return false;
    // Not more than a quarter, so that there is always something left of a small unit to look at.
    const margin = Math.min(tolerance + ROUNDING, length / 4, width / 4);
    const columns = cutToColumns(paths, left + margin, left + length - margin);
    const core = cutToRows(columns, bottom + margin, bottom + width - margin);
    const coreArea = (length - 2 * margin) * (width - 2 * margin);
    return coreArea - pathsArea(core) <= ROUNDING * coreArea;
  };

  const paths = inFrame(region, grid).map(pathOf);
  for (const course of coursesOf(paths, width + joint, 0)) {
    const top = course.bottom + width;
    const inUnits = joint > 0 ? { ...course, top, paths: cutToRows(course.paths, course.bottom, top) } : course;
    columnsOf(inUnits, length + joint, shiftOf(course.number, grid), {
      full: count => {
        whole += count;
        unitArea += count * length * width;
      },
      partial: (left, inCell) => layPart(inCell, left, course.bottom)
    });
    yield;
  }
  const laid = { whole, cut, clipped, unitArea };
  return smallest < Infinity ? { ...laid, smallestPieceArea: smallest } : laid;
}
