import { middleOf, type Point, pointAlong, type Side } from '../../geometry/index.ts';
import type { Area, Job, Key } from '../../job/job.ts';

/** Where a handle lies, m; undefined where the job has no such thing, or knows no place of it. The start of an area: see its laying. */
export function handlePlace(job: Job, thing: Key): Point | undefined {
  const point = job.points.find(({ key }) => key === thing);
  if (point !== undefined) return { x: point.x, y: point.y };
  const corner = cornerOf(thing);
  if (corner !== undefined) return areaOf(job, thing)?.outline[corner]?.from;
  const side = arcOf(job, thing);
  if (side !== undefined) return pointAlong(side, 0.5);
  const outline = [
    ...job.boxes,
    ...job.drains,
    ...job.areas.flatMap(({ keptOut, insets }) => [...keptOut, ...insets])
  ].find(({ key }) => key === thing)?.outline;
  return outline && middleOf(outline);
}

/** The area that a handle of it belongs to. */
export function areaOf(job: Job, thing: Key): Area | undefined {
  const key = /^area:[^/]+/.exec(thing)?.[0];
  return job.areas.find(area => area.key === key);
}

/** The side that the handle of an arc bends. */
export function arcOf(job: Job, thing: Key): Side | undefined {
  const number = /\/side-(\d+)\/arc$/.exec(thing)?.[1];
  return number === undefined ? undefined : areaOf(job, thing)?.outline[Number(number) - 1];
}

function cornerOf(thing: Key): number | undefined {
  const number = /\/corner-(\d+)$/.exec(thing)?.[1];
  return number === undefined ? undefined : Number(number) - 1;
}
