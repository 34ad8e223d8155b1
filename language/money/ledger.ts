import type Fraction from 'fraction.js';
import type { Given } from '../job/job.ts';
import type { Money } from '../job/prices.ts';
import {
  divide,
  type Expression,
  given,
  largerOf,
  leaf,
  multiply,
  plainNumber,
  roundedTo,
  roundedUp,
  subtract,
  sum
} from '../quantities/arithmetic.ts';
import type { From, Working } from '../quantities/contract.ts';
import { workingOf } from '../quantities/formula-text.ts';
import { amountOf, exact, type Minor, rounded } from './money.ts';

/** An exact number and the way it came about, both built by the same operation. */
export interface Reckoned {
  readonly exact: Fraction;
  readonly expression: Expression;
}

/** A quantity or count; `measure` is SI, empty for counts, hours and days. */
export function quantity(name: string, value: number, measure: string, from: From): Reckoned {
  return { exact: exact(value), expression: leaf(name, value, measure, from) };
}

/** A quantity from the text, or one assumed in its place; shares and counts have no measure. */
export function written(name: string, is: Given, measure = ''): Reckoned {
  return { exact: exact(is.value), expression: given(name, is, measure) };
}

export function whole(value: number): Reckoned {
  return { exact: exact(value), expression: plainNumber(value) };
}

/** Money as it stands in the text, for one of `per`: of a piece, an hour or a load it is empty. */
export function charge(name: string, money: Money, per = ''): Reckoned {
  const amount = exactAmount(money);
  const { key, written: text, currency } = money;
  const from: From = key === undefined ? { assumed: `taken as ${text}` } : { key };
  const of = leaf(name, amount.valueOf(), per === '' ? currency : `${currency}/${per}`, from);
  return { exact: amount, expression: { ...of, formula: { ...of.formula, written: text } } };
}

function exactAmount({ amount }: Money): Fraction {
  return exact(0).add(amount);
}

export function plus(first: Reckoned, ...others: readonly Reckoned[]): Reckoned {
  return {
    exact: others.reduce((total, one) => total.add(one.exact), first.exact),
    expression: sum(first.expression, ...others.map(({ expression }) => expression))
  };
}

export function less(first: Reckoned, ...others: readonly Reckoned[]): Reckoned {
  return {
    exact: others.reduce((total, one) => total.sub(one.exact), first.exact),
    expression: subtract(first.expression, ...others.map(({ expression }) => expression))
  };
}

export function times(first: Reckoned, ...others: readonly Reckoned[]): Reckoned {
  return {
    exact: others.reduce((product, one) => product.mul(one.exact), first.exact),
    expression: multiply(first.expression, ...others.map(({ expression }) => expression))
  };
}

/** The caller has seen to it that `by` is not nought. */
export function over(upper: Reckoned, by: Reckoned): Reckoned {
  return { exact: upper.exact.div(by.exact), expression: divide(upper.expression, by.expression) };
}

/** Up to the next whole count, but for a hair. */
export function up(count: Reckoned): Reckoned {
  const expression = roundedUp(count.expression);
  return { exact: exact(expression.value), expression };
}

export function larger(first: Reckoned, ...others: readonly Reckoned[]): Reckoned {
  return {
    exact: others.reduce((most, one) => (one.exact.compare(most) > 0 ? one.exact : most), first.exact),
    expression: largerOf(first.expression, ...others.map(({ expression }) => expression))
  };
}

const ROUNDING = 'so that the parts come to the whole to the last digit';

/** Amounts of money that were put down, each rounded once, with its working: by JSON pointer from the job. */
export class Ledger {
  readonly currency: string;
  readonly #expressions = new Map<string, Expression>();

  constructor(currency: string) {
    this.currency = currency;
  }

  /** Rounds an amount and keeps its working. */
  put(pointer: string, amount: Reckoned): Minor {
    const minor = rounded(amount.exact);
    this.#expressions.set(pointer, roundedTo(amountOf(minor).valueOf(), amount.expression));
    return minor;
  }

  /** A sum of amounts that were put down: nothing is left to round. Of none and of one alone there is no working. */
  sum(pointer: string, amounts: readonly Reckoned[]): Minor {
    const [first, ...others] = amounts;
    if (first === undefined) return 0n;
    const total = plus(first, ...others);
    if (others.length > 0) this.#expressions.set(pointer, total.expression);
    return rounded(total.exact);
  }

  /** An amount less others that were put down: nothing is left to round. */
  difference(pointer: string, first: Reckoned, others: readonly Reckoned[]): Minor {
    const left = less(first, ...others);
    if (others.length > 0) this.#expressions.set(pointer, left.expression);
    return rounded(left.exact);
  }

  /**
   * The part of an amount that goes to one place, by its weight. What its exact share lacks so that all parts come to the
   * whole stands in the working.
   */
  share(pointer: string, amount: Reckoned, weight: Reckoned, allWeights: Reckoned, part: Minor): void {
    const share = over(times(amount, weight), allWeights);
    const lacking = amountOf(part).sub(share.exact);
    const expression = lacking.equals(0)
      ? share.expression
      : sum(share.expression, leaf('rounding', lacking.valueOf(), this.currency, { assumed: ROUNDING }));
    this.#expressions.set(pointer, { ...expression, value: amountOf(part).valueOf() });
  }

  /** An amount that was put down, as a value of another working. */
  named(name: string, minor: Minor, pointer: string): Reckoned {
    const amount = amountOf(minor);
    return { exact: amount, expression: leaf(name, amount.valueOf(), this.currency, { pointer }) };
  }

  get workings(): Record<string, Working> {
    return Object.fromEntries([...this.#expressions].map(([pointer, amount]) => [pointer, workingOf(amount)]));
  }
}
