import type { Job } from '../job/job.ts';
import type { Priced } from '../job/prices.ts';
import { dayNumber, lastDay } from '../measures/days.ts';
import type { RawFinding } from './finding.ts';

/**
 * Prices of the job whose days are over on `today`, `2026-06-01`, each price list and each supplier once, and those that
 * are more than a year old and do not say how long they hold. Before any day, '', nothing has passed.
 */
export function pricesPast({ suppliers, prices }: Job, today: string): RawFinding[] {
  // What a price says of its own stands over what its supplier says.
  const asked = new Set(prices.flatMap(({ supplier, priced }) => (priced === undefined ? (supplier ?? []) : [])));
  return [
    ...suppliers.flatMap(({ key, name, priced }) => (asked.has(key) ? past(key, `of ${name}`, priced, today) : [])),
    ...prices.flatMap(({ key, name, priced }) => past(key, `of ${name}`, priced, today))
  ];
}

function past(target: string, whose: string, priced: Priced | undefined, today: string): RawFinding[] {
  if (priced === undefined) return [];
  if (priced.validDays === undefined) return old(target, whose, priced, today);
  const last = lastDay(priced.on, priced.validDays.value);
  if (today <= last) return [];
  const message = `The prices ${whose} were told on ${priced.on} and held until ${last}. Ask again, and write the new day and the new prices.`;
  return [{ id: 'price-past', message, target, at: priced.key }];
}

/** That prices hold no year unless they say so is a rule of practice. */
function old(target: string, whose: string, { key, on }: Priced, today: string): RawFinding[] {
  if (today === '' || dayNumber(today) - dayNumber(on) <= DAYS_IN_YEAR) return [];
  const message = `The prices ${whose} were told on ${on}, more than a year ago, and do not say how long they hold. Common practice: ask again.`;
  return [{ id: 'price-old', message, target, at: key }];
}

const DAYS_IN_YEAR = 366;
