import type { Key } from '../../job/job.ts';
import type { LogEntry } from '../../job/log.ts';
import { later } from '../../measures/days.ts';
import type { Schedule } from '../../schedule/contract.ts';
import type { ChangePlaces } from '../contract.ts';
import { againOf, type Prices } from './again.ts';
import { boughtOf } from './bought.ts';
import { builtEdging } from './built-edging.ts';
import { builtParts, type Side } from './built.ts';
import { sideNow } from './sides-now.ts';
import { changePrice } from './change-price.ts';
import type { UnderWay } from './contract.ts';

export interface UnderWayInputs {
  readonly older: Side;
  readonly newer: Side;
  /** All of the work by the newer text, whatever of it is done. */
  readonly schedule: Schedule;
  readonly prices: Prices;
  /** What the newer text calls something of the older one. */
  readonly keyNow: (key: Key) => Key;
  /** Where an area stands in either text, by what the newer one calls it. */
  readonly placesOf: (key: Key) => ChangePlaces;
}

/**
 * What a change does to a job that is under way: what the log tells as done is taken as built by the older text. Undefined
 * where the log tells of nothing done and nothing delivered.
 */
export function underWay({ older, newer, schedule, prices, keyNow, placesOf }: UnderWayInputs): UnderWay | undefined {
  const log = [...older.job.log.map(entry => calledNow(entry, keyNow)), ...newer.job.log];
  const until = newer.job.log
    .filter(({ kind }) => kind === 'done' || kind === 'delivered')
    .reduce<string | undefined>((last, { date }) => later(last, date), undefined);
  if (until === undefined) return undefined;
  const built = [...builtParts(older, newer, log, keyNow), ...builtEdging(older, newer, log, keyNow)];
  const bought = boughtOf(older, newer, log, built, keyNow);
  const again = againOf(newer.job, schedule, built, prices);
  const price = changePrice({ older, newer, built, bought, again, log, keyNow }, prices);
  return {
    until,
    built: built.map(part => ({ ...part, places: placesOf(part.area) })),
    bought,
    again,
    ...(price === undefined ? {} : { price })
  };
}

function calledNow(entry: LogEntry, keyNow: (key: Key) => Key): LogEntry {
  if (entry.kind !== 'done') return entry;
  const { along } = entry;
  return {
    ...entry,
    areas: entry.areas.map(keyNow),
    ...(along === undefined ? {} : { along: sideNow(along, keyNow) })
  };
}
