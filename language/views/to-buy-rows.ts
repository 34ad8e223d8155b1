import type { NeedQuantities, OrderQuantities } from '../buying/order-contract.ts';
import type { System } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import { printAs } from '../measures/print.ts';
import { grouped, minorOf } from '../money/money.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import { LOOSE, PIECES } from './need-words.ts';
import { leftText, soldText } from './sold-words.ts';

/** What to buy, as a reader has it: a row of cells for each line of the order, in the job's measures. */
export interface ToBuyRows {
  readonly heads: readonly { readonly head: string; readonly right?: boolean }[];
  readonly rows: readonly { readonly line: OrderQuantities; readonly cells: readonly string[] }[];
}

export function toBuyRows(quantities: JobQuantities, system: System): ToBuyRows {
  const { needs = [], order = [] } = quantities;
  const pieceOf = (id: string): string => PIECES[needs.find(need => need.id === id)?.kind ?? 'unit'];
  const from = fromColumn(quantities);
  const rows = order.map((line, index) => {
    const { id, item, need, needMeasure, pack, supplier, count, amount, left, mass, cost, notBrought } = line;
    // Each item has its need once, and what is left of it once.
    const isFirst = order.findIndex(other => other.id === id) === index;
    const cells = [
      item,
      isFirst ? soldText(need, needMeasure, system, pieceOf(id)) : '',
      pack === 'loose' ? '' : printAs('count', count, system),
      pack + (notBrought === true ? ' (bringing it not counted)' : ''),
      ...from.cell(supplier),
      soldText(amount, needMeasure, system, pieceOf(id)),
      isFirst ? leftText(left, needMeasure, system, pieceOf(id)) : '',
      mass === undefined ? '' : soldText(mass, 'kg', system),
      cost === undefined ? 'in the pack above' : grouped(minorOf(cost))
    ];
    return { line, cells };
  });
  return {
    heads: [
      { head: 'Item' },
      { head: 'Needed', right: true },
      { head: 'Buy', right: true },
      { head: 'Sold as' },
      ...from.head,
      { head: 'That is', right: true },
      { head: 'Left over', right: true },
      { head: 'Weight', right: true },
      { head: moneyHead('Cost', quantities), right: true }
    ],
    rows
  };
}

/** What is still to be bought of something, in each measure it may be sold by: `2.77 t, or 1.57 m3 loose`. */
export function amountsToBuy({ kind, in: amounts }: NeedQuantities, system: System): string {
  return amounts
    .map(({ toBuy, measure }) => soldText(toBuy, measure, system, PIECES[kind]) + LOOSE[measure])
    .join(', or ');
}

/** From whom, where anything is from anyone. */
export function fromColumn({ needs = [], order = [] }: JobQuantities): {
  readonly head: readonly { readonly head: string }[];
  readonly cell: (supplier: string | undefined) => string[];
} {
  const isTold = [...order, ...needs.flatMap(({ choices }) => choices)].some(({ supplier }) => supplier !== undefined);
  return isTold
    ? { head: [{ head: 'From' }], cell: key => [key === undefined ? '' : nameIn(key)] }
    : { head: [], cell: () => [] };
}

export function moneyHead(words: string, { orderCost }: Pick<JobQuantities, 'orderCost'>): string {
  return orderCost === undefined ? words : `${words}, ${orderCost.currency}`;
}
