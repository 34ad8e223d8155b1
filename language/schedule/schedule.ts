import type { Assumed, Given, Job } from '../job/job.ts';
import type { Hire } from '../job/money-lines.ts';
import type { PriceList } from '../job/prices.ts';
import type { Crew, WorkWords } from '../job/work.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import { carryingOf } from './carrying.ts';
import { cautionsOf } from './cautions.ts';
import type { Begins, HireDays, HoursLine, PlannedCrew, Schedule, Task } from './contract.ts';
import { dayNumber, dayText, later } from './days.ts';
import type { Draft } from './draft.ts';
import { edgingTasks } from './edging-tasks.ts';
import { fittingTasks } from './fitting-tasks.ts';
import { groundTasks } from './ground-tasks.ts';
import { type Hours, hoursOf } from './hours.ts';
import { inOrder, type Ordered } from './in-order.ts';
import { layerTasks } from './layer-tasks.ts';
import { layingTasks, TAPPING } from './laying-tasks.ts';
import { type PlacedTask, placeTasks, type ToPlace } from './place-tasks.ts';
import { type Planned, plannedOf } from './planned.ts';
import { WorkingDays } from './working-days.ts';

/** What is planned: the job, its numbers, who works when, and what is hired by the day. */
export interface ToSchedule {
  readonly job: Job;
  readonly quantities: JobQuantities;
  readonly work: WorkWords;
  readonly hires: readonly Hire[];
  /** For the weights of pallets. */
  readonly prices: readonly PriceList[];
}

/**
 * Tasks in the order of the trade with hours, days, what they wait for and what to mind. What the log tells as done is
 * done, and the days are those of what is left; for the whole job, as a price needs it, give a job with an empty log.
 */
export function scheduleOf({ job, quantities, work, hires, prices }: ToSchedule): Schedule {
  const planned = plannedOf(job, quantities);
  const crew = crewOf(work.crew);
  const begins = beginsOf(work.begins, planned.logged.last);
  const days = new WorkingDays(crew, begins);
  const drafts = draftsOf(planned);
  const hours = new Map(hoursOf(drafts, work.rates).map((own, index) => [drafts[index]!.id, own]));
  const toPlace = inOrder(drafts, work.tasks).map(ordered => withHours(ordered, hours.get(ordered.id)));
  const placed = placeTasks(toPlace, crew.people.value, days);
  const cautions = cautionsOf(planned, crew, toPlace, hours.get('cutting')?.lines ?? [], prices);
  const tasks = toPlace.map((task): Task => {
    const own = hours.get(task.id);
    const at = placed.get(task.id)?.when;
    return {
      id: task.id,
      title: task.draft?.title ?? task.own!.title,
      after: task.after,
      ...hoursTold(task, own),
      working: own?.lines ?? [ownLine(task)],
      noRate: own?.noRate ?? [],
      included: own?.included ?? [],
      ...(task.done === undefined ? {} : { done: task.done }),
      ...(at === undefined ? {} : { when: at }),
      holds: holdsOf(task),
      cautions: cautions.get(task.id) ?? []
    };
  });
  return {
    id: job.key,
    title: job.title,
    crew,
    ...(begins === undefined ? {} : { begins }),
    days: workedDays([...placed.values()]).length,
    hours: sum(tasks.map(task => task.hours)),
    hoursLeft: sum(tasks.map(task => task.hoursLeft)),
    tasks,
    hires: hires.map(hire => hireDays(hire, toPlace, placed)),
    carrying: carryingOf(quantities, job.carting)
  };
}

function draftsOf(planned: Planned): Draft[] {
  return [
    ...groundTasks(planned),
    ...fittingTasks(planned),
    ...edgingTasks(planned),
    ...layerTasks(planned),
    ...layingTasks(planned)
  ];
}

/** Of a job that does not say who works: one person, from Monday to Friday. */
function crewOf(crew: Crew | undefined): PlannedCrew {
  if (crew !== undefined && crew.days.length > 0 && crew.hours.value > 0 && crew.people.value > 0) return crew;
  return { people: usual(1, '1'), hours: usual(8, '8 h'), days: [1, 2, 3, 4, 5] };
}

function usual(value: number, written: string): Given {
  const assumed: Assumed = { because: 'the job does not say who works: one person, Monday to Friday, 8 h a day' };
  return { value, written, assumed };
}

/** What is left goes on the day after what was last logged as done. */
function beginsOf(told: string | undefined, last: string | undefined): Begins | undefined {
  const next = last === undefined ? undefined : dayText(dayNumber(last) + 1);
  const on = later(told, next);
  return on === undefined ? undefined : { on, because: on === told ? 'told' : 'log' };
}

function withHours(ordered: Ordered, hours: Hours | undefined): ToPlace {
  const done = doneOf(ordered.draft);
  if (done !== undefined) return { ...ordered, hoursLeft: 0, done };
  const left =
    hours === undefined
      ? ordered.own!.hours.value
      : sum(hours.lines.filter(line => line.done === undefined).map(line => line.hours));
  return { ...ordered, hoursLeft: Math.max(0, left) };
}

/** The last day of a task all of whose parts are done. */
function doneOf(draft: Draft | undefined): string | undefined {
  const days = draft?.efforts.map(({ done }) => done) ?? [];
  return days.length === 0 || days.includes(undefined) ? undefined : days.reduce(later, undefined);
}

function hoursTold(task: ToPlace, own: Hours | undefined): Pick<Task, 'hours' | 'hoursLeft'> {
  if (own === undefined) return { hours: task.own!.hours.value, hoursLeft: task.hoursLeft };
  if (own.lines.length === 0) return own.included.length > 0 && own.noRate.length === 0 ? NO_TIME : {};
  return { hours: sum(own.lines.map(({ hours }) => hours)), hoursLeft: task.hoursLeft };
}

const NO_TIME = { hours: 0, hoursLeft: 0 };

function ownLine({ own }: ToPlace): HoursLine {
  const { key, title, hours } = own!;
  return {
    amount: { name: title, value: 1, per: 'job' },
    takes: hours.value,
    rate: { name: title, key, written: hours.written, source: 'the job', status: 'practice' },
    hours: hours.value
  };
}

function holdsOf({ draft, after, done }: ToPlace): Task['holds'] {
  if (draft === undefined || done !== undefined) return [];
  const waits = draft.waits.filter(({ on }) => after.includes(on)).map(({ hold }) => hold);
  return [...waits, ...draft.holds];
}

function hireDays(
  { key, title, tasks }: Hire,
  all: readonly ToPlace[],
  placed: ReadonlyMap<string, PlacedTask>
): HireDays {
  const isFor = ({ draft, own: mine, id }: ToPlace): boolean =>
    tasks.includes(id) ||
    (mine !== undefined && tasks.includes(mine.title)) ||
    (draft?.word !== undefined && id !== TAPPING && tasks.includes(draft.word));
  const own = all.filter(isFor);
  const worked = workedDays(own.flatMap(({ id }) => placed.get(id) ?? []));
  const span = worked.length === 0 ? 0 : worked.at(-1)! - worked[0]! + 1;
  return { id: key, title, tasks: own.map(({ id }) => id), days: worked.length, span };
}

/** Numbers of the days on which any of it goes on, each once. */
function workedDays(all: readonly PlacedTask[]): number[] {
  return [...new Set(all.flatMap(({ days }) => days))].toSorted((one, other) => one - other);
}

function sum(all: readonly (number | undefined)[]): number {
  return all.reduce<number>((total, one) => total + (one ?? 0), 0);
}
