import type { Begins, PlannedCrew, When } from './contract.ts';
import { dayNumber, dayText, weekdayOf } from '../measures/days.ts';

/**
 * The crew's working time as one line of hours, laid over calendar days: so many hours on every day that is worked. Without
 * a first day the days are counted from the first day of a crew's week.
 */
export class WorkingDays {
  readonly hoursADay: number;
  /** Number of the first day that is worked. */
  readonly first: number;
  private readonly worked: ReadonlySet<number>;
  private readonly dated: boolean;

  constructor({ days, hours }: Pick<PlannedCrew, 'days' | 'hours'>, begins: Begins | undefined) {
    this.hoursADay = hours.value;
    this.worked = new Set(days);
    this.dated = begins !== undefined;
    this.first = begins === undefined ? firstOfWeek(this.worked) : this.workedFrom(dayNumber(begins.on));
  }

  isWorked(day: number): boolean {
    return this.worked.has(weekdayOf(day));
  }

  /** The first day that is worked, from this one on. */
  workedFrom(day: number): number {
    let found = day;
    while (!this.isWorked(found)) found++;
    return found;
  }

  /** The moment at which so many hours from a moment on have been worked; a day's end is that of the day, not the next. */
  after({ day, hour }: Moment, hours: number): Moment {
    let left = hours;
    let now = { day, hour };
    while (left > this.hoursADay - now.hour + HAIR) {
      left -= this.hoursADay - now.hour;
      now = { day: this.workedFrom(now.day + 1), hour: 0 };
    }
    return { day: now.day, hour: now.hour + left };
  }

  /** Where work can go on from a moment: a day that is used up leads to the next. */
  ready({ day, hour }: Moment): Moment {
    if (!this.isWorked(day)) return { day: this.workedFrom(day), hour: 0 };
    return hour > this.hoursADay - HAIR ? { day: this.workedFrom(day + 1), hour: 0 } : { day, hour };
  }

  /** Days that are worked between two days, both counted. */
  between(start: number, end: number): number[] {
    return Array.from({ length: end - start + 1 }, (_, index) => start + index).filter(day => this.isWorked(day));
  }

  when(start: number, end: number, workDays: number): When {
    return {
      startDay: start - this.first + 1,
      endDay: end - this.first + 1,
      startWeekday: weekdayOf(start),
      endWeekday: weekdayOf(end),
      ...(this.dated ? { start: dayText(start), end: dayText(end) } : {}),
      workDays
    };
  }
}

/** A place in the working time: number of a day, and hours worked on it so far. */
export interface Moment {
  readonly day: number;
  readonly hour: number;
}

export function isBefore(one: Moment, other: Moment): boolean {
  return one.day < other.day || (one.day === other.day && one.hour < other.hour - HAIR);
}

/** A day is used up, whatever rounding leaves of it. */
const HAIR = 1e-9;

/** The first day that is worked behind one that is not; Monday where none is free. A week whose day 1 is a Monday. */
function firstOfWeek(worked: ReadonlySet<number>): number {
  const monday = dayNumber('2001-01-01');
  const week = Array.from({ length: 7 }, (_, index) => monday + index);
  return week.find(day => worked.has(weekdayOf(day)) && !worked.has(weekdayOf(day - 1))) ?? monday;
}
