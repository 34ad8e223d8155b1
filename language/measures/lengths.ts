// Lengths as a person writes them: by what steps, and in what measure.
import Fraction from 'fraction.js';
import type { System } from '../job/job.ts';
import { INCH } from './measures.ts';

const FOOT = INCH.mul(12);

/** Below it, m, a length is the width of a joint: it is told in finer steps. */
const JOINT = 0.01;
const JOINT_STEPS: Readonly<Record<System, Fraction>> = { metric: new Fraction(1, 10_000), imperial: INCH.div(64) };
const STEPS: Readonly<Record<System, Fraction>> = { metric: new Fraction(1, 1000), imperial: INCH.div(16) };

/** Below it, m, a length is written in millimetres or inches alone. */
export const SHORT = 1;
/** A list is written in metres if nothing in it is thinner than this, m: the thickness of a slab is said in millimetres. */
const THIN = 0.1;

/** Lengths written alike, with the measure that counts for all of them. */
export interface InOneMeasure {
  readonly numbers: readonly string[];
  readonly measure: string;
}

/**
 * What a length, m, is rounded to: the nearest millimetre, or a sixteenth of an inch as on a tape; joints to a tenth of a
 * millimetre or a sixty-fourth of an inch.
 */
export function stepOf(system: System, metres: number): Fraction {
  return (Math.abs(metres) < JOINT ? JOINT_STEPS : STEPS)[system];
}

/** A length in metres to the nearest of its steps. */
export function toNearest(metres: Fraction, system: System): Fraction {
  const step = stepOf(system, metres.valueOf());
  return metres.div(step).round().mul(step);
}

/** A length that is whole in its system (see `stepOf`): `150 mm`, `3.65 m`, `7 7/8 in`, `12 ft 6 1/2 in`. */
export function lengthIn(system: System, metres: Fraction): string {
  const isShort = metres.compare(SHORT) < 0;
  if (system === 'metric') return isShort ? `${millimetres(metres)} mm` : `${metres.toString()} m`;
  return isShort ? `${inches(metres)} in` : feetAndInches(metres);
}

/** `12 ft 6 1/2 in`, `2 ft`, `7 7/8 in`. */
export function feetAndInches(metres: Fraction): string {
  const feet = metres.div(FOOT).floor();
  const rest = metres.sub(feet.mul(FOOT));
  const parts = [feet.equals(0) ? '' : `${feet.toString()} ft`, rest.equals(0) ? '' : `${inches(rest)} in`];
  return parts.filter(part => part !== '').join(' ');
}

/** The same for the lengths of a list, in one measure; undefined where each needs its own: `12 ft 6 in x 20 ft`. */
export function inOneMeasure(system: System, lengths: readonly Fraction[]): InOneMeasure | undefined {
  const some = lengths.filter(length => !length.equals(0));
  const isShort = some.every(length => length.compare(SHORT) < 0);
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
