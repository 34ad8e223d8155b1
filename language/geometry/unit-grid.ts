import type { UnitGrid } from './grid-frame.ts';
import { perimeterOf, regionArea } from './outline.ts';
import type { Region } from './shapes.ts';

/** The most units laid out one by one: some tenths of a second of work. Beyond it a job is figured by area. */
export const MOST_UNITS = 300_000;

/** About how many units of a grid meet a region: the mean over all places and turns, exact when it is convex. */
export function unitsAbout(region: Region, { length, width, joint }: UnitGrid): number {
  const along = length + joint;
  const across = width + joint;
  const border = [region.outer, ...region.holes].reduce((sum, loop) => sum + perimeterOf(loop), 0);
  return Math.ceil(1 + (regionArea(region) + (border * (along + across)) / Math.PI) / (along * across));
}
