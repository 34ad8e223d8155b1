import type { Ledger } from '../money/ledger.ts';
import { decimalText, minorOf } from '../money/money.ts';
import type { Order } from './order.ts';
import type { DeliveryChargeQuantities, OrderCost } from './order-contract.ts';
import { namedCost, type OrderLine } from './order-lines.ts';
import { taxInSum } from './tax-basis.ts';

/** What the order comes to: all of its amounts, and the bound of the search, stand on one basis. */
export function orderCost(
  lines: readonly OrderLine[],
  deliveries: readonly DeliveryChargeQuantities[],
  order: Order,
  ledger: Ledger
): OrderCost {
  const goods = ledger.sum(
    '/orderCost/goods',
    lines.flatMap(({ cost }, index) => (cost === undefined ? [] : namedCost(ledger, index, cost)))
  );
  const charges = deliveries.map(({ name, cost }, index) =>
    ledger.named(`delivery from ${name}`, minorOf(cost), `/deliveryCharges/${index}/cost`)
  );
  const delivery = ledger.sum('/orderCost/delivery', charges);
  const total = ledger.sum('/orderCost/total', [
    ledger.named('goods', goods, '/orderCost/goods'),
    ledger.named('delivery', delivery, '/orderCost/delivery')
  ]);
  const gap = order.parts.reduce((all, { cost, bound }) => all + cost - bound, 0n);
  const deposits = ledger.sum('/orderCost/deposits', depositsOf(lines, ledger));
  return {
    currency: ledger.currency,
    tax: taxInSum([
      ...lines.map(({ quantities }) => quantities.tax),
      ...deliveries.filter(({ cost }) => minorOf(cost) !== 0n).map(({ tax }) => tax)
    ]),
    goods: decimalText(goods),
    delivery: decimalText(delivery),
    total: decimalText(total),
    bound: decimalText(total - gap),
    proven: order.parts.every(({ proven }) => proven),
    ...(deposits === 0n ? {} : { deposits: decimalText(deposits) })
  };
}

function depositsOf(lines: readonly OrderLine[], ledger: Ledger) {
  const all = lines.flatMap(({ deposit }, index) => (deposit === undefined ? [] : [{ deposit, index }]));
  return all.map(({ deposit, index }, at) => ledger.named(`deposit ${at + 1}`, deposit, `/order/${index}/deposit`));
}
