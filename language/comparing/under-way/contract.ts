import type { Key } from '../../job/job.ts';
import type { ChangePlaces } from '../contract.ts';
import type { Stage } from '../../job/log.ts';
import type { Hold } from '../../schedule/contract.ts';
import type { Decimal } from '../../buying/order-contract.ts';

/** What a change does to a job that is under way: the log of the newer text, taken as built by the older one. */
export interface UnderWay {
  /** The last day that the log tells of. */
  readonly until: string;
  readonly built: readonly BuiltPart[];
  readonly bought: readonly Bought[];
  readonly again: Again;
  /** Absent where nothing names an amount of money. */
  readonly price?: ChangePrice;
}

/** Where the areas stand is known to who has the texts. */
export type Built = Omit<BuiltPart, 'places'>;

/** A stage of an area, or of one material of its edging, that the log tells as done. */
export interface BuiltPart {
  readonly stage: Stage;
  /** As the newer text calls it; of an area that is gone as the older one does. */
  readonly area: Key;
  readonly name: string;
  /** Of edging. */
  readonly material?: string;
  readonly amounts: readonly BuiltAmount[];
  /** Of the area, in either text. */
  readonly places: ChangePlaces;
  /** Why it can't stay as it is where it lies. */
  readonly because: readonly string[];
  /** Of edging: what comes out of straight runs and of curves, m, and in how many pieces where their length is known. */
  readonly out?: readonly EdgingOut[];
}

export interface EdgingOut {
  readonly shape: 'straight' | 'curve';
  readonly length: number;
  readonly pieces?: number;
}

/** SI. Built is what stays, what is made otherwise and what comes out together. */
export interface BuiltAmount {
  readonly measure: 'm' | 'm2' | 'm3' | 'kg';
  readonly built: number;
  readonly stays: number;
  readonly madeOtherwise: number;
  readonly comesOut: number;
  /** What the newer text has besides what stays and what is made otherwise. */
  readonly toBuild: number;
}

/** What was delivered or lay on hand, and what is still to buy, against what is needed of it now. */
export interface Bought {
  readonly thing: Key;
  readonly item: string;
  /** A unit of the same name is of another size now. */
  readonly isAsItWas?: true;
  readonly measure: string;
  /** What the older text wanted; absent where it had none of it. */
  readonly wantedBefore?: number;
  readonly wanted: number;
  readonly have: number;
  /** It was told as delivered or on hand; else it is taken as bought for what is built. */
  readonly isTold: boolean;
  /** Wanted again for what comes out and can't be used again. */
  readonly again: number;
  readonly toBuy: number;
  /** Of what is there more than is wanted. */
  readonly over: number;
  /** Of it what the older text wanted. */
  readonly noLongerWanted: number;
  /** The packs in which what is still to buy is bought, as they are called. */
  readonly packs: readonly { readonly count: number; readonly pack: string; readonly amount: number }[];
  /** Batches that were delivered, where more of a unit is to buy. */
  readonly otherThanBatches: readonly string[];
}

/** What the crew comes back to. */
export interface Again {
  readonly tasks: readonly { readonly id: string; readonly title: string; readonly hours?: number }[];
  /** Hours of one person. */
  readonly hours: number;
  /** Working days of the crew, parts of a day counted as one. */
  readonly days: number;
  readonly hires: readonly { readonly title: string; readonly days: number; readonly cost?: Decimal }[];
  readonly holds: readonly Hold[];
}

/** What the change comes to: costs and, for the client, price without tax, tax, and what is to pay. */
export interface ChangePrice {
  readonly currency: string;
  /** The whole job as the older text has it. */
  readonly before: Omit<ChangePriceLine, 'id'>;
  readonly lines: readonly ChangePriceLine[];
  readonly together: Omit<ChangePriceLine, 'id'>;
  /**
   * What is in none of it: taking out what is built, and filling what was dug in vain; goods that come out, since they are
   * used again.
   */
  readonly without: readonly ('taking-out' | 'used-again' | 'filling')[];
  /** What the newer text has no price for, and the older one had not to have. */
  readonly unpriced: readonly string[];
}

export interface ChangePriceLine {
  /**
   * The whole job in both texts; work on what comes out; goods that are there and not wanted any more; carting and hire
   * that are spent; hire and loads once more.
   */
  readonly id: 'whole' | 'lost' | 'goods' | 'spent' | 'again';
  readonly costs: Decimal;
  readonly price: Decimal;
  readonly tax: Decimal;
  readonly toPay: Decimal;
}
