import Fraction from 'fraction.js';
import type { System } from '../../job/job.ts';
import { TAPE } from '../../lowering/amounts.ts';
import type { WrittenNumber, WrittenPart } from '../../lowering/handles/written-number.ts';
import { INCH, measureNamed } from '../../measures/measures.ts';

/** How a person wrote a number: it is written anew in the same way. */
export type NumberStyle = DecimalStyle | TapeStyle;

interface Measured {
  /** It takes its measure from the list that it stands in. */
  readonly bare: boolean;
}

/** In one measure, with decimals; in several the last has them: `5 m 40 cm`. */
export interface DecimalStyle extends Measured {
  readonly form: 'decimal';
  readonly measures: readonly Worded[];
  readonly between: string;
  /** So many are always written, and as many as are needed up to the most. */
  readonly least: number;
  readonly most: number;
  /** `.5` */
  readonly isPointFirst: boolean;
}

/** In feet and inches, with fractions; `one`: the measure that was written alone, and serves as long as it comes out even. */
export interface TapeStyle extends Measured {
  readonly form: 'tape';
  readonly foot: Worded;
  readonly inch: Worded;
  readonly one?: Worded;
  readonly between: string;
  /** What stands between a whole number and its fraction. */
  readonly joint: string;
  /** Fractions as one sign, where there is one: `½`. */
  readonly inSigns: boolean;
  /** A single number of feet may have a fraction. */
  readonly inParts: boolean;
  /** Parts of an inch. */
  readonly finest: number;
}

/** A measure as it is spelled, and the space before it. */
export interface Worded {
  readonly word: string;
  readonly space: string;
  /** SI value of one. */
  readonly factor: Fraction;
}

const FOOT = INCH.mul(12);
/** Read off a tape: sixteenths of an inch. */
const SIXTEENTHS = 16;
/** A millimetre is the least that is read off a tape; of an inch and of a foot the decimals that come next. */
const MILLIMETRE = 0.001;

/** The style of a number; undefined of a nought without a measure. */
export function styleOf({ parts, between, given }: WrittenNumber): NumberStyle | undefined {
  const measures = parts.map(part => wordedOf(part, given));
  if (measures.some(measure => measure === undefined)) return undefined;
  const worded = measures as Worded[];
  const bare = parts.length === 1 && parts[0]!.measure === undefined;
  const last = parts.at(-1)!.number;
  const isTape = worded.every(({ word }) => TAPE.test(word));
  const isDecimal = last.includes('.') && !FRACTION.test(last);
  if (isTape && !isDecimal) return tapeStyle(worded, parts, { between, bare });
  return decimalStyle(worded, last, { between, bare });
}

/** Where nothing says how: as the system has it. */
export function usualStyle(system: System): NumberStyle {
  if (system === 'metric') {
    const metre = { word: 'm', space: ' ', factor: new Fraction(1) };
    return { form: 'decimal', bare: false, measures: [metre], between: ' ', least: 2, most: 3, isPointFirst: false };
  }
  return {
    form: 'tape',
    bare: false,
    foot: { word: 'ft', space: ' ', factor: FOOT },
    inch: { word: 'in', space: ' ', factor: INCH },
    between: ' ',
    joint: ' ',
    inSigns: false,
    inParts: false,
    finest: SIXTEENTHS
  };
}

/** Decimals of a number whose last place may be as much as `step`, SI. */
export function decimalStyle(
  measures: readonly Worded[],
  number: string,
  { between, bare }: { readonly between: string; readonly bare: boolean },
  step = MILLIMETRE
): DecimalStyle {
  const least = FRACTION.test(number) ? 0 : (number.split('.')[1]?.length ?? 0);
  const needed = Math.ceil(Math.log10(measures.at(-1)!.factor.valueOf() / step) - 1e-9);
  return {
    form: 'decimal',
    bare,
    measures,
    between,
    least,
    most: Math.max(least, needed, 0),
    isPointFirst: number.startsWith('.')
  };
}

function tapeStyle(
  worded: readonly Worded[],
  parts: readonly WrittenPart[],
  { between, bare }: { readonly between: string; readonly bare: boolean }
): TapeStyle {
  const usual = usualStyle('imperial') as TapeStyle;
  const of = (factor: Fraction): Worded | undefined => worded.find(one => one.factor.equals(factor));
  const [foot, inch] = [of(FOOT), of(INCH)];
  const numbers = parts.map(({ number }) => number).join(' ');
  const parted = /[0-9]([ \t]+|-)[0-9]+\//.exec(numbers)?.[1];
  const divisor = Number(/\/([0-9]+)$/.exec(parts.at(-1)!.number)?.[1] ?? 1);
  return {
    form: 'tape',
    bare,
    foot: foot ?? { ...usual.foot, ...(inch && { word: FEET_FOR.get(inch.word) ?? 'ft', space: inch.space }) },
    inch: inch ?? { ...usual.inch, ...(foot && { word: INCHES_FOR.get(foot.word) ?? 'in', space: foot.space }) },
    ...(parts.length > 1 ? {} : { one: worded[0]! }),
    between,
    joint: parted ?? ' ',
    inSigns: SIGNS.test(numbers),
    inParts: FRACTION.test(numbers),
    finest: inch !== undefined && divisor > SIXTEENTHS && divisor <= FINEST ? divisor : SIXTEENTHS
  };
}

function wordedOf({ measure, space }: WrittenPart, given: string | undefined): Worded | undefined {
  const word = measure ?? given;
  const known = word === undefined ? undefined : measureNamed(word);
  return word === undefined || known === undefined
    ? undefined
    : { word, space: measure === undefined ? spaceBefore(word) : space, factor: known.factor };
}

/** Marks of feet and inches stand close. */
export function spaceBefore(measure: string): string {
  return /^[a-z]/i.test(measure) ? ' ' : '';
}

const SIGNS = /[½¼¾⅓⅔⅛⅜⅝⅞]/;
const FRACTION = /[/½¼¾⅓⅔⅛⅜⅝⅞]/;
/** Finer marks are on no tape. */
const FINEST = 64;

/** The spelling of inches that goes with one of feet. */
const INCHES_FOR: ReadonlyMap<string, string> = new Map([
  ["'", '"'],
  ['′', '″'],
  ['’', '”'],
  ['feet', 'inches'],
  ['foot', 'inches']
]);
const FEET_FOR: ReadonlyMap<string, string> = new Map(
  [...INCHES_FOR].filter(([feet]) => feet !== 'foot').map(([feet, inches]) => [inches, feet])
);
