import Fraction from 'fraction.js';

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8'
};

/** Reads a number as a tape or a drawing shows it: `6 1/2`, `6-1/2`, `6½`, `3/8`, `.5`, `1:60`. Undefined for a comma in it, or a division by nought. */
export function readNumber(written: string): Fraction | undefined {
  if (written.includes(',')) return undefined;
  const spelled = written.replace(/[½¼¾⅓⅔⅛⅜⅝⅞]/, sign => ` ${VULGAR[sign]!}`).trim();
  const parts = /^(?:([0-9]+)[ \t-]+)?([0-9]*\.?[0-9]+)(?:([/:])([0-9]*\.?[0-9]+))?$/.exec(spelled);
  if (parts === null) return undefined;
  const [, whole, above, , below] = parts;
  const divisor = new Fraction(below === undefined ? 1 : decimal(below));
  if (divisor.equals(0)) return undefined;
  return new Fraction(whole ?? 0).add(new Fraction(decimal(above!)).div(divisor));
}

function decimal(text: string): string {
  return text.startsWith('.') ? `0${text}` : text;
}
