import type { AstNode } from 'langium';
import type { Key } from '../job/job.ts';
import { isDay } from '../syntax/odd-dates.ts';
import type { Context, Property } from './context.ts';
import type { SpecText } from './names.ts';
import { writing, type SaidFix } from './said-fix.ts';

/** Tells of a date that is not in the calendar. */
export function checkDay(
  context: Context,
  text: SpecText,
  key: Key,
  node: AstNode,
  property: Property,
  written: string
): boolean {
  if (isDay(written)) return true;
  // What is no date at all was told where the text was read.
  if (!/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(written)) return false;
  context.fault(text, key, node, 'out-of-range', `${written} is no day. Write year, month and day.`, {
    property,
    harmless: true,
    fixes: lastDay(written)
  });
  return false;
}

/** The last day of the month, where only the day is too large. */
function lastDay(written: string): SaidFix[] {
  const [year, month] = written.split('-').map(Number) as [number, number];
  if (month < 1 || month > 12) return [];
  const last = new Date(Date.UTC(year, month, 0)).toISOString().slice(0, 10);
  return isDay(last) && last < written ? [writing(last)] : [];
}
