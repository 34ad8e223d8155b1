import type { Key } from '../job/job.ts';
import type { NumbersOf } from '../quantities/catalogue.ts';
import type { Refusal } from './reckoned-order.ts';
import type { TaxIn, TaxInSum } from './tax-basis.ts';
import type { NeedWork, SoldBy, UsedThing } from './used.ts';

/** An amount of money for the JSON: `1234.56`. */
export type Decimal = string;

/** What is to be bought of one thing for the whole job. */
export interface NeedQuantities {
  readonly id: Key;
  readonly item: string;
  readonly kind: UsedThing['kind'];
  /** In every measure that it can be sold by and that is known; volumes are loose. */
  readonly in: readonly (NumbersOf<'need'> & { readonly measure: SoldBy })[];
  /** Where it goes, with the amount before allowances; `from` is the number that it was taken from. */
  readonly for: readonly {
    readonly area?: Key;
    readonly drain?: Key;
    readonly work: NeedWork;
    readonly side?: string;
    readonly amount?: number;
    readonly measure?: SoldBy;
    readonly from?: string;
  }[];
  /** Ways to buy it, each by itself; none where it has no price or nothing is to be bought. */
  readonly choices: readonly ChoiceQuantities[];
  readonly assumptions: readonly string[];
}

/** How it is sold. */
export interface SoldWords {
  /** `bag of 0.5 cu ft`, `loose`. */
  readonly pack: string;
  /** Place of the price. */
  readonly sold: Key;
  readonly measure: SoldBy;
  readonly supplier?: Key;
  /** Whether tax is in the cost; absent: not said. */
  readonly tax?: TaxIn;
}

/** The need covered in one way alone. */
export interface ChoiceQuantities extends NumbersOf<'choice'>, SoldWords {
  readonly packHolds: number;
  readonly cost: Decimal;
  /** What bringing this alone costs, where its supplier tells. */
  readonly delivery?: Decimal;
  /** Its supplier brings no such order, and why. */
  readonly notTaken?: Refusal;
}

/** A line of the order: packs of one kind for one item. Of a pack of several sizes each item has a line, the first with its cost. */
export interface OrderQuantities extends NumbersOf<'order'>, Omit<SoldWords, 'measure'> {
  readonly id: Key;
  readonly item: string;
  readonly needMeasure: SoldBy;
  /** Absent on further lines of a pack of several sizes. */
  readonly cost?: Decimal;
  readonly priced?: PriceSource;
  /** For pallets and bags, given back, as written; no part of the cost. */
  readonly deposit?: Decimal;
  /** No cheaper order covers what is bought together with it. */
  readonly proven: boolean;
  /** No load, or no order that the supplier takes, holds this: bringing it is not in the cost. */
  readonly notBrought?: true;
}

/** What one supplier brings. */
export interface DeliveryChargeQuantities extends NumbersOf<'delivery-charge'> {
  readonly supplier: Key;
  readonly name: string;
  /** What is bought there. */
  readonly goods: Decimal;
  readonly cost: Decimal;
  readonly tax?: TaxIn;
}

/** Of which day a price is, as `2026-03-01`, until which day it holds, and who says so: as far as it is told. */
export interface PriceSource {
  readonly on?: string;
  readonly until?: string;
  readonly accordingTo?: string;
}

export interface OrderCost {
  readonly currency: string;
  /** Whether tax is in all of these sums. */
  readonly tax: TaxInSum;
  readonly goods: Decimal;
  readonly delivery: Decimal;
  readonly total: Decimal;
  /** No order costs less than this; the total where that is proven. */
  readonly bound: Decimal;
  readonly proven: boolean;
  /** Given back, and in no sum. */
  readonly deposits?: Decimal;
}

/** What the job needs and what to buy for it: a part of the job's JSON. */
export interface BuyingQuantities {
  readonly needs?: readonly NeedQuantities[];
  readonly order?: readonly OrderQuantities[];
  readonly deliveryCharges?: readonly DeliveryChargeQuantities[];
  readonly orderCost?: OrderCost;
  /** What the order takes for granted. */
  readonly orderAssumptions?: readonly string[];
}
