import type { Given } from '../job/job.ts';
import { combine, type Dimensions, measureNamed, measureText } from '../measures/measures.ts';
import type { From } from './contract.ts';

/** A number with its measure and the way it came about, all three built by the same operation. */
export interface Expression {
  readonly value: number;
  readonly dimensions: Dimensions;
  readonly formula: Formula;
}

/** The way a number came about. */
export type Formula =
  | NamedValue
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'sum'; readonly terms: readonly Part[] }
  | { readonly kind: 'product'; readonly terms: readonly Part[] }
  | { readonly kind: 'call'; readonly name: Call; readonly of: readonly Formula[] };

interface NamedValue {
  readonly kind: 'name';
  readonly name: string;
  readonly value: number;
  readonly measure: string;
  readonly from: From;
  /** As written in the text. */
  readonly written?: string;
}

/** One part of a sum or product; `inverse`: subtracted, or divided by. */
export interface Part {
  readonly inverse: boolean;
  readonly of: Formula;
}

export type Call = 'larger of' | 'rounded up' | 'rounded to hundredths';

/**
 * A count that exceeds a whole number by no more than this is that whole number: a length that is met exactly must not
 * ask for one more piece because of the last digit of a conversion.
 */
export const COUNT_TOLERANCE = 1e-6;

/** A value with a name. `measure` is SI (`m`, `m2`, `kg/m3`; empty for shares and counts). */
export function leaf(name: string, value: number, measure: string, from: From): Expression & { formula: NamedValue } {
  return {
    value,
    dimensions: dimensionsOf(measure),
    formula: { kind: 'name', name: formulaName(name), value, measure, from }
  };
}

/** A quantity from the text, or one assumed in its place. */
export function given(name: string, quantity: Given, measure: string): Expression {
  const { value, dimensions, formula } = leaf(name, quantity.value, measure, sourceOf(quantity));
  return { value, dimensions, formula: { ...formula, written: quantity.written } };
}

/** Where a given quantity stands in the text, or why it is assumed. */
function sourceOf({ key, assumed, written }: Given): From {
  if (assumed !== undefined) {
    const { because, source } = assumed;
    return source === undefined ? { assumed: because } : { assumed: because, source };
  }
  return key === undefined ? { assumed: `taken as ${written}` } : { key };
}

/** A value measured on a shape, known by its key. */
export function measured(name: string, value: number, measure: string, shape: string): Expression {
  return leaf(name, value, measure, { shape });
}

/** Nought, because the job does not say: `why` says so in the working. */
export function nothing(name: string, measure: string, why: string): Expression {
  return leaf(name, 0, measure, { assumed: why });
}

/** A plain number that needs no source, such as the 1 of `1 + swell`. */
export function plainNumber(value: number): Expression {
  return { value, dimensions: {}, formula: { kind: 'number', value } };
}

/** All of one measure. */
export function sum(first: Expression, ...others: readonly Expression[]): Expression {
  const all = [first, ...others];
  sameMeasure(all);
  return {
    value: all.reduce((total, one) => total + one.value, 0),
    dimensions: first.dimensions,
    formula: series(
      'sum',
      all.map(one => ({ inverse: false, of: one.formula }))
    )
  };
}

/** The first less all the others, all of one measure. */
export function subtract(first: Expression, ...others: readonly Expression[]): Expression {
  sameMeasure([first, ...others]);
  return {
    value: others.reduce((left, one) => left - one.value, first.value),
    dimensions: first.dimensions,
    formula: series('sum', [
      { inverse: false, of: first.formula },
      ...others.map(one => ({ inverse: true, of: one.formula }))
    ])
  };
}

export function multiply(first: Expression, ...others: readonly Expression[]): Expression {
  const all = [first, ...others];
  return {
    value: all.reduce((product, one) => product * one.value, 1),
    dimensions: others.reduce((dimensions, one) => combine(dimensions, one.dimensions, 1), first.dimensions),
    formula: series(
      'product',
      all.map(one => ({ inverse: false, of: one.formula }))
    )
  };
}

/** The caller has seen to it that `by` is not nought. */
export function divide(upper: Expression, by: Expression): Expression {
  return {
    value: upper.value / by.value,
    dimensions: combine(upper.dimensions, by.dimensions, -1),
    formula: series('product', [
      { inverse: false, of: upper.formula },
      { inverse: true, of: by.formula }
    ])
  };
}

/** The larger of nought and a value, where it could be less than nought. */
export function notBelowNought(expression: Expression): Expression {
  if (expression.value >= 0) return expression;
  return { ...expression, value: 0, formula: call('larger of', [plainNumber(0), expression]) };
}

/** The larger of values of one measure. */
export function largerOf(first: Expression, ...others: readonly Expression[]): Expression {
  if (others.length === 0) return first;
  const all = [first, ...others];
  sameMeasure(all);
  return { ...first, value: Math.max(...all.map(one => one.value)), formula: call('larger of', all) };
}

/** Up to the next whole count, but for a hair ({@link COUNT_TOLERANCE}). */
export function roundedUp(count: Expression): Expression {
  sameMeasure([count, plainNumber(0)]);
  return { ...count, value: Math.ceil(count.value - COUNT_TOLERANCE), formula: call('rounded up', [count]) };
}

/** Money as it was rounded; the caller has rounded it exactly. */
export function roundedTo(value: number, amount: Expression): Expression {
  return { ...amount, value, formula: call('rounded to hundredths', [amount]) };
}

/** SI measure as printed in the JSON. */
export function measureOf(expression: Expression): string {
  return measureText(expression.dimensions);
}

function call(name: Call, all: readonly Expression[]): Formula {
  return { kind: 'call', name, of: all.map(one => one.formula) };
}

/** A sum within a sum, or a product within a product, joins it where no bracket is needed. */
function series(kind: 'sum' | 'product', parts: readonly Part[]): Formula {
  const terms = parts.flatMap(part => (part.of.kind === kind && !part.inverse ? part.of.terms : [part]));
  const [only] = terms;
  return terms.length === 1 && only !== undefined && !only.inverse ? only.of : { kind, terms };
}

function sameMeasure(all: readonly Expression[]): void {
  const measures = new Set(all.map(measureOf));
  if (measures.size > 1) throw new Error(`Measures that do not agree: ${[...measures].join(', ')}`);
}

const dimensionsByMeasure = new Map<string, Dimensions>([['', {}]]);

function dimensionsOf(measure: string): Dimensions {
  const known = dimensionsByMeasure.get(measure) ?? measureNamed(measure)?.dimensions;
  if (known === undefined) throw new Error(`No such measure: ${measure}`);
  dimensionsByMeasure.set(measure, known);
  return known;
}

/** Plain words with single spaces, so that a formula can be read back: letters, digits, hyphens, dots, apostrophes. */
function formulaName(name: string): string {
  return name
    .replace(/[^\p{L}\p{M}\p{N}.'’-]+/gu, ' ')
    .replace(/(^| )[-.]+(?= |$)/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
}
