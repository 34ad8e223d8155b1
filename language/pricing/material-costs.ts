import type { OrderedDelivery, OrderedItem, OrderedPacks } from './cost-inputs.ts';
import type { CostSheet } from './cost-sheet.ts';
import { charge, exactAmount, plus, quantity, type Reckoned, times } from './ledger.ts';

/** What is bought, a line for each thing. What is on hand costs nothing and has no line. */
export function addMaterials(sheet: CostSheet, ordered: readonly OrderedItem[]): void {
  for (const { thing, name, packs, tax, shares } of ordered) {
    if (packs === undefined) {
      sheet.leaveOut(name, 'no price', thing);
      continue;
    }
    if (!packs.every(({ price }) => sheet.counts(name, price))) continue;
    const [first, ...others] = packs.map(each => costOfPacks(each, thing));
    if (first === undefined) continue;
    sheet.add({
      id: `material/${name}`,
      kind: 'material',
      title: name,
      amount: sheet.withoutTax(name, plus(first, ...others), tax),
      shares,
      place: { work: 'other', title: name }
    });
  }
}

function costOfPacks({ words, amount, measure, price }: OrderedPacks, thing: string): Reckoned {
  const from = { assumed: `the cheapest order that covers the need of ${thing.replace(/^.*:/, '')}` };
  const bought = quantity(measure === '' ? `number of ${words}` : `bought ${words}`, amount, measure, from);
  return times(bought, charge(`price ${words}`, price, measure));
}

export function addDeliveries(sheet: CostSheet, deliveries: readonly OrderedDelivery[]): void {
  for (const { supplier, name, loads, charge: money, tax } of deliveries) {
    const title = `Delivery from ${name}`;
    if (loads === 0 || !sheet.counts(title, money)) continue;
    const counted = quantity('loads', loads, '', { assumed: `the cheapest order from ${name}` });
    sheet.add({
      id: `delivery/${supplier.replace(/^.*:/, '')}`,
      kind: 'delivery',
      title,
      amount: sheet.withoutTax(title.toLowerCase(), times(counted, charge('charge for a load', money)), tax),
      shares: [],
      place: { work: 'delivery' }
    });
  }
}

/** Deposits for pallets and bags that are given back: no cost. */
export function depositsOf(sheet: CostSheet, ordered: readonly OrderedItem[]): Reckoned[] {
  return ordered.flatMap(({ name, packs = [] }) =>
    packs.flatMap(({ words, amount, deposit }) => {
      if (deposit?.currency !== sheet.ledger.currency || exactAmount(deposit).equals(0)) return [];
      const count = quantity(`number of ${words} of ${name}`, amount, '', { assumed: 'as ordered' });
      return [times(count, charge(`deposit ${words} of ${name}`, deposit))];
    })
  );
}
