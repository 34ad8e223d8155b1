import { charge, quantity, type Reckoned, times } from '../pricing/ledger.ts';
import type { Offer } from './offers.ts';

/** What so many packs, or steps, cost. */
export function costOf({ prices, step, measure, way }: Offer, count: Reckoned): Reckoned {
  const { price } = prices.findLast(({ from }) => from <= count.expression.value) ?? prices[0]!;
  if (step === undefined) return times(count, charge(`price of one ${way.word.replace('-of', '')}`, price));
  const one = quantity(
    'one step',
    step.value,
    measure,
    step.key === undefined ? { assumed: step.written } : { key: step.key }
  );
  return times(count, one, charge('price', price, measure));
}
