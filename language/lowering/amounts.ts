import Fraction from 'fraction.js';
import type { AstNode } from 'langium';
import {
  AMBIGUOUS_MEASURES,
  combine,
  kindOf,
  measureNamed,
  measureText,
  type Dimensions
} from '../measures/measures.ts';
import {
  isGroup,
  isNamed,
  isNegative,
  isQuantity,
  type Group,
  type Named,
  type Negative,
  type Part,
  type Quantity,
  type Sum
} from '../syntax/generated/ast.ts';
import { measureBeside } from './missing-measure.ts';
import { readNumber } from './numbers.ts';
import { writing, type SaidFix } from './said-fix.ts';

/** What a sum in the text may be: the parser gives a lone value without a sum around it. */
export type Expression = Sum | Group | Named | Negative | Quantity;

/** An exact amount in SI. `bare`: no measure was written anywhere in it. */
export interface Amount {
  readonly value: Fraction;
  readonly dimensions: Dimensions;
  readonly bare: boolean;
}

/** What the arithmetic needs from outside: the amount of a `let`, and a place for faults. */
export interface AmountContext {
  named(node: Named): Amount | undefined;
  fault(node: AstNode, id: string, message: string, fixes?: readonly SaidFix[]): undefined;
}

/** Works out a sum exactly; undefined when a fault was told. A lone number takes `measure` where the list has one. */
export function amountOf(node: Expression | undefined, context: AmountContext, measure?: string): Amount | undefined {
  // A sum broken off has told its own fault.
  if (node === undefined) return undefined;
  if (isQuantity(node)) return quantity(node, context, measure);
  if (isNamed(node)) return context.named(node);
  if (isGroup(node)) return amountOf(node.value as Expression | undefined, context, node.measure ?? measure);
  if (isNegative(node)) {
    const value = amountOf(node.value as Expression | undefined, context, measure);
    return value && { ...value, value: value.value.neg() };
  }
  return sum(node, context, measure);
}

function sum(node: Sum, context: AmountContext, measure: string | undefined): Amount | undefined {
  const multiplies = node.operator === '*' || node.operator === '/';
  const left = amountOf(node.left as Expression | undefined, context, multiplies ? undefined : measure);
  const right = amountOf(node.right as Expression | undefined, context, multiplies ? undefined : measure);
  if (left === undefined || right === undefined) return undefined;
  if ([left, right].some(({ value }) => value.n > LARGEST || value.d > LARGEST))
    return context.fault(node, 'number-too-large', 'This number has too many digits to be meant.');
  const bare = left.bare && right.bare;
  switch (node.operator) {
    case '*':
      return withMeasure(
        { value: left.value.mul(right.value), dimensions: combine(left.dimensions, right.dimensions, 1), bare },
        measure
      );
    case '/':
      if (right.value.equals(0)) return context.fault(node, 'division-by-nought', 'This divides by nought.');
      return withMeasure(
        { value: left.value.div(right.value), dimensions: combine(left.dimensions, right.dimensions, -1), bare },
        measure
      );
    default: {
      const [one, other] = [measureText(left.dimensions), measureText(right.dimensions)];
      const nought = (amount: Amount): boolean => amount.bare && amount.value.equals(0);
      if (one !== other && !nought(left) && !nought(right))
        return context.fault(
          node,
          'kinds-mixed',
          `This adds ${kindOf(left.dimensions)} and ${kindOf(right.dimensions)}; both must be of one kind.`
        );
      const value = node.operator === '+' ? left.value.add(right.value) : left.value.sub(right.value);
      return { value, dimensions: nought(left) ? right.dimensions : left.dimensions, bare };
    }
  }
}

/** Lengths of the two systems: a tape shows the one or the other. */
export const METRIC = /^(?:mm|cm|m|met(?:re|er)s?)$/i;
export const TAPE = /^(?:in|inch|inches|ft|foot|feet|yd|yards?|['"′″’”]+)$/i;

/** Longer numbers are no measure of a job; sums of them could grow without end. */
export const MOST_DIGITS = 40;
const LARGEST = 10n ** 80n;

/** A bare product or quotient takes the measure of its list, as a bare number does. */
function withMeasure(amount: Amount, measure: string | undefined): Amount {
  const known = amount.bare && measure !== undefined ? measureNamed(measure) : undefined;
  return known === undefined
    ? amount
    : { value: amount.value.mul(known.factor), dimensions: known.dimensions, bare: false };
}

function quantity(node: Quantity, context: AmountContext, listMeasure: string | undefined): Amount | undefined {
  let total: Amount | undefined;
  if (
    node.parts.some(part => METRIC.test(part.measure ?? '')) &&
    node.parts.some(part => TAPE.test(part.measure ?? ''))
  )
    return context.fault(
      node,
      'kinds-mixed',
      'Feet or inches and metres stand in one quantity here. Write it in one of them.'
    );
  for (const part of node.parts) {
    const written = part.measure ?? (node.parts.length === 1 ? listMeasure : undefined);
    const number = readNumber(part.number);
    if (part.number.length > MOST_DIGITS)
      return context.fault(part, 'number-too-large', 'This number has too many digits to be meant.');
    if (number === undefined) {
      // A comma in a number has told its own fault.
      return part.number.includes(',')
        ? undefined
        : context.fault(part, 'division-by-nought', 'This divides by nought.');
    }
    if (isRatioInWords(node))
      return context.fault(
        node,
        'measure-missing',
        `In \`${node.parts.map(({ number, measure = '' }) => `${number} ${measure}`.trim()).join(' ')}\` the \`in\` reads as inches. Write the slope as \`1:${node.parts[1]!.number}\`, or as \`1/4 in per ft\`.`,
        [{ title: `Write \`1:${node.parts[1]!.number}\``, does: `1:${node.parts[1]!.number}` }]
      );
    if (node.parts.length > 1 && written === undefined)
      return context.fault(
        part,
        'measure-missing',
        `\`${part.number}\` has no measure; in \`12 ft 6 in\` every number has one.`,
        partFixes(node, part)
      );
    if (written !== undefined && AMBIGUOUS_MEASURES.has(written.toLowerCase()))
      return context.fault(
        part,
        'ton-alone',
        `\`${written}\` could be three weights. Write \`short ton\` (2,000 lb) or \`tonne\` (1,000 kg).`,
        ['short ton', 'tonne'].map(weight => ({ title: `Write \`${weight}\``, does: `${part.number} ${weight}` }))
      );
    const measure = written === undefined ? undefined : measureNamed(written);
    if (written !== undefined && measure === undefined) return undefined;
    const amount: Amount =
      measure === undefined
        ? { value: number, dimensions: {}, bare: !part.number.includes(':') }
        : { value: number.mul(measure.factor), dimensions: measure.dimensions, bare: false };
    if (total !== undefined && measureText(total.dimensions) !== measureText(amount.dimensions))
      return context.fault(
        part,
        'kinds-mixed',
        `${capital(kindOf(total.dimensions))} and ${kindOf(amount.dimensions)} stand in one quantity here.`
      );
    total = total === undefined ? amount : { ...total, value: total.value.add(amount.value) };
  }
  if (total === undefined || node.per === undefined) return total;
  const per = measureNamed(node.per);
  // A measure that nobody knows has been told where it stands.
  if (per === undefined && !AMBIGUOUS_MEASURES.has(node.per.toLowerCase())) return undefined;
  if (per === undefined)
    return context.fault(
      node,
      'ton-alone',
      `\`${node.per}\` could be three weights. Write \`short ton\` (2,000 lb) or \`tonne\` (1,000 kg).`
    );
  return { value: total.value.div(per.factor), dimensions: combine(total.dimensions, per.dimensions, -1), bare: false };
}

/** `1 in 60`: a slope as it is spoken. */
function isRatioInWords({ parts, per }: Quantity): boolean {
  const [one, other] = parts;
  const isOneInch = one?.number === '1' && one.measure === 'in';
  return isOneInch && parts.length === 2 && other!.measure === undefined && per === undefined;
}

function partFixes(node: Quantity, part: Part): SaidFix[] {
  // Of `19 ft 1 1/ in` nobody can tell which number was meant.
  if (node.parts.filter(({ measure }) => measure === undefined).length > 1) return [];
  const measure = measureBeside(node, part);
  return measure === undefined ? [] : [writing(`${part.number} ${measure}`)];
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
