import type { Minor } from '../money/money.ts';
import type { OrderProblem, Pack, Terms } from './order-problem.ts';
import { priceOf, type Price, type PriceRange, priceRanges } from './price-ranges.ts';

/** What is to be bought as searches read it: money in hundredths, worked out once. */
export interface PricedProblem extends OrderProblem {
  readonly packs: readonly PricedPack[];
  readonly suppliers: readonly PricedTerms[];
}

export interface PricedPack extends Pack {
  readonly ranges: readonly PriceRange[];
}

export interface PricedTerms extends Terms {
  /** Of one load. */
  readonly load: Price;
  /** The least goods that come to the least order, and to where bringing is free. */
  readonly leastGoods?: Minor;
  readonly freeGoods?: Minor;
}

export function pricedProblem({ needs, packs, suppliers }: OrderProblem): PricedProblem {
  return {
    needs,
    packs: packs.map(pack => ({ ...pack, ranges: priceRanges(pack) })),
    suppliers: suppliers.map(pricedTerms)
  };
}

export function pricedTerms(terms: Terms): PricedTerms {
  const { charge, leastOrder, freeFrom } = terms;
  return {
    ...terms,
    load: priceOf(charge),
    ...(leastOrder === undefined ? {} : { leastGoods: leastComingTo(priceOf(leastOrder)) }),
    ...(freeFrom === undefined ? {} : { freeGoods: leastComingTo(priceOf(freeFrom)) })
  };
}

/** Whole hundredths. */
function leastComingTo({ upper, lower }: Price): Minor {
  return upper <= 0n ? 0n : (upper + lower - 1n) / lower;
}
