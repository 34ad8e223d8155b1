import type { System } from '../job/job.ts';
import { lengthIn, SHORT, stepOf } from '../measures/lengths.ts';
import { measureNamed, measureText, type Dimensions } from '../measures/measures.ts';
import { printArea, printAs, printLength } from '../measures/print.ts';

/** A value as it prints in a system; `even` when nothing was rounded. */
export interface Printed {
  readonly text: string;
  readonly even: boolean;
}

/** Doubles a hair under a half still round up, as the decimal number they stand for does. */
const HAIR = 1e-9;

const of = (spelling: string): number => measureNamed(spelling)!.factor.valueOf();

/** An SI value in the measures of a system; undefined for what both write alike, such as shares and angles. */
export function printedIn(system: System, value: number, dimensions: Dimensions): Printed | undefined {
  return value === 0 ? undefined : PRINTS[measureText(dimensions)]?.(system, value);
}

/** `12 ft`; what was rounded is `about 305 mm`. */
export function inWords({ text, even }: Printed): string {
  return even ? text : `about ${text}`;
}

const PRINTS: Readonly<Record<string, (system: System, value: number) => Printed>> = {
  m: length,
  m2: (system, value) => {
    const small = value < 0.1;
    if (system === 'metric') return rounded(value, 'm2', small ? 4 : 2);
    return small ? rounded(value, 'sq in', 1) : { text: printArea(value, system), even: false };
  },
  m3: (system, value) => {
    if (system === 'metric') return value < 0.01 ? rounded(value, 'litre', 2) : rounded(value, 'm3', 3);
    return rounded(value, value < of('cu yd') ? 'cu ft' : 'cu yd', 2);
  },
  kg: (system, value) => {
    if (system === 'metric') return value < of('t') ? rounded(value, 'kg', 1) : rounded(value, 't', 2);
    return value < of('short ton') ? rounded(value, 'lb', 1) : rounded(value, 'short ton', 2);
  },
  'kg/m3': (system, value) => ({ text: printAs('density', value, system), even: false })
};

/** By the steps that it would be rewritten in. */
function length(system: System, value: number): Printed {
  const size = Math.abs(value);
  const step = stepOf(system, size);
  const steps = size / step.valueOf();
  const text = size < SHORT ? lengthIn(system, step.mul(Math.round(steps + HAIR))) : printLength(size, system);
  return { text: value < 0 ? `-${text}` : text, even: isWhole(steps) };
}

function rounded(value: number, measure: string, places: number): Printed {
  const inMeasure = value / of(measure);
  return { text: `${Number(inMeasure.toFixed(places))} ${measure}`, even: isWhole(inMeasure * 10 ** places) };
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-6;
}
