import { expect } from 'vitest';
import type { Job } from '../../language/job/job.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { Schedule, Task } from '../../language/schedule/contract.ts';
import { scheduleOf } from '../../language/schedule/schedule.ts';
import { evaluated } from '../language/in-memory.ts';

/** The schedule of a job as evaluated; `change` puts other words into the job. */
export function scheduleFor({ job, numbers }: Evaluation, change: Partial<Job> = {}): Schedule {
  const changed = { ...job!, ...change };
  const { work, money, prices } = changed;
  return scheduleOf({ job: changed, quantities: numbers!.quantities, work, hires: money.hires, prices });
}

const evaluations = new Map<string, Promise<Evaluation>>();

/** The schedule of a text that has no error; each text is worked out once. */
export async function scheduled(text: string): Promise<Schedule> {
  const known = evaluations.get(text) ?? evaluated(text);
  evaluations.set(text, known);
  const evaluation = await known;
  expect(evaluation.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return scheduleFor(evaluation);
}

export function taskOf({ tasks }: Schedule, id: string): Task {
  const found = tasks.find(task => task.id === id);
  expect(found, `no task ${id} among ${tasks.map(task => task.id).join(', ')}`).toBeDefined();
  return found!;
}

/** Days of the task by number, `3` or `3-5`; or `done 2026-04-13`. */
export function daysOf(schedule: Schedule, id: string): string {
  const { when, done } = taskOf(schedule, id);
  if (done !== undefined) return `done ${done}`;
  if (when === undefined) return 'none';
  const { startDay, endDay } = when;
  return startDay === endDay ? `${startDay}` : `${startDay}-${endDay}`;
}

/** Ids of the tasks in their order. */
export function orderOf({ tasks }: Schedule): string[] {
  return tasks.map(({ id }) => id);
}

/** A drive of 3 x 6 m with kerbs on concrete, in level ground; what stands in the braces of the job comes first. */
export function drive(jobWords = '', more: { readonly joints?: string; readonly area?: string } = {}): string {
  return `job "Drive" {
  rules britain
  dig by machine, 1.5 t
  ${jobWords}
}
site { soil clay, benchmark sill, ground level with sill, planning "to our own soakaway" }
unit block { size 200 x 100 x 60 mm, weight 2.7 kg }
material kerb {
  role edging
  size 915 x 100 x 200 mm
  concrete 300 x 100 mm below, 50 mm of it under the paving
  wait 3 days before compacting against it
}
material bound-filler { role joint-filler, bound, compacted 1.68 t/m3, loose 1.52 t/m3 }
area drive {
  outline rectangle 3 x 6 m
  traffic cars
  finish level with sill
  paving block in herringbone-90, joints 3 mm
  bed sharp-sand 30 mm
  base type-1 200 mm
  joints filled with ${more.joints ?? 'kiln-dried-sand'}
  ${more.area ?? ''}
  edges {
    near meets road, flush
    the rest meets lawn, edging kerb set before laying
  }
}
`;
}
