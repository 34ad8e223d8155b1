import type Fraction from 'fraction.js';
import type { AstNode } from 'langium';
import type { Key } from '../job/job.ts';
import type { Money } from '../job/prices.ts';
import { combine, kindOf, measureText, type Dimensions } from '../measures/measures.ts';
import type { Amount, Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';

/** More money than this is a slip of the key. */
const MOST_MONEY = 1e9;

/** What money can be asked for, in SI. */
export type MoneyPer = 'kg' | 'm3' | 'm2' | 'm';

/** Money for one of `per`. */
export interface MoneyRate {
  readonly money: Money;
  readonly per: MoneyPer;
}

/** Reads amounts of money, all in one currency: that of the job, else the one that is written first. */
export class MoneyReader {
  private readonly context: Context;
  private first: { readonly currency: string; readonly text: SpecText; readonly node: AstNode } | undefined;

  /** `ofJob`: where the job says its currency. */
  constructor(
    context: Context,
    ofJob?: { readonly currency: string; readonly text: SpecText; readonly node: AstNode }
  ) {
    this.context = context;
    this.first = ofJob;
  }

  /** An amount, nought or more; undefined when a fault was told. `example` is how it is written. */
  money(text: SpecText, key: Key, node: Expression | undefined, example = '4.98 USD'): Money | undefined {
    const read = this.read(text, key, node, example);
    if (read === undefined) return undefined;
    const per = measureText(read.per);
    if (per === '') return this.sound(text, key, node!, read);
    return this.context.fault(
      text,
      key,
      node!,
      'wrong-kind',
      `\`${writtenOf(node!)}\` is money for each ${wordOf(per)}; here stands money alone, such as \`${example}\`.`
    );
  }

  /** An amount for so much of a measure: `38 USD per short ton`. */
  rate(text: SpecText, key: Key, node: Expression | undefined, example: string): MoneyRate | undefined {
    const read = this.read(text, key, node, example);
    if (read === undefined) return undefined;
    const per = measureText(read.per);
    if (isMoneyPer(per)) {
      const money = this.sound(text, key, node!, read);
      return money && { money, per };
    }
    const written = writtenOf(node!);
    const message =
      per === ''
        ? `\`${written}\` does not say for how much. Write \`${example}\`.`
        : `\`${written}\` is money for each ${wordOf(per)}; write it by mass, volume, area or length, such as \`${example}\`.`;
    return this.context.fault(text, key, node!, per === '' ? 'measure-missing' : 'wrong-kind', message);
  }

  /** The amount with what it is asked for, by its SI measure. */
  private read(
    text: SpecText,
    key: Key,
    node: Expression | undefined,
    example: string
  ): (Amount & { readonly currency: string; readonly per: Dimensions }) | undefined {
    const { context } = this;
    const amount = context.amount(text, key, node);
    if (node === undefined) context.breaks(key);
    if (node === undefined || amount === undefined) return undefined;
    const { dimensions } = amount;
    const currencies = Object.keys(dimensions).filter(isCurrency);
    const [currency] = currencies;
    const written = writtenOf(node);
    if (amount.bare) {
      const fixes = this.first === undefined ? [] : [writing(`${written} ${this.first.currency}`)];
      const message = `\`${written}\` has no currency. Write \`${written} ${this.first?.currency ?? 'USD'}\`.`;
      return context.fault(text, key, node, 'measure-missing', message, { fixes });
    }
    if (currency === undefined || currencies.length > 1 || dimensions[currency] !== 1) {
      const message = `\`${written}\` is ${kindOf(dimensions)}; here stands money, such as \`${example}\`.`;
      return context.fault(text, key, node, 'wrong-kind', message);
    }
    const per = combine({ [currency]: 1 }, dimensions, -1);
    return { ...amount, currency, per };
  }

  private sound(
    text: SpecText,
    key: Key,
    node: Expression,
    { value, currency }: Amount & { readonly currency: string }
  ): Money | undefined {
    const { context } = this;
    const written = writtenOf(node);
    const number = value.valueOf();
    if (number < 0 || number > MOST_MONEY) {
      const why = number < 0 ? "can't be meant: nothing below nought can stand here" : 'is far too large to be meant';
      return context.fault(text, key, node, 'out-of-range', `\`${written}\` ${why}.`);
    }
    this.first ??= { currency, text, node };
    if (currency !== this.first.currency) {
      const message = `This is in ${currency}, and the job in ${this.first.currency}. All prices of a job are in one currency: write this one in ${this.first.currency} too.`;
      const related = [
        { node: this.first.node, text: this.first.text, message: `Here stands ${this.first.currency}.` }
      ];
      return context.fault(text, key, node, 'other-currency', message, { related });
    }
    context.place(key, text, node);
    return { amount: exactText(value), currency, written, key };
  }
}

function isCurrency(name: string): boolean {
  return /^[A-Z]{3}$/.test(name);
}

function isMoneyPer(measure: string): measure is MoneyPer {
  return ['kg', 'm3', 'm2', 'm'].includes(measure);
}

/** An SI measure in words. */
function wordOf(measure: string): string {
  return PER_WORDS[measure] ?? measure;
}

const PER_WORDS: Readonly<Record<string, string>> = {
  kg: 'mass',
  m3: 'volume',
  m2: 'area',
  m: 'length',
  s: 'time'
};

/** `4.98` where it comes to a decimal, else `14/3`. */
export function exactText(value: Fraction): string {
  let { d: divisor } = value;
  let digits = 0;
  for (const factor of [2n, 5n]) {
    let times = 0;
    while (divisor % factor === 0n) {
      divisor /= factor;
      times++;
    }
    digits = Math.max(digits, times);
  }
  return divisor === 1n && digits <= MOST_DECIMALS ? value.toString(digits) : value.toFraction();
}

/** A longer decimal is better read as a fraction. */
const MOST_DECIMALS = 12;
