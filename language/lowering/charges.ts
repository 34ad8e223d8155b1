import Fraction from 'fraction.js';
import { AstUtils, type AstNode } from 'langium';
import type { Key } from '../job/job.ts';
import type { Money } from '../job/prices.ts';
import { kindOf, measureText, type Dimensions } from '../measures/measures.ts';
import { hasCurrencyBeside } from '../syntax/currency-first.ts';
import { isNegative, isQuantity } from '../syntax/generated/ast.ts';
import type { Amount, Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing, type SaidFix } from './said-fix.ts';

/** A sum of money, and the SI measure that it is asked for one of: `s`, `kg`, `m3`; empty for money alone. */
export interface Charge {
  readonly exact: Fraction;
  readonly currency: string;
  readonly by: string;
  readonly key: Key;
  readonly written: string;
}

/** What stands where money is wanted, with an example: `an amount of money for an hour`, `24 GBP per hour`. */
export interface Wanting {
  readonly words: string;
  readonly number: string;
  readonly per?: string;
  /** Measures that it may be asked for; money alone where nothing is told. */
  readonly by?: readonly string[];
  /** What lies below nought is taken off. */
  readonly mayBeTakenOff?: true;
}

/** Money as it stands in a text, all of it in one currency. */
export class Charges {
  private readonly context: Context;
  /** What the job says, else that of the first money in it. */
  private currency: string | undefined;
  private readonly isSaid: boolean;
  private readonly usual: string;

  /** `usual`: the currency of examples where none is told. */
  constructor(context: Context, currency: string | undefined, usual: string) {
    this.context = context;
    this.currency = currency;
    this.isSaid = currency !== undefined;
    this.usual = usual;
  }

  /** Undefined when a fault was told. */
  read(text: SpecText, key: Key, node: Expression | undefined, wanting: Wanting): Charge | undefined {
    const amount = node && this.context.amount(text, key, node);
    if (node === undefined || amount === undefined) return undefined;
    const money = moneyIn(amount.dimensions);
    if (money === undefined || !(wanting.by ?? ['']).includes(money.by))
      return this.noMoney(text, key, node, amount, wanting);
    const { currency, by } = money;
    if (amount.value.compare(0) < 0 && wanting.mayBeTakenOff === undefined)
      return this.context.fault(
        text,
        key,
        node,
        'out-of-range',
        `\`${writtenOf(node)}\` can't be meant: nothing below nought can stand here.`,
        { fixes: isNegative(node) ? [writing(writtenOf(node.value))] : [] }
      );
    if (!this.isOfJob(text, key, node, currency)) return undefined;
    this.context.place(key, text, node);
    return { exact: amount.value, currency, by, key, written: writtenOf(node) };
  }

  private noMoney(
    text: SpecText,
    key: Key,
    node: Expression,
    { dimensions, bare }: Amount,
    { words, number, per }: Wanting
  ): undefined {
    // `£24`: the sign is told already.
    if (bare && isCurrencyTold(text, node)) return undefined;
    const money = moneyIn(dimensions);
    const currency = money?.currency ?? this.currency ?? this.usual;
    const of = (amount: string): string => `${amount} ${currency}${per === undefined ? '' : ` ${per}`}`;
    const written = writtenOf(node);
    const wants = `${words}, such as \`${of(number)}\``;
    if (bare)
      return this.context.fault(text, key, node, 'measure-missing', `\`${written}\` has no currency. Write ${wants}.`, {
        fixes: isQuantity(node) ? [writing(of(written))] : []
      });
    const fixes: SaidFix[] =
      money?.by === '' && per !== undefined && isQuantity(node) ? [writing(`${written} ${per}`)] : [];
    if (money === undefined && /\bpounds?\b/i.test(written) && isQuantity(node))
      return this.context.fault(text, key, node, 'wrong-kind', `Pounds are a weight here. Write ${wants}.`, {
        fixes: [writing(of(/^[0-9.]+/.exec(written)?.[0] ?? number))]
      });
    const message =
      money === undefined || money.by === ''
        ? `\`${written}\` is ${money === undefined ? kindOf(dimensions) : 'an amount of money'}; here stands ${wants}.`
        : `\`${written}\` is money for something else. Write ${wants}.`;
    return this.context.fault(text, key, node, 'wrong-kind', message, { fixes });
  }

  /** All money of a job is in one currency: nothing is exchanged. */
  private isOfJob(text: SpecText, key: Key, node: AstNode, currency: string): boolean {
    this.currency ??= currency;
    if (currency === this.currency) return true;
    const said = `${this.isSaid ? 'The job' : "The job's other money"} is in ${this.currency}`;
    this.context.fault(
      text,
      key,
      node,
      'other-currency',
      `${said}, and \`${writtenOf(node)}\` is not. Write it in ${this.currency}: nothing is exchanged here.`
    );
    return false;
  }
}

/** Whether a number without a currency has one beside it that can't stand there. */
export function isCurrencyTold({ parsed }: SpecText, { $cstNode }: AstNode): boolean {
  return $cstNode !== undefined && hasCurrencyBeside(parsed.text, $cstNode.offset, $cstNode.end);
}

/** As one of a measure: `factor` is the SI value of one of it. */
export function moneyOf({ exact, currency, key, written }: Charge, factor: Fraction | number = 1): Money {
  return { amount: exactText(exact.mul(factor)), currency, key, written };
}

/** A decimal where it has an end, else a fraction. */
function exactText(value: Fraction): string {
  const { s, n, d } = value;
  let digits = 0;
  for (let rest = 1n; rest % d !== 0n && digits <= MOST_DECIMALS; rest *= 10n) digits++;
  const sign = s < 0n ? '-' : '';
  if (digits > MOST_DECIMALS) return `${sign}${n}/${d}`;
  const places = Math.max(0, digits);
  const whole = ((n * 10n ** BigInt(places)) / d).toString().padStart(places + 1, '0');
  return sign + (places === 0 ? whole : `${whole.slice(0, -places)}.${whole.slice(-places)}`);
}

/** Longer decimals are better read as fractions. */
const MOST_DECIMALS = 30;

function moneyIn(dimensions: Dimensions): { readonly currency: string; readonly by: string } | undefined {
  const [currency, ...others] = Object.keys(dimensions).filter(name => /^[A-Z]{3}$/.test(name));
  if (currency === undefined || others.length > 0 || dimensions[currency] !== 1) return undefined;
  const rest = Object.entries(dimensions).filter(([name]) => name !== currency);
  return { currency, by: measureText(Object.fromEntries(rest.map(([name, power]) => [name, -power]))) };
}

/** What stands behind `per` in a sum and is counted, not measured: a piece, a load. */
export function eachIn(node: Expression): 'piece' | 'load' | undefined {
  return [node, ...AstUtils.streamAllContents(node)].flatMap(each => (isQuantity(each) ? (each.each ?? []) : []))[0];
}
