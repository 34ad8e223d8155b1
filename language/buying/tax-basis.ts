import type Fraction from 'fraction.js';
import type { Given } from '../job/job.ts';
import type { TaxWay } from '../job/prices.ts';
import { over, plus, type Reckoned, whole, written } from '../money/ledger.ts';
import { exact } from '../money/money.ts';

/** Whether tax is in an amount of an order: `taken-off` where its price has it in and the amount has not. */
export type TaxIn = TaxWay | 'taken-off';

/** Whether tax is in a sum of an order. */
export type TaxInSum = 'without' | 'with' | 'mixed' | 'not-said';

/** All amounts of an order stand on one basis: where some prices have tax in and some not, it is taken off at this rate. */
export interface TaxBasis {
  /** Absent where all prices are alike, or the job says no tax. */
  readonly takenOff?: Given;
  /** Some prices have tax in and some not. */
  readonly isMixed: boolean;
}

export function taxBasisOf(ways: readonly (TaxWay | undefined)[], rate: Given | undefined): TaxBasis {
  const isMixed = new Set(ways.map(way => way ?? 'added')).size > 1;
  return { isMixed, ...(isMixed && rate !== undefined ? { takenOff: rate } : {}) };
}

/** A price as it counts on that basis. */
export function priceOn({ takenOff }: TaxBasis, price: Fraction, tax: TaxWay | undefined): Fraction {
  return takenOff !== undefined && tax === 'included' ? price.div(exact(takenOff.value).add(1)) : price;
}

/** The same with the way it came about. */
export function amountOn({ takenOff }: TaxBasis, amount: Reckoned, tax: TaxWay | undefined): Reckoned {
  if (takenOff === undefined || tax !== 'included') return amount;
  return over(amount, plus(whole(1), written('tax', takenOff)));
}

export function taxInAmount({ takenOff }: TaxBasis, tax: TaxWay | undefined): TaxIn | undefined {
  return takenOff !== undefined && tax === 'included' ? 'taken-off' : tax;
}

/** Of the amounts that are added up. */
export function taxInSum(amounts: readonly (TaxIn | undefined)[]): TaxInSum {
  if (amounts.includes('included')) return amounts.every(tax => tax === 'included') ? 'with' : 'mixed';
  return amounts.every(tax => tax === undefined) ? 'not-said' : 'without';
}
