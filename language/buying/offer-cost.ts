import type { Given } from '../job/job.ts';
import { charge, type Reckoned, times, written } from '../money/ledger.ts';
import { type Expression, given, plainNumber } from '../quantities/arithmetic.ts';
import type { Offer } from './offers.ts';
import { amountOn, type TaxBasis } from './tax-basis.ts';
import { si } from './used.ts';

/** What so many packs, or steps, cost, on the basis on which all amounts of the order stand. */
export function costOf(offer: Offer, count: Reckoned, basis: TaxBasis): Reckoned {
  return amountOn(basis, priceOf(offer, count), offer.tax);
}

function priceOf({ prices, step, measure, way }: Offer, count: Reckoned): Reckoned {
  const { price } = prices.findLast(({ from }) => from <= count.expression.value) ?? prices[0]!;
  if (step === undefined) return times(count, charge(`price of one ${way.word.replace('-of', '')}`, price));
  return times(count, written('one step', step, measure), charge('price', price, measure));
}

/** What one pack, or one step of what is loose, holds; of what is sold by the piece there is nothing to tell. */
export function oneHolds({ way, measure }: Offer, held: Given): Expression {
  if (way.word === 'piece') return plainNumber(1);
  return given(way.word === 'loose' ? 'one step' : 'what one holds', held, si(measure));
}
