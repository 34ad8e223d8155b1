import type { PlanInput } from '../plan-input.ts';
import { type AreaChange, areaChanges } from './area-changes.ts';
import { type EdgingChange, edgingChanges } from './edging-changes.ts';
import { type GroundChange, groundChange } from './ground-change.ts';
import { type MarkChange, markChanges } from './mark-changes.ts';
import { type PointChange, pointChanges } from './point-changes.ts';

/** What goes, comes and stays between two plans of a job. */
export interface PlanChanges {
  readonly areas: readonly AreaChange[];
  readonly ground: GroundChange;
  readonly edgings: readonly EdgingChange[];
  readonly marks: readonly MarkChange[];
  readonly points: readonly PointChange[];
  /** What can't be drawn, of either plan. */
  readonly notDrawn: readonly string[];
  /** What heights count from, where that is told otherwise. */
  readonly heightsFrom?: { readonly before: string; readonly after: string };
  readonly differs: boolean;
}

/** Between two plans of one job; of a job that is new or gone there is one of them. */
export function planChanges(before: PlanInput | undefined, after: PlanInput | undefined): PlanChanges {
  const areas = areaChanges(before, after);
  const ground = groundChange(areas);
  const edgings = edgingChanges(areas);
  const marks = markChanges(before, after, areas);
  const points = pointChanges(before, after);
  const heightsFrom = heightsTold(before, after);
  return {
    areas,
    ground,
    edgings,
    marks,
    points,
    notDrawn: [...notDrawn('before', before), ...notDrawn('after', after)],
    ...(heightsFrom === undefined ? {} : { heightsFrom }),
    differs:
      [...areas, ...marks, ...points].some(({ fate }) => fate !== 'stays') ||
      edgings.some(({ gone, come }) => gone.length + come.length > 0) ||
      heightsFrom !== undefined
  };
}

function notDrawn(when: string, plan: PlanInput | undefined): string[] {
  return (plan?.missing ?? []).map(text => `Not drawn as it is ${when}: ${text}.`);
}

function heightsTold(before: PlanInput | undefined, after: PlanInput | undefined): PlanChanges['heightsFrom'] {
  const [old, now] = [before?.site?.heights, after?.site?.heights];
  return old === undefined || now === undefined || old === now ? undefined : { before: old, after: now };
}
