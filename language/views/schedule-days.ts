import { listed } from '../findings/listed.ts';
import type { Schedule, Task, When } from '../schedule/contract.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const WEEKDAYS_IN_FULL = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** `Mon 2026-04-13 to Tue 2026-04-14`; without a first day `day 1 (Mon) to day 2 (Tue)`; `done 2026-04-13`. */
export function whenText({ done, when }: Pick<Task, 'done' | 'when'>): string {
  if (done !== undefined) return `done ${done}`;
  if (when === undefined) return '';
  const until = untilText(when);
  return until === undefined ? startText(when) : `${startText(when)} ${until}`;
}

/** `to Tue 2026-04-14`; nothing where it ends on the day on which it begins. */
export function untilText(when: When): string | undefined {
  const last = endText(when);
  return last === startText(when) ? undefined : `to ${last}`;
}

export function startText({ start, startDay, startWeekday }: When): string {
  return dayWords(start, startDay, startWeekday);
}

/** First and last day of the work, without the wait for whoever locates services; of what is all done none. */
export function spanOf({
  tasks
}: Pick<Schedule, 'tasks'>): { readonly first: string; readonly last: string } | undefined {
  const whens = tasks.flatMap(({ id, when }) => (id === 'locate' || when === undefined ? [] : [when]));
  const [one, ...others] = whens;
  if (one === undefined) return undefined;
  const first = others.reduce((found, when) => (when.startDay < found.startDay ? when : found), one);
  const last = others.reduce((found, when) => (when.endDay > found.endDay ? when : found), one);
  return { first: startText(first), last: endText(last) };
}

function endText({ end, endDay, endWeekday }: When): string {
  return dayWords(end, endDay, endWeekday);
}

function dayWords(date: string | undefined, day: number, weekday: number): string {
  const name = WEEKDAYS[weekday - 1]!;
  return date === undefined ? `day ${day} (${name})` : `${name} ${date}`;
}

/** `2 people, Monday to Friday, 8 h a day` */
export function crewText({ people, days, hours }: Schedule['crew']): string {
  const count = people.value === 1 ? '1 person' : `${people.value} people`;
  return `${count}, ${weekText(days)}, ${hours.value} h a day`;
}

/** `Monday to Friday`, `Saturday and Sunday`. */
function weekText(days: readonly number[]): string {
  const names = days.map(day => WEEKDAYS_IN_FULL[day - 1]!);
  const isRow = days.length > 2 && days.every((day, index) => index === 0 || day === days[index - 1]! + 1);
  if (isRow) return `${names[0]!} to ${names.at(-1)!}`;
  return listed(names);
}

/** Hours to a tenth: `22.1`. */
export function hoursText(hours: number): string {
  return (Math.round(hours * 10) / 10).toFixed(1);
}

/** `22.1`; `with laying` where the hours of another task hold all of it; `not known` where no rate tells them. */
export function taskHoursText({ hours, included }: Pick<Task, 'hours' | 'included'>): string {
  if (hours === undefined) return 'not known';
  return hours === 0 && included.length > 0 ? `with ${tasksOf(included)}` : hoursText(hours);
}

/**
 * `In the hours of laying, by the rates lay-units and lay-herringbone.`, of a part of it with its name; nothing where each
 * part has hours of its own.
 */
export function includedText({ included, hours }: Pick<Task, 'included' | 'hours'>): string | undefined {
  if (included.length === 0) return undefined;
  const rates = [...new Set(included.map(({ rate }) => rate))];
  const by = `hours of ${tasksOf(included)}, by the ${rates.length === 1 ? 'rate' : 'rates'} ${listed(rates)}.`;
  if (hours === undefined || hours === 0) return `In the ${by}`;
  const names = listed([...new Set(included.map(({ name }) => name))]);
  return `Not in these hours: ${names}, in the ${by}`;
}

function tasksOf(included: Task['included']): string {
  return listed([...new Set(included.map(({ task }) => task))]);
}

/** Where the days end before the work does. */
export function noEndText({ noEnd, tasks }: Pick<Schedule, 'noEnd' | 'tasks'>): string | undefined {
  if (noEnd === undefined) return undefined;
  const { title } = tasks.find(({ id }) => id === noEnd.from)!;
  return `No end within ${noEnd.years} years: from “${title}” on, hours are told and no days. Look whether the crew, a rate or a size is a slip.`;
}
