import Fraction from 'fraction.js';
import type { System } from '../../job/job.ts';

const MILLIMETRE = new Fraction(1, 1000);
const INCH = new Fraction('0.0254');
const SIXTEENTH = INCH.div(16);
const FOOT = INCH.mul(12);

/** Below it a length is written in millimetres or inches alone. */
const SHORT: Readonly<Record<System, Fraction>> = { metric: new Fraction(1), imperial: FOOT.mul(4) };
/** A list is written in metres if nothing in it is thinner than this: the thickness of a slab is said in millimetres. */
const THIN = new Fraction(1, 10);

/** Lengths written alike, with the measure that counts for all of them. */
export interface InOneMeasure {
  readonly numbers: readonly string[];
  readonly measure: string;
}

/** A length in metres to the nearest millimetre, or to the nearest sixteenth of an inch as on a tape. */
export function toNearest(metres: Fraction, system: System): Fraction {
  const step = system === 'metric' ? MILLIMETRE : SIXTEENTH;
  return metres.div(step).round().mul(step);
}

/** A length that is whole in its system (see `toNearest`): `150 mm`, `3.65 m`, `7 7/8 in`, `12 ft 6 1/2 in`. */
export function lengthIn(system: System, metres: Fraction): string {
  const isShort = metres.compare(SHORT[system]) < 0;
  if (system === 'metric') return isShort ? `${millimetres(metres)} mm` : `${metres.toString()} m`;
  if (isShort) return `${inches(metres)} in`;
  const feet = metres.div(FOOT).floor();
  const rest = metres.sub(feet.mul(FOOT));
  return `${feet.toString()} ft${rest.equals(0) ? '' : ` ${inches(rest)} in`}`;
}

/** The same for the lengths of a list, in one measure; undefined where each needs its own: `12 ft 6 in x 20 ft`. */
export function inOneMeasure(system: System, lengths: readonly Fraction[]): InOneMeasure | undefined {
  const some = lengths.filter(length => !length.equals(0));
  const isShort = some.every(length => length.compare(SHORT[system]) < 0);
  if (system === 'metric') {
    const isThin = some.some(length => length.compare(THIN) < 0);
    return isShort || isThin
      ? { numbers: lengths.map(millimetres), measure: 'mm' }
      : { numbers: lengths.map(String), measure: 'm' };
  }
  if (isShort) return { numbers: lengths.map(inches), measure: 'in' };
  const inFeet = lengths.map(length => length.div(FOOT));
  return inFeet.every(length => length.d === 1n)
    ? { numbers: inFeet.map(length => length.toString()), measure: 'ft' }
    : undefined;
}

/** How far rounding moved one length, or the most that it moved each of several, in words; empty where it moved nothing. */
export function roundedBy(moved: readonly Fraction[]): string {
  const most = moved.reduce((largest, each) => (each.compare(largest) > 0 ? each : largest), new Fraction(0));
  if (most.equals(0)) return '';
  const tenths = most.mul(10_000);
  if (moved.length > 1) return `, rounded by up to ${tenths.ceil().div(10).toString()} mm`;
  const rounded = tenths.round();
  return rounded.equals(0) ? ', rounded by less than 0.1 mm' : `, rounded by ${rounded.div(10).toString()} mm`;
}

function millimetres(metres: Fraction): string {
  return metres.mul(1000).toString();
}

function inches(metres: Fraction): string {
  return metres.div(INCH).toFraction(true);
}
