import type Fraction from 'fraction.js';

/** What is to be bought, what it is sold in, and on what terms: amounts of each item in a measure of its own. */
export interface OrderProblem {
  /** Of each item, more than nought. */
  readonly needs: readonly number[];
  readonly packs: readonly Pack[];
  readonly suppliers: readonly Terms[];
}

/** One way in which something is sold, in whole packs; loose in steps, each of which counts as a pack. */
export interface Pack {
  /** What one holds: of a pack of several sizes more than one item. */
  readonly holds: readonly { readonly item: number; readonly amount: number }[];
  /** Price of each pack when so many or more are bought, for all of them; the least first. In whole currency. */
  readonly prices: readonly { readonly from: number; readonly each: Fraction }[];
  /** Fewer are not sold; nought where one is. */
  readonly least: number;
  /** Loose: a load can end anywhere in it. */
  readonly loose: boolean;
  /** Index of the supplier whose terms hold. */
  readonly supplier?: number;
  /** One pack in kg and m3 loose; nought where that is not known. */
  readonly mass: number;
  readonly volume: number;
}

/** What bringing things costs, and what is not brought: money in whole currency, kg, m3. */
export interface Terms {
  /** For each load; without a limit of the load for the whole order. */
  readonly charge: Fraction;
  readonly loadMass?: number;
  readonly loadVolume?: number;
  readonly leastOrder?: Fraction;
  readonly leastMass?: number;
  /** From goods of so much on bringing costs nothing. */
  readonly freeFrom?: Fraction;
}

/**
 * Share of a need, of a load, of what is left over: conversions and sums of doubles miss no more than this, and nothing is
 * bought for it. The model of the solver allows the same, so that what covers a need here covers it there.
 */
export const HAIR = 1e-9;

/** What no order costs less than is a sum of doubles: it may be off by so much of itself. */
const ROUNDING = 1e-9;

/** A bound in hundredths, less what its doubles may be off by. */
export function sureBound(bound: number): number {
  return bound - ROUNDING * Math.max(1, Math.abs(bound));
}

/** Whether an amount covers a need, but for a hair. */
export function covers(amount: number, need: number): boolean {
  return amount >= need * (1 - HAIR);
}

/** Whole packs or loads that a share of one comes to; `of` 18.0000000001 it is 18. */
export function wholesIn(of: number): number {
  return Math.max(0, Math.ceil(of - HAIR * Math.max(1, of)));
}
