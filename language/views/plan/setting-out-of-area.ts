import { distance, type Point, radiusOf } from '../../geometry/index.ts';
import type { Area } from '../../job/job.ts';
import type { PlanSettingOut } from './plan-input.ts';

/** m: a corner nearer to a named point lies on it. */
const SAME_PLACE = 0.001;

/** Corners and curves of an area where its named points do not tell them. */
export function settingOutOf(
  { outline, edges }: Area,
  points: readonly (Point & { readonly name: string })[]
): PlanSettingOut | undefined {
  const names = outline.map(({ from }) => points.find(point => distance(point, from) <= SAME_PLACE)?.name);
  const hasCurves = outline.some(({ arc }) => arc !== undefined);
  if (!hasCurves && !names.includes(undefined)) return undefined;
  const nameAt = (index: number): string => names[index] ?? `corner ${index + 1}`;
  return {
    corners: outline.map(({ from }, index) => ({ name: nameAt(index), at: from })),
    curves: outline.flatMap((side, index) => {
      if (side.arc === undefined) return [];
      const next = (index + 1) % outline.length;
      const name = edges[index]?.name ?? `side ${index + 1}`;
      const radius = radiusOf(side, side.arc);
      return [{ side: name, centre: side.arc.centre, radius, from: nameAt(index), to: nameAt(next) }];
    })
  };
}
