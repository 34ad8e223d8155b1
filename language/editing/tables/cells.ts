import Fraction from 'fraction.js';
import { MOST_DIGITS } from '../../lowering/amounts.ts';
import { readNumber } from '../../lowering/numbers.ts';
import { measureNamed, measureText } from '../../measures/measures.ts';

/** What a comma in a number says, where a table has any. */
export type Comma = 'decimals' | 'thousands';

/** A number of a table: in one measure, in several as on a tape, or without one. */
export interface Cell {
  readonly isNegative: boolean;
  readonly parts: readonly { readonly number: string; readonly measure?: string }[];
}

/** `12,345.6`, `12 345,6`, `12'345.6`, `3/8`, `6 1/2`, `.5`. */
const NUMBER =
  /\d+(?:[ \t]+|-)\d+\/\d+|\d+[ \t]?[½¼¾⅓⅔⅛⅜⅝⅞]|[½¼¾⅓⅔⅛⅜⅝⅞]|\d+\/\d+|\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?(?!\d)|\d[\d.,]*|[.,]\d+/y;
const MEASURE = /\s*(\p{L}+\.?|''|′′|’’|["'″′’”])/uy;
const GAP = /\s*[-−–]?\s*/y;

/** Reads the text of a cell as a length or a plain number; undefined when it is neither. */
export function readCell(text: string, comma: Comma | undefined): Cell | undefined {
  const written = text.trim();
  const isNegative = /^[-−–]/.test(written);
  const parts: { number: string; measure?: string }[] = [];
  for (let at = isNegative ? 1 : 0; at < written.length;) {
    const gap = matchAt(parts.length === 0 ? /\s*/y : GAP, written, at);
    const number = matchAt(NUMBER, written, at + gap!.length);
    if (number === undefined) return undefined;
    at += gap!.length + number.length;
    const measured = matchAt(MEASURE, written, at);
    const measure = measured === undefined ? undefined : lengthMeasure(measured);
    if (measured !== undefined && measure === undefined) return undefined;
    at += measured?.length ?? 0;
    const plain = inDecimals(number, comma);
    if (plain === undefined || plain.length > MOST_DIGITS || readNumber(plain) === undefined) return undefined;
    parts.push({ number: plain, ...(measure === undefined ? {} : { measure }) });
  }
  const isWhole = parts.length === 1 || parts.every(({ measure }) => measure !== undefined);
  return parts.length > 0 && isWhole ? { isNegative, parts } : undefined;
}

/** What the commas of a table say, told by its own numbers; `unclear` where they could say either. */
export function commaIn(cells: readonly string[]): Comma | undefined | 'unclear' {
  const told = new Set<Comma>();
  let isOpen = false;
  for (const [number] of cells.flatMap(cell => [...cell.matchAll(/\d[\d.,]*|[.,]\d+/g)])) {
    const says = commaSays(number);
    if (says === 'unclear') isOpen = true;
    else if (says !== undefined) told.add(says);
  }
  if (told.size === 2) return 'unclear';
  const [only] = told;
  return only ?? (isOpen ? 'unclear' : undefined);
}

function commaSays(number: string): Comma | undefined | 'unclear' {
  const [commas, points] = [number.split(',').length - 1, number.split('.').length - 1];
  if (commas > 0 && points > 0) return number.lastIndexOf(',') > number.lastIndexOf('.') ? 'decimals' : 'thousands';
  if (commas > 1) return 'thousands';
  if (points > 1) return 'decimals';
  // `1,234` may be either; `0,234`, `12,5` and `1234,567` are decimals.
  const couldBeThousands = /^[1-9]\d{0,2}[.,]\d{3}$/.test(number);
  if (commas === 1) return couldBeThousands ? 'unclear' : 'decimals';
  return points === 1 && !couldBeThousands ? 'thousands' : undefined;
}

/** Without what parts the thousands, and with a point. */
function inDecimals(number: string, comma: Comma | undefined): string | undefined {
  if (/[/½¼¾⅓⅔⅛⅜⅝⅞]/.test(number)) return number;
  const together = number.replace(/[ \u00a0\u2009\u202f'’]/g, '');
  const plain = comma === 'decimals' ? together.replace(/\./g, '').replace(',', '.') : together.replace(/,/g, '');
  return /^\d*\.?\d+$/.test(plain) ? plain.replace(/^\./, '0.') : undefined;
}

/** The length measure of a spelling, in the word that the language prefers. */
export function lengthMeasure(spelling: string): string | undefined {
  const measure = measureNamed(spelling.trim());
  if (measure === undefined || measureText(measure.dimensions) !== 'm') return undefined;
  return WORDS.find(word => measureNamed(word)!.factor.equals(measure.factor));
}

const WORDS = ['in', 'ft', 'yd', 'mm', 'cm', 'm'];

/** In metres; a number without a measure in the one that is given. */
export function metresOf({ isNegative, parts }: Cell, measure: string | undefined): Fraction {
  const total = parts.reduce(
    (sum, part) => sum.add(readNumber(part.number)!.mul(measureNamed(part.measure ?? measure ?? 'm')!.factor)),
    new Fraction(0)
  );
  return isNegative ? total.neg() : total;
}

/** As it is written in a job spec. */
export function writtenCell({ isNegative, parts }: Cell): string {
  const written = parts.map(({ number, measure }) => (measure === undefined ? number : `${number} ${measure}`));
  return `${isNegative ? '-' : ''}${written.join(' ')}`;
}

export function isMeasured({ parts }: Cell): boolean {
  return parts.every(({ measure }) => measure !== undefined);
}

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}
