import type { Bounds } from '../../../geometry/bounds.ts';
import type { Point } from '../../../geometry/index.ts';
import type { PlanInput } from '../plan-input.ts';
import { isInView, viewOf } from '../view.ts';

/** Whether a plan would show places: of what it leaves out for lying too far off nothing is known. */
export function isSeen(places: readonly Point[], plan: PlanInput | undefined): boolean {
  const view = plan && viewOfPlan(plan);
  return view === undefined || places.some(place => isInView(place, view));
}

export function viewOfPlan({ areas }: PlanInput): Bounds | undefined {
  return viewOf(areas.map(({ outline }) => outline));
}
