import type Fraction from 'fraction.js';
import { type Minor } from '../money/money.ts';
import type { Pack } from './order-problem.ts';

/** Hundredths for one, as a fraction of whole numbers. */
export interface Price {
  readonly upper: bigint;
  readonly lower: bigint;
  /** The same as a double, for bounds. */
  readonly each: number;
}

/** Counts of a pack between which one price holds for each. */
export interface PriceRange extends Price {
  readonly least: number;
  readonly most: number;
}

/** A price in whole currency, in hundredths. */
export function priceOf(each: Fraction): Price {
  const hundredths = each.mul(100);
  return { upper: hundredths.s * hundredths.n, lower: hundredths.d, each: hundredths.valueOf() };
}

/** The counts that a pack is sold in, with their prices; nought is none of them. */
export function priceRanges({ prices, least }: Pick<Pack, 'prices' | 'least'>): PriceRange[] {
  return prices.flatMap(({ from, each }, index) => {
    const range = {
      least: Math.max(1, from, least),
      most: (prices[index + 1]?.from ?? Infinity) - 1,
      ...priceOf(each)
    };
    return range.least <= range.most ? [range] : [];
  });
}

/** What so many cost at one price, rounded once: half a hundredth goes up. */
export function costAt({ upper, lower }: Price, count: number): Minor {
  return (2n * upper * BigInt(count) + lower) / (2n * lower);
}

/** The price for so many; undefined where so few are not sold. */
export function rangeFor(ranges: readonly PriceRange[], count: number): PriceRange | undefined {
  return ranges.find(({ least, most }) => count >= least && count <= most);
}

/** What a line of so many packs costs; undefined where so few, or so many, are not sold. */
export function costOfPacks(ranges: readonly PriceRange[], count: number): Minor | undefined {
  if (count === 0) return 0n;
  const range = rangeFor(ranges, count);
  return range && costAt(range, count);
}

/** Whether rounding a line can change what it costs. */
export function isRounded(ranges: readonly PriceRange[]): boolean {
  return ranges.some(({ lower }) => lower !== 1n);
}
