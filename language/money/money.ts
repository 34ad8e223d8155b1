import Fraction from 'fraction.js';

/**
 * Money that is counted: whole hundredths of its currency, cents or pence. Sums in the text, shares and prices for a
 * measure are exact fractions of a whole currency until {@link rounded}, the one place where money is rounded.
 */
export type Minor = bigint;

/** Every currency that the language knows has hundredths. */
const MINOR_IN_ONE = 100n;

/** A number as the decimal that it prints as: 0.18 is eighteen hundredths. It has to be finite. */
export function exact(value: number): Fraction {
  const [digits, power = '0'] = String(value).split('e');
  return new Fraction(digits!).mul(new Fraction(10).pow(Number(power))!);
}

/** Hundredths as an exact amount of the currency. */
export function amountOf(minor: Minor): Fraction {
  return new Fraction(minor, MINOR_IN_ONE);
}

/** An exact amount of a currency in whole hundredths: half a hundredth goes away from nought. */
export function rounded(amount: Fraction): Minor {
  const { n: numerator, d: denominator, s: sign } = amount.mul(MINOR_IN_ONE);
  const whole = (2n * numerator + denominator) / (2n * denominator);
  return sign < 0n ? -whole : whole;
}

/**
 * An amount over parts by their weights, so that the parts come to the whole to the last digit: what is left after
 * rounding down goes, a hundredth each, to the largest remainders, of equal ones to the first. Weights that come to
 * nought count alike.
 */
export function split(whole: Minor, weights: readonly Fraction[]): Minor[] {
  const all = weights.reduce((sum, weight) => sum.add(weight), new Fraction(0));
  if (all.equals(0) && weights.length > 0)
    return split(
      whole,
      weights.map(() => new Fraction(1))
    );
  const exactly = weights.map(weight => new Fraction(whole).mul(weight).div(all));
  const shares = exactly.map(share => {
    const down = floor(share);
    return { down, remainder: share.sub(down) };
  });
  const left = shares.reduce((sum, { down }) => sum - down, whole);
  const largest = shares
    .map((_, index) => index)
    .sort((a, b) => shares[b]!.remainder.compare(shares[a]!.remainder) || a - b)
    .slice(0, Number(left));
  const more = new Set(largest);
  return shares.map(({ down }, index) => (more.has(index) ? down + 1n : down));
}

function floor({ n: numerator, d: denominator, s: sign }: Fraction): bigint {
  return sign < 0n ? -((numerator + denominator - 1n) / denominator) : numerator / denominator;
}

export function sumOf(amounts: readonly Minor[]): Minor {
  return amounts.reduce((sum, amount) => sum + amount, 0n);
}

/** For the JSON: `-1234.56`. */
export function decimalText(minor: Minor): string {
  const digits = (minor < 0n ? -minor : minor).toString().padStart(3, '0');
  return `${minor < 0n ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

/** Hundredths of a decimal text that {@link decimalText} wrote. */
export function minorOf(text: string): Minor {
  return BigInt(text.replace('.', ''));
}

/** As printed in a table whose head tells the currency: `1,234.56`. */
export function grouped(minor: Minor): string {
  return decimalText(minor).replace(/\B(?=(?:\d{3})+\.)/g, ',');
}

/** As printed: `1,234.56 USD`. */
export function moneyText(minor: Minor, currency: string): string {
  return `${grouped(minor)} ${currency}`;
}
