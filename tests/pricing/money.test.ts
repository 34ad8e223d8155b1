// Exact money, held against decimal.js.
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { MEASURES } from '../../language/measures/measures.ts';
import { amountOf, decimalText, exact, grouped, moneyText, rounded, split, sumOf } from '../../language/money/money.ts';

const SEED = { seed: 20260302, numRuns: 500 };
const Precise = Decimal.clone({ precision: 200, rounding: Decimal.ROUND_HALF_UP });
const decimal = fc
  .tuple(fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }), fc.integer({ min: 0, max: 8 }))
  .map(([digits, places]) => new Precise(digits.toString()).div(new Precise(10).pow(places)).toFixed());
const count = fc.integer({ min: 0, max: 100_000 });

describe('one rounding place', () => {
  test.each([
    ['0.005', '0.01'],
    ['-0.005', '-0.01'],
    ['0.0049999999', '0.00'],
    ['2.675', '2.68'],
    ['1.005', '1.01'],
    ['4000/3', '1333.33'],
    ['-1/600', '0.00'],
    ['99999999999999999999.995', '100000000000000000000.00']
  ])('%s is %s', (amount, text) => {
    expect(decimalText(rounded(new Fraction(amount)))).toBe(text);
  });

  test('sums and products of decimals come to what decimal.js says', () => {
    fc.assert(
      fc.property(decimal, decimal, decimal, count, (a, b, c, times) => {
        const ours = rounded(new Fraction(a).mul(b).add(new Fraction(c).mul(times)));
        const theirs = new Precise(a).mul(b).add(new Precise(c).mul(times));
        expect(decimalText(ours)).toBe(theirs.toFixed(2).replace(/^-0\.00$/, '0.00'));
      }),
      SEED
    );
  });

  test('a quotient is rounded from its exact value', () => {
    fc.assert(
      fc.property(decimal, fc.integer({ min: 1, max: 9999 }), (a, by) => {
        const theirs = new Precise(a).div(by);
        expect(decimalText(rounded(new Fraction(a).div(by)))).toBe(theirs.toFixed(2).replace(/^-0\.00$/, '0.00'));
      }),
      SEED
    );
  });

  test('a number counts as the decimal that it prints as', () => {
    expect(exact(0.18).equals('9/50')).toBe(true);
    expect(exact(1e-7).equals('1/10000000')).toBe(true);
    expect(exact(2.5e21).equals('2500000000000000000000')).toBe(true);
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }), value => {
        expect(exact(value).equals(new Fraction(new Precise(value).toFixed()))).toBe(true);
      }),
      SEED
    );
  });
});

describe('an amount over parts', () => {
  test('goes to the largest remainders, of equal ones to the first', () => {
    const over = (whole: bigint, ...weights: number[]): bigint[] => split(whole, weights.map(exact));
    expect(over(100n, 1, 1, 1)).toEqual([34n, 33n, 33n]);
    expect(over(-100n, 1, 1, 1)).toEqual([-33n, -33n, -34n]);
    expect(over(5n, 0.1, 0.2, 0.7)).toEqual([1n, 1n, 3n]);
    expect(over(7n, 0, 0)).toEqual([4n, 3n]);
    expect(over(7n)).toEqual([]);
  });

  test('comes to the whole to the last digit, each part within a hundredth of its exact share', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }),
        fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 12 }),
        (whole, weights) => {
          const all = weights.reduce((sum, weight) => sum + weight, 0);
          const parts = split(whole, weights.map(exact));
          expect(sumOf(parts)).toBe(whole);
          parts.forEach((part, index) => {
            const share =
              all === 0
                ? new Precise(whole.toString()).div(weights.length)
                : new Precise(whole.toString()).mul(weights[index]!).div(all);
            expect(new Precise(part.toString()).sub(share).abs().lessThan(1)).toBe(true);
            if (all > 0 && weights[index] === 0) expect(part).toBe(0n);
          });
        }
      ),
      SEED
    );
  });
});

describe('print', () => {
  test.each([
    [123456n, '1234.56', '1,234.56'],
    [-123456789n, '-1234567.89', '-1,234,567.89'],
    [5n, '0.05', '0.05'],
    [-5n, '-0.05', '-0.05'],
    [0n, '0.00', '0.00'],
    [99999n, '999.99', '999.99'],
    [100000n, '1000.00', '1,000.00']
  ])('%s hundredths', (minor, json, shown) => {
    expect(decimalText(minor)).toBe(json);
    expect(grouped(minor)).toBe(shown);
    expect(moneyText(minor, 'USD')).toBe(`${shown} USD`);
    expect(rounded(amountOf(minor))).toBe(minor);
  });

  test('is the same for every currency that the language knows', () => {
    const currencies = [...MEASURES.values()]
      .map(({ dimensions }) => Object.keys(dimensions))
      .filter(([only]) => /^[A-Z]{3}$/.test(only ?? ''));
    // Each of these has hundredths (ISO 4217); one that has not needs its own count of decimals.
    expect(currencies.flat()).toEqual(['USD', 'GBP', 'EUR', 'CAD', 'AUD', 'NZD']);
  });
});
