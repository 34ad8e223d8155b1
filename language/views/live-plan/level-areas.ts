import { heightAt } from '../../levels/surface.ts';
import type { Job, Key } from '../../job/job.ts';
import { levelStyleOf, printLevelWithMark } from '../../measures/print-level.ts';
import type { PlanFall } from '../plan/plan-site.ts';

/** Stands before a height: it tells it from a length. */
export const LEVEL_MARK = '▼';

/** Areas whose heights all print alike and that fall nowhere, each with what is told of it once in place of its corners. */
export function levelAreas({ areas, datum, system }: Job, falls: readonly PlanFall[]): Map<Key, string> {
  if (datum === undefined) return new Map();
  const falling = new Set(falls.map(({ area }) => area));
  return new Map(
    areas.flatMap(({ key, finish, outline }): [Key, string][] => {
      const surface = finish?.surface;
      if (surface === undefined || falling.has(key)) return [];
      const [height, ...others] = new Set(
        outline.map(({ from }) => printLevelWithMark(heightAt(surface, from), datum, levelStyleOf(system)))
      );
      if (height === undefined || others.length > 0) return [];
      return [[key, `${height.startsWith('level') ? height : `level at ${height}`}, no fall`]];
    })
  );
}
