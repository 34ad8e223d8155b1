import type { OrderedDelivery, OrderedItem, OrderedLine } from './cost-inputs.ts';
import type { CostSheet } from './cost-sheet.ts';
import { plus, type Reckoned } from '../money/ledger.ts';

/** What is bought, a line for each thing. What is on hand costs nothing and has no line. */
export function addMaterials(sheet: CostSheet, ordered: readonly OrderedItem[]): void {
  for (const { thing, name, lines, shares } of ordered) {
    if (lines === undefined) {
      sheet.leaveOut(name, 'no price', thing);
      continue;
    }
    const [first, ...others] = lines.map((line, index) => {
      const words = lines.length === 1 ? `${name} as ordered` : `line ${index + 1} of ${name}`;
      return costOf(sheet, name, words, line);
    });
    if (first === undefined) continue;
    sheet.add({
      id: `material/${name}`,
      kind: 'material',
      title: name,
      amount: plus(first, ...others),
      shares,
      place: { work: 'other', title: name }
    });
  }
}

/** The cost of a line of the order, without tax. */
function costOf(sheet: CostSheet, of: string, words: string, { cost, tax, pointer }: OrderedLine): Reckoned {
  return sheet.withoutTax(of, sheet.ledger.named(words, cost, `${pointer}/cost`), tax);
}

export function addDeliveries(sheet: CostSheet, deliveries: readonly OrderedDelivery[]): void {
  for (const { supplier, name, ...line } of deliveries) {
    if (line.cost === 0n) continue;
    const title = `Delivery from ${name}`;
    sheet.add({
      id: `delivery/${supplier.replace(/^.*:/, '')}`,
      kind: 'delivery',
      title,
      amount: costOf(sheet, `delivery from ${name}`, 'delivery as ordered', line),
      shares: [],
      place: { work: 'delivery' }
    });
  }
}

/** Deposits for pallets and bags that are given back: no cost. */
export function depositsOf({ ledger }: CostSheet, ordered: readonly OrderedItem[]): Reckoned[] {
  return ordered.flatMap(({ name, lines = [] }) =>
    lines.flatMap(({ deposit, pointer }) =>
      deposit === undefined ? [] : [ledger.named(`deposit for ${name}`, deposit, `${pointer}/deposit`)]
    )
  );
}
