import type { Bounds } from '../../../geometry/bounds.ts';
import type { Point } from '../../../geometry/index.ts';
import type { PlanInput } from '../plan-input.ts';
import { isInView, viewOf } from '../view.ts';

/**
 * What becomes of a thing that one plan has and the other lacks: nothing is told where the other leaves it out for lying
 * too far off, and nothing is known where the other has an error in it.
 */
export function fateOfLone(
  places: readonly Point[],
  { isOld, other }: { readonly isOld: boolean; readonly other: PlanInput | undefined }
): 'comes' | 'goes' | 'unknown' | undefined {
  const fate = isOld ? 'goes' : 'comes';
  if (other === undefined) return fate;
  if (other.missing.length > 0) return 'unknown';
  const view = viewOfPlan(other);
  return view !== undefined && places.some(place => isInView(place, view)) ? fate : undefined;
}

export function viewOfPlan({ areas }: PlanInput): Bounds | undefined {
  return viewOf(areas.map(({ outline }) => outline));
}
