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
      supplierName(line.supplier, deliveryCharges),
      line.proven ? 'yes' : 'no'
    ]),
    ...deliveryCharges
      .filter(({ cost }) => !/^0(?:\.0*)?$/.test(cost))
      .map(({ name, loads, mass, cost }) => [
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
        undefined
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
      'Proven cheapest'
    ],
    rows
  };
}

function measureName(measure: string): string {
  return measure === 'piece' ? 'pieces' : measure === 'm3' ? 'm3 loose' : measure;
}

function supplierName(
  key: string | undefined,
  charges: readonly { readonly supplier: string; readonly name: string }[]
): string | undefined {
  return key === undefined
    ? undefined
    : (charges.find(({ supplier }) => supplier === key)?.name ?? key.replace(/^\w+:/, ''));
}
