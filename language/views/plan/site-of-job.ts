import type { Job } from '../../job/job.ts';
import type { JobNumbers } from '../../quantities/contract.ts';
import { heightsFrom } from './heights-from.ts';
import { fallsOf, levelsOfJob, pointsOfJob } from './levels-of-job.ts';
import type { PlanSite, PlanThing, ThingPart } from './plan-site.ts';
import { thingsOfJob } from './things-of-job.ts';
import { isInView, sidesInView, viewOf } from './view.ts';
import type { Bounds } from '../../geometry/bounds.ts';
import type { Loop } from '../../geometry/index.ts';

/** What the plan of a job shows besides its areas and units: what is in view of them, and of outlines shown besides. */
export function siteOfJob(job: Job, numbers: Pick<JobNumbers, 'quantities'>, besides: readonly Loop[]): PlanSite {
  const view = viewOf([...job.areas.map(({ outline }) => outline), ...besides]);
  const { datum, system } = job;
  const levels = datum === undefined ? [] : levelsOfJob(job, datum, numbers);
  if (view === undefined) return { points: [], falls: [], things: [], levels };
  const points = pointsOfJob(job, view);
  return {
    ...(datum === undefined || levels.length === 0 ? {} : { heights: heightsFrom(datum, system) }),
    points,
    falls: job.areas.flatMap(area => fallsOf(area, system)),
    things: thingsOfJob(job, numbers.quantities).flatMap(thing => thingInView(thing, view)),
    levels
  };
}

/** Lines are cut where the plan ends; what lies outside of it is left to the text. */
function thingInView(thing: PlanThing, view: Bounds): PlanThing[] {
  const parts = thing.parts.flatMap((part): ThingPart[] => {
    if ('loop' in part) return part.loop.some(({ from }) => isInView(from, view)) ? [part] : [];
    const sides = sidesInView(part.sides, view);
    return sides.length === 0 ? [] : [{ ...part, sides }];
  });
  const dots = thing.dots.filter(dot => isInView(dot, view));
  const { labelled } = thing;
  const [along] = 'along' in labelled ? sidesInView([labelled.along], view) : [];
  return [{ ...thing, parts, dots, ...(along === undefined ? {} : { labelled: { along } }) }];
}
