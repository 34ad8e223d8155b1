import type { Job } from '../job/job.ts';
import type { Priced } from '../job/prices.ts';
import type { RawFinding } from './finding.ts';

/**
 * Prices of the job whose days are over on `today`, `2026-06-01`, each price list and each supplier once. Before any day, '',
 * nothing has passed.
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
  if (priced?.validDays === undefined) return [];
  const last = lastDay(priced.on, priced.validDays.value);
  if (today <= last) return [];
  const message = `The prices ${whose} were told on ${priced.on} and held until ${last}. Ask again, and write the new day and the new prices.`;
  return [{ id: 'price-past', message, target, at: priced.key }];
}

/** `2026-03-01` and 60 days: `2026-04-30`. */
function lastDay(on: string, days: number): string {
  const day = new Date(`${on}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + Math.floor(days));
  return day.toISOString().slice(0, 10);
}
