import type { NeedQuantities, OrderQuantities } from '../../buying/order-contract.ts';
import { printAs } from '../../measures/print.ts';
import { grouped, minorOf, moneyText } from '../../money/money.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { isUnpriced } from '../need-words.ts';
import { amountsToBuy, moneyHead, toBuyRows } from '../to-buy-rows.ts';
import { type ContentRow, type Contents, group, numberRow, placeOf } from './content-row.ts';

/** What to buy: each line of the order, what has no price, and what bringing it costs. */
export function orderRows(contents: Contents, quantities: JobQuantities): ContentRow[] {
  const { needs = [], order = [], orderCost } = quantities;
  const isLeft = ({ id, in: amounts }: NeedQuantities): boolean =>
    amounts.some(({ toBuy }) => toBuy > 0) && !order.some(line => line.id === id);
  const rows = [
    ...lineRows(contents, quantities),
    ...needs.filter(isLeft).map(need => needRow(contents, need, quantities)),
    ...deliveryRows(contents, quantities)
  ];
  if (orderCost === undefined) return group('order', 'To buy', rows);
  const total = moneyText(minorOf(orderCost.total), orderCost.currency);
  const part = needs.some(need => isUnpriced(need, order)) ? ' for what has a price' : '';
  return group('order', 'Order', rows, `${total}${part}${orderCost.proven ? '' : ' · cheapest order not proven'}`);
}

function lineRows(contents: Contents, quantities: JobQuantities): ContentRow[] {
  const { heads, rows } = toBuyRows(quantities, contents.job.system);
  return rows.map(({ line, cells }): ContentRow => {
    const id = `order/${line.id}/${line.sold}`;
    const place = placeOf(contents, line.sold);
    return {
      id,
      kind: 'order',
      label: line.item,
      value: lineValue(line, cells[heads.findIndex(({ head }) => head === 'That is')]!, quantities, contents),
      ...place,
      // The item is the label.
      inside: heads.flatMap(({ head }, index) => {
        const cell = cells[index]!;
        return index === 0 || cell === '' ? [] : [numberRow(`${id}#${head}`, head, cell, place)];
      })
    };
  });
}

/** `3 × pack layer of 12, 237.00 USD`; `2.00 short tons, loose, 90.00 USD`. */
function lineValue(
  { pack, count, cost }: OrderQuantities,
  amount: string,
  { orderCost }: JobQuantities,
  { job: { system } }: Contents
): string {
  const bought = pack === 'loose' ? `${amount}, loose` : `${printAs('count', count, system)} × ${pack}`;
  return `${bought}, ${cost === undefined ? 'in the pack above' : moneyText(minorOf(cost), orderCost!.currency)}`;
}

function needRow(contents: Contents, need: NeedQuantities, quantities: JobQuantities): ContentRow {
  const id = `order/${need.id}`;
  const place = placeOf(contents, need.id);
  const amount = amountsToBuy(need, contents.job.system);
  const hasNoPrice = quantities.orderCost !== undefined && isUnpriced(need, quantities.order ?? []);
  return {
    id,
    kind: 'order',
    label: need.item,
    value: hasNoPrice ? `${amount}, no price` : amount,
    ...place,
    inside: [
      numberRow(`${id}#Needed`, 'Needed', amount, place),
      ...(hasNoPrice ? [numberRow(`${id}#Cost`, moneyHead('Cost', quantities), 'no price', place)] : [])
    ]
  };
}

function deliveryRows(contents: Contents, quantities: JobQuantities): ContentRow[] {
  const { deliveryCharges = [], orderCost } = quantities;
  return deliveryCharges
    .filter(({ cost }) => minorOf(cost) !== 0n)
    .map(({ supplier, name, loads, cost }): ContentRow => {
      const id = `order/${supplier}`;
      const place = placeOf(contents, supplier);
      const price = moneyText(minorOf(cost), orderCost!.currency);
      return {
        id,
        kind: 'delivery',
        label: `Delivery from ${name}`,
        value: `${loads} ${loads === 1 ? 'load' : 'loads'}, ${price}`,
        ...place,
        inside: [
          numberRow(`${id}#loads`, 'Loads', String(loads), place),
          numberRow(`${id}#cost`, moneyHead('Cost', quantities), grouped(minorOf(cost)), place)
        ]
      };
    });
}
