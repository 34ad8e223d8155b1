import type { Assumed, Given, Key } from '../job/job.ts';
import type { Rate, TaskWord } from '../job/work.ts';

/** What is to be done, when, and what to mind; free of any printer. Hours are of one person, h. */
export interface Schedule {
  readonly id: Key;
  readonly title: string;
  readonly crew: PlannedCrew;
  /** The first day of the work as told, or the day after what the log last tells as done; absent: days are counted. */
  readonly begins?: Begins;
  /** Days of the crew with work on them, as if nothing were done yet: those that a price counts. */
  readonly days: number;
  /** The same of what is left to do. */
  readonly daysLeft: number;
  /** The first task that so many years have no day for: its hours are told, and no days from there on. */
  readonly noEnd?: { readonly from: string; readonly years: number };
  /** Hours of all tasks whose hours are known, and of what of them is left to do. */
  readonly hours: number;
  readonly hoursLeft: number;
  readonly tasks: readonly Task[];
  readonly hires: readonly HireDays[];
  readonly carrying: readonly Carrying[];
}

export interface PlannedCrew {
  readonly people: Given;
  readonly hours: Given;
  /** Days that are worked, 1 is Monday, 7 is Sunday. */
  readonly days: readonly number[];
}

export interface Begins {
  readonly on: string;
  readonly because: 'told' | 'log';
}

export interface Task {
  readonly id: string;
  /** What rates and hires call it; absent of a task of one's own. */
  readonly word?: TaskWord;
  readonly title: string;
  /** Ids of the tasks before it. */
  readonly after: readonly string[];
  /** All its hours; absent where no rate tells any of them. */
  readonly hours?: number;
  /** Of them those of what is not logged as done. */
  readonly hoursLeft?: number;
  readonly working: readonly HoursLine[];
  /** What has to be done and no rate tells the hours of. */
  readonly noRate: readonly Amount[];
  /** What takes no time of its own, since the rate of another task holds it. */
  readonly included: readonly Included[];
  /** The day on which the last of it was logged as done. */
  readonly done?: string;
  /** Where it lies in the calendar; absent when it is done. */
  readonly when?: When;
  readonly holds: readonly Hold[];
  readonly cautions: readonly Caution[];
}

/** What takes no time of its own: the rate that holds it, and the task of that rate. */
export interface Included {
  readonly name: string;
  readonly rate: string;
  readonly task: TaskWord;
}

/** First and last day: 1 is the first day of the work and every calendar day counts; less than 1 is before the work. */
export interface When {
  readonly startDay: number;
  readonly endDay: number;
  /** Weekday of the first and the last day, 1 is Monday. */
  readonly startWeekday: number;
  readonly endWeekday: number;
  /** The days themselves, `2026-04-13`, where the first is known. */
  readonly start?: string;
  readonly end?: string;
  /** Days with work on it: part of a day counts as one. */
  readonly workDays: number;
}

/** So much of something that has to be done. */
export interface Amount {
  readonly name: string;
  readonly value: number;
  readonly per: Rate['per'];
  /** Where the job's quantities hold it, by JSON pointer. */
  readonly pointer?: string;
  readonly area?: Key;
  /** The side that it stands along. */
  readonly side?: string;
}

/** Hours with their working: so much, times hours for one of it. */
export interface HoursLine {
  readonly amount: Amount;
  /** Hours of one person for one of it. */
  readonly takes: number;
  readonly rate: RateUsed;
  readonly hours: number;
  readonly done?: string;
}

export interface RateUsed {
  readonly name: string;
  /** Where it stands, in the text or in what ships. */
  readonly key: Key;
  readonly written: string;
  readonly source: string;
  readonly status: Rate['status'];
  readonly assumed?: Assumed;
}

/** What a task waits for. */
export interface Hold {
  readonly kind: 'lead' | 'concrete' | 'second-sweeping' | 'weather' | 'frost';
  readonly text: string;
  /** Days that pass before the task, where it is days. */
  readonly days?: number;
  readonly source: string;
  readonly status: Rate['status'];
}

export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly source?: string;
}

/** Days for which something hired is needed. */
export interface HireDays {
  readonly id: Key;
  readonly title: string;
  readonly tasks: readonly string[];
  /**
   * Working days on which its tasks go on, and calendar days from the first of them to the last, as if nothing were done
   * yet: those that a price counts. Absent where the work has no end.
   */
  readonly days?: number;
  readonly span?: number;
  /** Working days of what is left to do. */
  readonly daysLeft?: number;
}

/** How something comes and goes: loads by what they hold and by what they may weigh, whichever is more. */
export interface Carrying {
  readonly what: string;
  /** Loose, m3. */
  readonly volume?: number;
  /** kg */
  readonly mass?: number;
  readonly barrows?: number;
  /** Walked with them, there and back, m. */
  readonly walk?: number;
  readonly truckLoads?: number;
}
