import { inside, type Loop, type Point, reversedLoop, signedAreaOf } from '../geometry/index.ts';
import { zOf } from '../job/heights.ts';
import type { Area, Site } from '../job/job.ts';
import { type GroundFault, type GroundSurface, groundThrough } from '../levels/ground.ts';
import { heightAt, type Surface } from '../levels/surface.ts';

/** What lies at one place of an area, as heights above the datum, m. */
export interface HeightsThere {
  readonly finish: number;
  /** Today's ground; level with the finish where nothing is known of it. */
  readonly ground: number;
  /** Underside of the lowest layer. */
  readonly underside: number;
  /** What is dug: at least the topsoil, and soft spots deeper. */
  readonly digBottom: number;
}

/** Heights all over an area whose finish is known. */
export interface AreaHeights {
  readonly surface: Surface;
  /** Absent where nothing is known of the ground. */
  readonly ground?: GroundSurface;
  /** The ground's heights were taken at points. */
  readonly isMeasured: boolean;
  /** From the finish down to the underside of the lowest layer, m. */
  readonly depth: number;
  /** Topsoil that is stripped, m. */
  readonly strip: number;
  /** One depth of dig all over. */
  readonly isEven: boolean;
  at(point: Point): HeightsThere;
}

type Heighted = Pick<Area, 'site' | 'finish' | 'layers' | 'paving' | 'softSpots'>;

/** The heights of an area; undefined where its finish is not said. */
export function areaHeights(area: Heighted): AreaHeights | undefined {
  const surface = area.finish?.surface;
  if (surface === undefined) return undefined;
  const ground = groundOf(area.site);
  const depth = depthOf(area);
  const strip = area.site.topsoil?.value ?? 0;
  const isEven = area.finish?.level !== undefined && area.site.heights?.ground[0] === undefined;
  return {
    surface,
    ...(ground === undefined ? {} : { ground }),
    isMeasured: area.site.heights?.ground[0] !== undefined,
    depth,
    strip,
    isEven,
    at: point => {
      const finish = heightAt(surface, point);
      const today = ground?.heightAt(point) ?? finish;
      const underside = finish - depth;
      const deeper = area.softSpots.filter(spot => inside(spot.outline, point)).map(spot => spot.deeper.value);
      const digBottom = Math.min(underside, today - strip) - Math.max(0, ...deeper);
      return { finish, ground: today, underside, digBottom };
    }
  };
}

/** From the finish down to the underside of the lowest layer, m. */
export function depthOf({ paving, layers }: Pick<Area, 'paving' | 'layers'>): number {
  const unit = paving?.units[0].thickness.value ?? 0;
  return layers.reduce((depth, layer) => depth + layer.thickness.value, unit);
}

/** Today's ground: through the heights taken at points, else level as the site says; undefined where neither is said. */
export function groundOf(site: Site): GroundSurface | undefined {
  const ground = measuredGround(site);
  if (ground !== undefined && !isFault(ground)) return ground;
  if (site.ground === undefined) return undefined;
  const level = groundThrough([{ x: 0, y: 0, z: zOf(site.ground) }]);
  return isFault(level) ? undefined : saidAllOver(level);
}

/** The site says that the ground lies so all over: no place is beyond what is known. */
function saidAllOver(level: GroundSurface): GroundSurface {
  return {
    ...level,
    beyond: () => false,
    partsWithin: box => level.partsWithin(box).map(part => ({ ...part, beyond: false }))
  };
}

/** Through the heights taken at points, where any were. */
export function measuredGround({ heights }: Pick<Site, 'heights'>): GroundSurface | GroundFault | undefined {
  if (heights === undefined || heights.ground.length === 0) return undefined;
  const spots = heights.ground.map(({ at, z }) => ({ x: at.x, y: at.y, z }));
  const indexOf = (point: Point): number => heights.ground.findIndex(({ at }) => at.x === point.x && at.y === point.y);
  const lines = heights.breakLines.map(line => line.map(indexOf)).filter(line => !line.includes(-1));
  return groundThrough(spots, lines);
}

export function isFault(ground: GroundSurface | GroundFault): ground is GroundFault {
  return ground.kind !== 'ground';
}

/** What is dug: out to the edge of the base, less what is kept out. Outer loops run anticlockwise, holes clockwise. */
export function dugRegion(baseLoops: readonly Loop[], keptOut: readonly Loop[]): readonly Loop[] {
  const holes = keptOut.map(loop => (signedAreaOf(loop) > 0 ? reversedLoop(loop) : loop));
  return [...baseLoops, ...holes];
}
