import type { When } from './contract.ts';
import { dayNumber, weekdayOf } from '../measures/days.ts';
import { LEAD_DAYS } from './holds.ts';
import type { Ordered } from './in-order.ts';
import { isBefore, type Moment, type WorkingDays } from './working-days.ts';

/** A task as it is laid over the days: hours left of one person, and the day it was done on, where it was. */
export interface ToPlace extends Ordered {
  readonly hoursLeft: number;
  readonly done?: string;
}

/** Days that are worked on, by number, for one task. */
export interface PlacedTask {
  readonly when: When;
  readonly days: readonly number[];
}

/** Work that takes longer is laid over no calendar, and said to have no end: a crew, a rate or an amount is a slip. */
export const MOST_YEARS = 10;

const MOST_DAYS = MOST_YEARS * 365;

/**
 * Lays tasks over the crew's days: all work together on one task at a time, the first in the order that nothing holds up;
 * while concrete sets they go on with what can be done. Services are asked for before the first day.
 */
export function placeTasks(tasks: readonly ToPlace[], people: number, days: WorkingDays): Map<string, PlacedTask> {
  const placed = new Map<string, PlacedTask>();
  const ends = new Map<string, Moment>();
  for (const { id, done } of tasks) if (done !== undefined) ends.set(id, endOfDay(done, days));
  let now: Moment = { day: days.first, hour: 0 };
  const left = tasks.filter(({ id, done }) => done === undefined && id !== 'locate');
  if (tasks.some(({ id, done }) => id === 'locate' && done === undefined)) {
    placed.set('locate', locating(days));
    ends.set('locate', now);
  }
  while (left.length > 0) {
    const next = nextOf(left, ends, now, days);
    left.splice(left.indexOf(next.task), 1);
    const start = next.at;
    const hours = next.task.hoursLeft / people;
    if (start.day - days.first + hours / days.hoursADay > MOST_DAYS) break;
    now = days.after(start, hours);
    ends.set(next.task.id, now);
    const on = hours > 0 ? days.between(start.day, now.day) : [];
    placed.set(next.task.id, { when: days.when(start.day, now.day, on.length), days: on });
  }
  for (const task of tasks) goesOn(task, tasks, placed, days);
  return placed;
}

/** The first in the order that can go on now; else the one that can go on soonest. */
function nextOf(
  left: readonly ToPlace[],
  ends: ReadonlyMap<string, Moment>,
  now: Moment,
  days: WorkingDays
): { readonly task: ToPlace; readonly at: Moment } {
  let soonest: { readonly task: ToPlace; readonly at: Moment } | undefined;
  for (const task of left) {
    if (task.after.some(id => !ends.has(id))) continue;
    const at = readyAt(task, ends, now, days);
    if (!isBefore(now, at)) return { task, at };
    if (soonest === undefined || isBefore(at, soonest.at)) soonest = { task, at };
  }
  // Tasks only come after others that stand before them, so one is always free.
  return soonest!;
}

function readyAt({ draft, after }: ToPlace, ends: ReadonlyMap<string, Moment>, now: Moment, days: WorkingDays): Moment {
  let at = days.ready(now);
  for (const wait of draft?.waits ?? []) {
    const end = ends.get(wait.on);
    if (end === undefined || !after.includes(wait.on)) continue;
    const passed = days.ready({ day: end.day + wait.days, hour: wait.from === 'morning' ? 0 : end.hour });
    if (isBefore(at, passed)) at = passed;
  }
  return at;
}

/** What is done bit by bit with another task ends with it: its hours stand at its beginning, its days reach further. */
function goesOn(
  { id, draft }: ToPlace,
  tasks: readonly ToPlace[],
  placed: Map<string, PlacedTask>,
  days: WorkingDays
): void {
  const own = placed.get(id);
  if (own === undefined || draft?.goesOnWith === undefined) return;
  const others = tasks.filter(task => task.draft?.word === draft.goesOnWith).flatMap(task => placed.get(task.id) ?? []);
  const worked = [...new Set([...own.days, ...others.flatMap(other => other.days)])].toSorted((one, two) => one - two);
  if (worked.length === 0 || others.length === 0) return;
  placed.set(id, { when: days.when(worked[0]!, worked.at(-1)!, worked.length), days: worked });
}

function endOfDay(day: string, days: WorkingDays): Moment {
  return { day: dayNumber(day), hour: days.hoursADay };
}

/** From the day of asking to the day before the work, with {@link LEAD_DAYS} from Monday to Friday in between. */
function locating(days: WorkingDays): PlacedTask {
  let start = days.first;
  for (let passed = 0; passed < LEAD_DAYS;) {
    start--;
    if (weekdayOf(start) <= FRIDAY) passed++;
  }
  return { when: days.when(start, days.first - 1, 0), days: [] };
}

const FRIDAY = 5;
