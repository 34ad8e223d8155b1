import {
  type Loop,
  type Point,
  pointAlong,
  reversedLoop,
  type Side,
  sideLength,
  signedAreaOf
} from '../geometry/index.ts';
import type { Area } from '../job/job.ts';
import { extremesBetween } from '../levels/extremes.ts';
import { heightAt } from '../levels/surface.ts';
import { lookUpWithin, stretchesWithin } from '../levels/within.ts';
import { type AreaHeights, areaHeights, dugRegion } from './area-heights.ts';
import type { LayersNumbers } from './layers-stage.ts';

/** An area with what is dug for it, as what stands beside the areas looks at it. */
export interface SiteArea {
  readonly area: Area;
  readonly layers: Pick<LayersNumbers, 'baseLoops' | 'layers' | 'softSpots' | 'dig'>;
}

/** A height, where it is, and the area it is of. */
export interface HighestFinish {
  readonly z: number;
  readonly at: Point;
  readonly area: Area;
}

/** The outline of an area as the maths of levels takes it: anticlockwise. */
export function pavedRegion({ outline }: Pick<Area, 'outline'>): readonly Loop[] {
  return [signedAreaOf(outline) < 0 ? reversedLoop(outline) : outline];
}

/** What is dug for an area: out to the edge of its base, without what is kept out. */
export function digRegion({ area, layers }: SiteArea): readonly Loop[] {
  return dugRegion(
    layers.baseLoops,
    area.keptOut.map(({ outline }) => outline)
  );
}

/** The highest finish along a side, over all areas that it lies on. */
export function highestFinishAlong(side: Side, areas: readonly SiteArea[]): HighestFinish | undefined {
  let highest: HighestFinish | undefined;
  for (const { area } of areas) {
    const surface = area.finish?.surface;
    if (surface === undefined) continue;
    const height = (share: number): number => heightAt(surface, pointAlong(side, share));
    for (const { from, to } of stretchesIn(side, pavedRegion(area))) {
      const { at, value } = extremesBetween(height, from, to).most;
      if (highest === undefined || value > highest.z) highest = { z: value, at: pointAlong(side, at), area };
    }
  }
  return highest;
}

/** Shares of a side at which it lies in a region; none of no length. */
export function stretchesIn(
  side: Side,
  region: readonly Loop[]
): readonly { readonly from: number; readonly to: number }[] {
  if (!(sideLength(side) > 0)) return [];
  return stretchesWithin(side, region.flat(), lookUpWithin(region)).filter(({ from, to }) => to > from);
}

/** The heights of those areas whose finish is known. */
export function heightsOf(areas: readonly SiteArea[]): readonly (SiteArea & { readonly heights: AreaHeights })[] {
  return areas.flatMap(one => {
    const heights = areaHeights(one.area);
    return heights === undefined ? [] : [{ ...one, heights }];
  });
}

/** Bottom of the dig without soft spots. */
export function digBottomAt(heights: AreaHeights, at: Point): number {
  const { underside, ground } = heights.at(at);
  return Math.min(underside, ground - heights.strip);
}
