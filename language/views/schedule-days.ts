import type { Schedule, Task, When } from '../schedule/contract.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const WEEKDAYS_IN_FULL = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** `Mon 2026-04-13 to Tue 2026-04-14`; without a first day `day 1 (Mon) to day 2 (Tue)`; `done 2026-04-13`. */
export function whenText({ done, when }: Pick<Task, 'done' | 'when'>): string {
  if (done !== undefined) return `done ${done}`;
  if (when === undefined) return '';
  const [first, last] = [startText(when), endText(when)];
  return first === last ? first : `${first} to ${last}`;
}

function startText({ start, startDay, startWeekday }: When): string {
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
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
}

/** Hours to a tenth: `22.1`. */
export function hoursText(hours: number): string {
  return (Math.round(hours * 10) / 10).toFixed(1);
}
