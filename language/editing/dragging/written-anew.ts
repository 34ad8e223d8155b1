import Fraction from 'fraction.js';
import type { WrittenNumber } from '../../lowering/handles/written-number.ts';
import { INCH } from '../../measures/measures.ts';
import type { DecimalStyle, NumberStyle, TapeStyle, Worded } from './number-style.ts';

/** A number as it is written anew. */
export interface Anew {
  readonly text: string;
  /** It takes its measure from its list; a nought takes none. */
  readonly bare: boolean;
  /** SI, with its sign. */
  readonly value: Fraction;
  /** The measure at its end, where it has one. */
  readonly measure?: string;
}

const FOOT = INCH.mul(12);

/** The least by which a number of a style can differ, SI. */
export function stepOfStyle(style: NumberStyle): Fraction {
  if (style.form === 'tape') return INCH.div(style.finest);
  return style.measures.at(-1)!.factor.div(10 ** style.most);
}

/** A number of the text with another value, SI, to the nearest step; undefined where it stays as it is. */
export function writtenAnew(number: WrittenNumber, style: NumberStyle, to: number): Anew | undefined {
  const step = stepOfStyle(style);
  if (Math.abs(to - number.value.valueOf()) <= step.valueOf() / 2) return undefined;
  const value = step.mul(Math.round(to / step.valueOf()));
  return written(value, style, number.minus === '' ? '-' : number.minus);
}

/** A value that is whole in steps of its style. */
export function written(value: Fraction, style: NumberStyle, minus = '-'): Anew {
  if (value.equals(0)) return { text: '0', bare: true, value };
  const size = value.abs();
  const anew = style.form === 'tape' ? onTape(size, style) : inDecimals(size, style);
  return { ...anew, value, text: (value.compare(0) < 0 ? minus : '') + anew.text };
}

type Words = Omit<Anew, 'value'>;

function inDecimals(size: Fraction, style: DecimalStyle): Words {
  const { measures, between, bare } = style;
  let left = size;
  const texts: string[] = [];
  for (const [index, { word, space, factor }] of measures.entries()) {
    const isLast = index === measures.length - 1;
    const count = isLast ? left.div(factor) : left.div(factor).floor();
    left = left.sub(count.mul(factor));
    if (count.equals(0) && !(isLast && texts.length === 0)) continue;
    const number = isLast ? decimal(count, style) : count.toString();
    texts.push(bare ? number : number + space + word);
  }
  return { text: texts.join(between), bare, ...(bare ? {} : { measure: measures.at(-1)!.word }) };
}

function decimal(value: Fraction, { least, most, isPointFirst }: DecimalStyle): string {
  const digits = value
    .mul(10 ** most)
    .round()
    .toString()
    .padStart(most + 1, '0');
  const whole = digits.slice(0, digits.length - most);
  let decimals = digits.slice(digits.length - most);
  while (decimals.length > least && decimals.endsWith('0')) decimals = decimals.slice(0, -1);
  if (decimals === '') return whole;
  return `${isPointFirst && whole === '0' ? '' : whole}.${decimals}`;
}

function onTape(size: Fraction, style: TapeStyle): Words {
  const { foot, inch, one, bare } = style;
  if (one !== undefined) {
    const count = size.div(one.factor);
    if (one.factor.equals(INCH) || count.d === 1n || (style.inParts && count.d <= MOST_PARTS)) {
      const number = mixed(count, style);
      return bare ? { text: number, bare } : { text: number + one.space + one.word, bare, measure: one.word };
    }
  }
  const whole = size.div(FOOT).floor();
  const rest = size.sub(whole.mul(FOOT)).div(INCH);
  const parts: [Fraction, Worded][] = [
    [whole, foot],
    [rest, inch]
  ];
  const said = parts.filter(([count]) => !count.equals(0));
  return {
    text: said.map(([count, { word, space }]) => mixed(count, style) + space + word).join(style.between),
    bare: false,
    measure: said.at(-1)![1].word
  };
}

/** Eighths of a foot are the finest that anyone writes. */
const MOST_PARTS = 8n;

/** `6 1/2`, `6-1/2`, `6½`. */
function mixed(count: Fraction, { joint, inSigns }: TapeStyle): string {
  const whole = count.floor();
  const rest = count.sub(whole);
  if (rest.equals(0)) return whole.toString();
  const fraction = rest.toFraction();
  const sign = inSigns ? SIGN_OF.get(fraction) : undefined;
  if (whole.equals(0)) return sign ?? fraction;
  return sign === undefined ? `${whole.toString()}${joint}${fraction}` : `${whole.toString()}${sign}`;
}

const SIGN_OF: ReadonlyMap<string, string> = new Map([
  ['1/2', '½'],
  ['1/4', '¼'],
  ['3/4', '¾'],
  ['1/3', '⅓'],
  ['2/3', '⅔'],
  ['1/8', '⅛'],
  ['3/8', '⅜'],
  ['5/8', '⅝'],
  ['7/8', '⅞']
]);
