import type { Place } from '../../findings/finding.ts';
import type { Carrying, Caution, HireDays, HoursLine, Schedule, Task } from '../../schedule/contract.ts';
import type { FromAssumed } from '../../quantities/contract.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

/** What the JSON of schedules is made from; nothing is read from a clock or a file here. */
export interface ScheduleInput {
  /** Name and version of the program. */
  readonly tool: string;
  /** The day, `2026-04-18`. */
  readonly asOf: string;
  readonly jobs: readonly { readonly schedule: Schedule; readonly placeOf: (key: string) => Place }[];
}

export interface ScheduleJson {
  readonly schema: number;
  readonly tool: string;
  readonly asOf: string;
  readonly jobs: readonly ScheduledJobJson[];
}

export interface ScheduledJobJson {
  readonly id: string;
  readonly title: string;
  readonly crew: { readonly people: number; readonly hours: number; readonly days: readonly number[] };
  readonly begins?: string;
  readonly days: number;
  readonly daysLeft: number;
  readonly noEnd?: Schedule['noEnd'];
  readonly hours: number;
  readonly hoursLeft: number;
  readonly tasks: readonly TaskJson[];
  readonly hires: readonly HireDays[];
  readonly carrying: readonly Carrying[];
}

interface TaskJson extends Pick<
  Task,
  'id' | 'title' | 'after' | 'hours' | 'hoursLeft' | 'done' | 'noRate' | 'included'
> {
  readonly startDay?: number;
  readonly endDay?: number;
  readonly workDays?: number;
  readonly start?: string;
  readonly end?: string;
  readonly hold?: Task['holds'];
  readonly cautions: readonly Caution[];
  readonly working: readonly HoursLineJson[];
}

interface HoursLineJson extends Omit<HoursLine, 'rate'> {
  readonly rate: Pick<HoursLine['rate'], 'name' | 'written' | 'source' | 'status'> & {
    readonly from: FromAssumed | Pick<Place, 'file' | 'line' | 'column'>;
  };
}

/** The schedules of all jobs, in SI, hours and days. */
export function scheduleJson({ tool, asOf, jobs }: ScheduleInput): ScheduleJson {
  return {
    schema: SCHEMA_NUMBER,
    tool,
    asOf,
    jobs: jobs.map(({ schedule, placeOf }) => ({
      id: schedule.id,
      title: schedule.title,
      crew: { people: schedule.crew.people.value, hours: schedule.crew.hours.value, days: schedule.crew.days },
      ...(schedule.begins === undefined ? {} : { begins: schedule.begins.on }),
      days: schedule.days,
      daysLeft: schedule.daysLeft,
      ...(schedule.noEnd === undefined ? {} : { noEnd: schedule.noEnd }),
      hours: schedule.hours,
      hoursLeft: schedule.hoursLeft,
      tasks: schedule.tasks.map(task => taskJson(task, placeOf)),
      hires: schedule.hires,
      carrying: schedule.carrying
    }))
  };
}

function taskJson({ when, holds, working, ...task }: Task, placeOf: (key: string) => Place): TaskJson {
  const { id, title, after, hours, hoursLeft, done, noRate, included, cautions } = task;
  return {
    id,
    title,
    after,
    ...(hours === undefined ? {} : { hours }),
    ...(hoursLeft === undefined ? {} : { hoursLeft }),
    ...(when === undefined ? {} : { startDay: when.startDay, endDay: when.endDay, workDays: when.workDays }),
    ...(when?.start === undefined ? {} : { start: when.start }),
    ...(when?.end === undefined ? {} : { end: when.end }),
    ...(done === undefined ? {} : { done }),
    ...(holds.length === 0 ? {} : { hold: holds }),
    cautions,
    working: working.map(line => lineJson(line, placeOf)),
    noRate,
    included
  };
}

function lineJson({ rate, ...line }: HoursLine, placeOf: (key: string) => Place): HoursLineJson {
  const { name, written, source, status, assumed, key } = rate;
  return { ...line, rate: { name, written, source, status, from: fromOf(assumed, key, placeOf) } };
}

function fromOf(
  assumed: HoursLine['rate']['assumed'],
  key: string,
  placeOf: (key: string) => Place
): HoursLineJson['rate']['from'] {
  if (assumed !== undefined) {
    const { because, source } = assumed;
    return source === undefined ? { assumed: because } : { assumed: because, source };
  }
  const { file, line, column } = placeOf(key);
  return { file, line, column };
}
