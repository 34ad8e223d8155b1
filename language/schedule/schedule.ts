import type { Assumed, Given, Job } from '../job/job.ts';
import type { Hire } from '../job/money-lines.ts';
import type { PriceList } from '../job/prices.ts';
import type { Crew, WorkWords } from '../job/work.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import { carryingOf } from './carrying.ts';
import { cautionsOf } from './cautions.ts';
import type { Begins, HireDays, HoursLine, PlannedCrew, Schedule, Task } from './contract.ts';
import { dayNumber, dayText, later } from '../measures/days.ts';
import type { Draft } from './draft.ts';
import { edgingTasks } from './edging-tasks.ts';
import { fittingTasks } from './fitting-tasks.ts';
import { groundTasks } from './ground-tasks.ts';
import { type Hours, hoursOf } from './hours.ts';
import { inOrder, type Ordered } from './in-order.ts';
import { layerTasks } from './layer-tasks.ts';
import { layingTasks, TAPPING } from './laying-tasks.ts';
import { MOST_YEARS, type PlacedTask, placeTasks, type ToPlace } from './place-tasks.ts';
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
 * done, and tasks have the days of what is left; how many days all of it takes, and each hire, is told as a price counts it.
 */
export function scheduleOf({ job, quantities, work, hires, prices }: ToSchedule): Schedule {
  const planned = plannedOf(job, quantities);
  const crew = crewOf(work.crew);
  const left = laidOut(planned, work, crew);
  const { begins, hours, toPlace, placed } = left;
  // What is done was worked and hired all the same: the days of all of it are those of the plan without it.
  const whole =
    planned.logged.last === undefined
      ? left
      : laidOut(plannedOf({ ...job, log: job.log.filter(({ kind }) => kind !== 'done') }, quantities), work, crew);
  const cautions = cautionsOf(planned, crew, toPlace, hours.get('cutting')?.lines ?? [], prices);
  const tasks = toPlace.map((task): Task => {
    const own = hours.get(task.id);
    const at = placed.get(task.id)?.when;
    return {
      id: task.id,
      ...(task.draft?.word === undefined ? {} : { word: task.draft.word }),
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
    days: workedDays([...whole.placed.values()]).length,
    daysLeft: workedDays([...placed.values()]).length,
    ...noEndOf(left),
    hours: sum(tasks.map(task => task.hours)),
    hoursLeft: sum(tasks.map(task => task.hoursLeft)),
    tasks,
    hires: hires.map(hire => hireDays(hire, whole, left)),
    carrying: carryingOf(quantities, job.carting)
  };
}

/** A job's tasks laid over the crew's days. */
interface LaidOut {
  readonly begins: Begins | undefined;
  readonly hours: ReadonlyMap<string, Hours>;
  readonly toPlace: readonly ToPlace[];
  readonly placed: ReadonlyMap<string, PlacedTask>;
}

function laidOut(planned: Planned, work: WorkWords, crew: PlannedCrew): LaidOut {
  const begins = beginsOf(work.begins, planned.logged.last);
  const drafts = draftsOf(planned);
  const hours = new Map(hoursOf(drafts, work.rates).map((own, index) => [drafts[index]!.id, own]));
  const toPlace = inOrder(drafts, work.tasks).map(ordered => withHours(ordered, hours.get(ordered.id)));
  return { begins, hours, toPlace, placed: placeTasks(toPlace, crew.people.value, new WorkingDays(crew, begins)) };
}

/** The first task that no day was found for. */
function noEndOf({ toPlace, placed }: LaidOut): Pick<Schedule, 'noEnd'> {
  const first = toPlace.find(({ id, done }) => done === undefined && !placed.has(id));
  return first === undefined ? {} : { noEnd: { from: first.id, years: MOST_YEARS } };
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

/** What is hired for no task of its own is needed all through. Days are absent where the work has no end. */
function hireDays({ key, title, tasks }: Hire, whole: LaidOut, left: LaidOut): HireDays {
  const isFor = ({ draft, own: mine, id }: ToPlace): boolean =>
    tasks.length === 0 ||
    tasks.includes(id) ||
    (mine !== undefined && tasks.includes(mine.title)) ||
    (draft?.word !== undefined && id !== TAPPING && tasks.includes(draft.word));
  const own = whole.toPlace.filter(isFor).map(({ id }) => id);
  const isPlaced = ({ toPlace, placed }: LaidOut): boolean =>
    toPlace.every(({ id, done }) => done !== undefined || placed.has(id) || !own.includes(id));
  const daysIn = ({ placed }: LaidOut): number[] => workedDays(own.flatMap(id => placed.get(id) ?? []));
  const worked = daysIn(whole);
  const span = worked.length === 0 ? 0 : worked.at(-1)! - worked[0]! + 1;
  return {
    id: key,
    title,
    tasks: own,
    ...(isPlaced(whole) ? { days: worked.length, span } : {}),
    ...(isPlaced(left) ? { daysLeft: daysIn(left).length } : {})
  };
}

/** Numbers of the days on which any of it goes on, each once. */
function workedDays(all: readonly PlacedTask[]): number[] {
  return [...new Set(all.flatMap(({ days }) => days))].toSorted((one, other) => one - other);
}

function sum(all: readonly (number | undefined)[]): number {
  return all.reduce<number>((total, one) => total + (one ?? 0), 0);
}
