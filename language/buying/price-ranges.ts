import { type Minor } from '../money/money.ts';
import type { Pack } from './order-problem.ts';

/** Counts of a pack between which one price holds for each. */
export interface PriceRange {
  readonly least: number;
  readonly most: number;
  /** Hundredths for one pack, as a fraction of whole numbers. */
  readonly upper: bigint;
  readonly lower: bigint;
  /** The same as a double, for bounds. */
  readonly each: number;
}

/** The counts that a pack is sold in, with their prices; nought is none of them. */
export function priceRanges({ prices, least }: Pick<Pack, 'prices' | 'least'>): PriceRange[] {
  return prices.flatMap(({ from, each }, index) => {
    const hundredths = each.mul(100);
    const range = {
      least: Math.max(1, from, least),
      most: (prices[index + 1]?.from ?? Infinity) - 1,
      upper: hundredths.s * hundredths.n,
      lower: hundredths.d,
      each: hundredths.valueOf()
    };
    return range.least <= range.most ? [range] : [];
  });
}

/** What so many packs cost at one price, rounded once: half a hundredth goes up. */
export function costAt({ upper, lower }: PriceRange, count: number): Minor {
  return (2n * upper * BigInt(count) + lower) / (2n * lower);
}

/** What a line of so many packs costs; undefined where so few, or so many, are not sold. */
export function costOfPacks(ranges: readonly PriceRange[], count: number): Minor | undefined {
  if (count === 0) return 0n;
  const range = ranges.find(({ least, most }) => count >= least && count <= most);
  return range && costAt(range, count);
}

/** Whether rounding a line can change what it costs. */
export function isRounded(ranges: readonly PriceRange[]): boolean {
  return ranges.some(({ lower }) => lower !== 1n);
}
