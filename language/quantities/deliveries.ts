import { wantedOf } from '../buying/needs.ts';
import type { UsedThing } from '../buying/used.ts';
import type { Delivered, LogEntry } from '../job/log.ts';
import { type Expression, given, leaf, multiply, plainNumber, subtract, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Book } from './page.ts';
import type { DeliveryQuantities } from './site-contract.ts';

/** Units that are wanted: used, in trays of covers, for breakage and put by, by name. */
export type UnitsWanted = readonly ({ readonly unit: string } & Pick<NumbersOf<'job-unit'>, 'toBuy' | 'unitsUsed'>)[];

/** What was delivered, thing by thing and measure by measure, against what the job wants. `used`: all but units. */
export function deliveriesOf(
  log: readonly LogEntry[],
  used: readonly UsedThing[],
  units: UnitsWanted,
  book: Book
): DeliveryQuantities[] {
  const groups = new Map<string, (LogEntry & Delivered)[]>();
  for (const entry of log) {
    if (entry.kind !== 'delivered') continue;
    const name = `${entry.thing}\n${entry.measure}`;
    groups.set(name, [...(groups.get(name) ?? []), entry]);
  }
  return [...groups.values()].map((entries, index) => {
    const { name, thing, measure } = entries[0]!;
    const page = book.page('delivery', `/deliveries/${index}`);
    const loads = entries.map(entry => loadOf(entry));
    const delivered = page.put('delivered', total(loads)!, measure);
    const wanted = neededOf(entries[0]!, used, units);
    if (wanted !== undefined) page.put('short', subtract(page.put('needed', wanted, measure), delivered), measure);
    return { id: thing, thing: name, measure, ...page.numbers };
  });
}

/** By the pack: their count times what one holds. */
function loadOf({ date, amount, measure, packs }: LogEntry & Delivered): Expression {
  if (packs === undefined) return given(`delivered on ${date}`, amount, measure);
  const word = packs.word.replace('-', ' ');
  return multiply(given(`${word}s on ${date}`, packs.count, ''), given(`one ${word} holds`, packs.holds, measure));
}

function neededOf(delivered: Delivered, used: readonly UsedThing[], units: UnitsWanted): Expression | undefined {
  return delivered.thing.startsWith('unit:') ? unitsNeeded(delivered.name, units) : wantedOf(delivered, used);
}

function total([first, ...others]: readonly Expression[]): Expression | undefined {
  if (first === undefined) return undefined;
  return others.length === 0 ? multiply(plainNumber(1), first) : sum(first, ...others);
}

/** Where nothing is bought besides, what is used is all that is wanted. */
function unitsNeeded(name: string, units: UnitsWanted): Expression | undefined {
  const index = units.findIndex(({ unit }) => unit === name);
  const { toBuy, unitsUsed } = units[index] ?? {};
  const [key, value] = toBuy === undefined ? (['unitsUsed', unitsUsed] as const) : (['toBuy', toBuy] as const);
  if (value === undefined) return undefined;
  return total([leaf(`${name} wanted`, value, '', { pointer: `/units/${index}/${key}` })]);
}
