import type { UnitGrid } from './grid-frame.ts';
import { perimeterOf, regionArea } from './outline.ts';
import type { Region } from './shapes.ts';

/**
 * In metres: what a saw takes anyway. A unit the region misses by no more than this along its sides is laid whole, and
 * a piece no wider than this is not laid.
 */
export const CUTTING_TOLERANCE = 0.0005;

/** The most units laid out one by one: some tenths of a second of work. Beyond it a job is figured by area. */
export const MOST_UNITS = 300_000;

/** About how many units of a grid meet a region: the mean over all places and turns, exact when it is convex. */
export function unitsAbout(region: Region, { length, width, joint }: UnitGrid): number {
  const along = length + joint;
  const across = width + joint;
  const border = [region.outer, ...region.holes].reduce((sum, loop) => sum + perimeterOf(loop), 0);
  return Math.ceil(1 + (regionArea(region) + (border * (along + across)) / Math.PI) / (along * across));
}
