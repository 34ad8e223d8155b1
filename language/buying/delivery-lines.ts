import { charge, quantity, times } from '../money/ledger.ts';
import { decimalText } from '../money/money.ts';
import { divide, given, measured, multiply, plainNumber, roundedUp, sum } from '../quantities/arithmetic.ts';
import type { DeliveryChargeQuantities } from './order-contract.ts';
import { type FoundOrder, namedCost, type OrderLine } from './order-lines.ts';
import { amountOn, taxInAmount } from './tax-basis.ts';

/** What each supplier brings, and what that costs. */
export function deliveryLines(lines: readonly OrderLine[], found: FoundOrder): DeliveryChargeQuantities[] {
  const {
    job,
    offered: { suppliers, basis },
    order,
    book,
    ledger
  } = found;
  const brought = suppliers
    .map((supplier, at) => ({ supplier, delivery: order.deliveries[at]! }))
    .filter(({ delivery }) => delivery.loads > 0);
  return brought.map(({ supplier, delivery }, index) => {
    const at = `/deliveryCharges/${index}`;
    const page = book.page('delivery-charge', at);
    const masses = lines.filter(({ offer }) => offer.supplier === supplier).flatMap(({ mass }) => mass ?? []);
    const [first, ...others] = masses;
    const mass =
      first && page.put('mass', others.length === 0 ? multiply(plainNumber(1), first) : sum(first, ...others));
    const { key, loadMass, charge: money, freeFrom } = supplier.delivery!;
    const byMass =
      mass === undefined || loadMass === undefined
        ? undefined
        : roundedUp(divide(mass, given('what a load takes', loadMass, 'kg')));
    const { loads } = delivery;
    page.put('loads', byMass?.value === loads ? byMass : measured('loads of the order', loads, '', job));
    const counted = quantity('loads', loads, '', { pointer: `${at}/loads` });
    const isFree = delivery.cost === 0n && freeFrom !== undefined;
    const each =
      money === undefined || isFree
        ? quantity('charge for a load', 0, ledger.currency, { key: (isFree ? freeFrom.key : undefined) ?? key })
        : charge('charge for a load', money);
    const tax = taxInAmount(basis, supplier.tax);
    const cost = ledger.put(`${at}/cost`, amountOn(basis, times(counted, each), supplier.tax));
    const goods = ledger.sum(
      `${at}/goods`,
      lines.flatMap(({ offer, cost }, at) =>
        offer.supplier === supplier && cost !== undefined ? namedCost(ledger, at, cost) : []
      )
    );
    return {
      supplier: supplier.key,
      name: supplier.name,
      ...page.numbers,
      goods: decimalText(goods),
      cost: decimalText(cost),
      ...(tax === undefined ? {} : { tax })
    };
  });
}
