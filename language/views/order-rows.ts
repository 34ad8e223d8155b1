import type { TaxIn } from '../buying/tax-basis.ts';
import { nameIn } from '../job/key-names.ts';
import type { JobQuantities } from '../quantities/contract.ts';

/** A table for programs and spreadsheets: heads, and rows of texts and numbers. Money stands as decimal text. */
export interface Rows {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly (string | number | undefined)[])[];
}

/** Columns that hold money. */
export const MONEY_HEADS: ReadonlySet<string> = new Set(['Cost', 'Deposit']);

/** A row for each line of the order, then one for each delivery; amounts in SI, the measure beside them. */
export function orderRows(jobs: readonly JobQuantities[]): Rows {
  const rows = jobs.flatMap(({ title, order = [], deliveryCharges = [], orderCost }) => [
    ...order.map(line => [
      title,
      line.item,
      line.need,
      measureName(line.needMeasure),
      line.count,
      line.pack,
      line.packHolds,
      line.amount,
      line.left,
      line.mass,
      line.cost,
      line.deposit,
      orderCost?.currency,
      line.supplier === undefined ? undefined : nameIn(line.supplier),
      line.proven ? 'yes' : 'no',
      TAX_IN[line.tax ?? 'not said'],
      line.priced?.on,
      line.priced?.until,
      line.priced?.accordingTo
    ]),
    ...deliveryCharges
      .filter(({ cost }) => !/^0(?:\.0*)?$/.test(cost))
      .map(({ name, loads, mass, cost, tax }) => [
        title,
        `Delivery from ${name}`,
        ...[undefined, undefined],
        loads,
        'load',
        ...[undefined, undefined, undefined],
        mass,
        cost,
        undefined,
        orderCost?.currency,
        name,
        undefined,
        TAX_IN[tax ?? 'not said'],
        ...[undefined, undefined, undefined]
      ])
  ]);
  return {
    heads: [
      'Job',
      'Item',
      'Needed',
      'In',
      'Buy',
      'Sold as',
      'One holds',
      'That is',
      'Left over',
      'Weight, kg',
      'Cost',
      'Deposit',
      'Currency',
      'From',
      'Proven cheapest',
      'Tax in the cost',
      'Price of the day',
      'Price holds until',
      'Price according to'
    ],
    rows
  };
}

function measureName(measure: string): string {
  return measure === 'piece' ? 'pieces' : measure === 'm3' ? 'm3 loose' : measure;
}

const TAX_IN: Readonly<Record<TaxIn | 'not said', string>> = {
  included: 'yes',
  added: 'no',
  'taken-off': 'no',
  'not said': 'not said'
};
