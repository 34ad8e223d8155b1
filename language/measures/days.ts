/** Days as text, `2026-04-13`, and as numbers that count on from day to day; weekdays from 1, Monday, to 7, Sunday. */

const MILLISECONDS = 24 * 60 * 60 * 1000;

/** The number of a day, so that the next day's is one more. */
export function dayNumber(day: string): number {
  return Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10))) / MILLISECONDS;
}

export function dayText(number: number): string {
  return new Date(number * MILLISECONDS).toISOString().slice(0, 10);
}

/** The last day that something holds which holds so many days from `from`: of a broken day nothing. */
export function lastDay(from: string, days: number): string {
  return dayText(dayNumber(from) + Math.floor(days));
}

/** 1 January 1970, day nought, was a Thursday. */
export function weekdayOf(number: number): number {
  return ((((number + 3) % 7) + 7) % 7) + 1;
}

/** The later of two days as text. */
export function later(one: string | undefined, other: string | undefined): string | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return one > other ? one : other;
}
