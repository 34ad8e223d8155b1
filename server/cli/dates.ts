import { Failure } from './fail.ts';

/** A day as `2026-04-18`; anything else is refused. */
export function readDate(written: string): string {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(written) ? new Date(`${written}T00:00:00Z`) : undefined;
  // A day that is not in the calendar, such as 2026-02-30, comes back as another one.
  if (day === undefined || Number.isNaN(day.valueOf()) || day.toISOString().slice(0, 10) !== written)
    throw new Failure(`${written} is no day. Write year, month and day: 2026-04-18.`);
  return written;
}
