import { boxShape } from './convex.ts';
import { columnsOf, coursesOf, cutToRows } from './courses.ts';
import { CUTTING_TOLERANCE, cutOf } from './cut-unit.ts';
import { inFrame, isLayable, shiftOf, type UnitGrid } from './grid-frame.ts';
import { perimeterOf, regionArea } from './outline.ts';
import { type Path, pathOf } from './path-clip.ts';
import type { Region } from './shapes.ts';

/** The most units laid out one by one: some tenths of a second of work. Beyond it a job is figured by area. */
export const MOST_UNITS = 300_000;

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
    const unit = boxShape({ left, right: left + length, bottom, top: bottom + width });
    const found = cutOf(unit.clip(paths), unit, tolerance);
    if (!found) return;
    unitArea += found.area;
    if (found.isWhole) whole++;
    if (found.pieces.length > 0) cut++;
    for (const piece of found.pieces) smallest = Math.min(smallest, piece.area);
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
