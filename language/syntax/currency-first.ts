import { takenOut, writes, type TextFix } from './text-edit.ts';

/** `£24`, `24 £`, `GBP 24`: a currency that does not stand behind its number by its three letters. */
export interface CurrencyFirst {
  readonly example: string;
  readonly fixes: readonly TextFix[];
}

export const CURRENCY_SIGN = /[$£€]/;

const CODE = /^(?:USD|CAD|AUD|NZD|GBP|EUR)$/;

/** Whether a word before a number is a currency. */
export function isCurrencyBefore(text: string, offset: number, word: string): boolean {
  return CODE.test(word.toUpperCase()) && NUMBER_BEHIND.test(text.slice(offset + word.length, offset + LOOK_BEHIND));
}

/** What to write instead of a sign or word at an offset. */
export function currencyFirst(text: string, offset: number, written: string): CurrencyFirst {
  const currency = CURRENCY_SIGN.test(written) ? currencyOfSign(written, text) : written.toUpperCase();
  const end = offset + written.length;
  const behind = NUMBER_BEHIND.exec(text.slice(end, end + LOOK_BEHIND));
  if (behind !== null) {
    const example = `${behind[1]!} ${currency}`;
    // `£24GBP` says it twice.
    const isSaid = new RegExp(`^ *${currency}\\b`, 'i').test(text.slice(end + behind[0].length, end + LOOK_BEHIND));
    if (isSaid) return { example, fixes: [{ title: 'Take it out', edits: [takenOut(text, offset, end)] }] };
    return { example, fixes: writes([example], offset, written.length + behind[0].length) };
  }
  const before = NUMBER_BEFORE.exec(text.slice(Math.max(0, offset - LOOK_BEHIND), offset));
  if (before === null) return { example: `38 ${currency}`, fixes: [] };
  const example = `${before[1]!} ${currency}`;
  return { example, fixes: writes([example], offset - before[0].length, before[0].length + written.length) };
}

/** Whether a number between two offsets has such a currency beside it: that is told already. */
export function hasCurrencyBeside(text: string, start: number, end: number): boolean {
  const before = /(?:[$£€]|\b[A-Z]{3}) *$/i.exec(text.slice(Math.max(0, start - LOOK_BEHIND), start))?.[0].trim();
  if (before !== undefined && (CURRENCY_SIGN.test(before) || CODE.test(before.toUpperCase()))) return true;
  return /^ *[$£€]/.test(text.slice(end, end + LOOK_BEHIND));
}

/** A dollar is that of the text's own money, else the commonest here: the fix is offered, never made unasked. */
function currencyOfSign(sign: string, text: string): string {
  if (sign !== '$') return sign === '£' ? 'GBP' : 'EUR';
  const said = /\bcurrency[ \t]+([A-Z]{3})\b/.exec(text)?.[1];
  if (said !== undefined && DOLLARS.test(said)) return said;
  return /[0-9] ?((?:USD|CAD|AUD|NZD))\b/.exec(text)?.[1] ?? 'USD';
}

const DOLLARS = /^(?:USD|CAD|AUD|NZD)$/;
const NUMBER_BEHIND = /^ *([0-9]+(?:\.[0-9]+)?)/;
const NUMBER_BEFORE = /(?<![0-9.])([0-9]+(?:\.[0-9]+)?) *$/;

/** No amount of money is longer. */
const LOOK_BEHIND = 24;
