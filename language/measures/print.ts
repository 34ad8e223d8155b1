import type { System } from '../job/job.ts';
import { measureNamed } from './measures.ts';

/** How a kind of quantity is printed in each system. */
export type PrintStyle =
  | 'area'
  | 'length'
  | 'run'
  | 'thickness'
  | 'joint'
  | 'stone-volume'
  | 'sand-volume'
  | 'mass'
  | 'sand-mass'
  | 'density'
  | 'face'
  | 'piece'
  | 'share'
  | 'slope'
  | 'level'
  | 'angle'
  | 'number'
  | 'count';

/** How a number is printed in the message of a rule. */
export type Print = PrintStyle | 'fine';

/** Tape fractions: the nearest sixteenth of an inch. */
const SIXTEENTHS = 16;

/** Doubles a hair under a half still round up, as the decimal number they stand for does. */
const HAIR = 1e-9;

/** Smaller sizes, m, are marked to a part of a millimetre, or a sixty-fourth of an inch. */
const FINE_BELOW = 0.01;

const SI: (spelling: string) => number = spelling => measureNamed(spelling)!.factor.valueOf();
const INCH = SI('in');
const FOOT = SI('ft');
const SQUARE_FOOT = SI('sq ft');
const CUBIC_FOOT = SI('cu ft');
const CUBIC_YARD = SI('cu yd');
const POUND = SI('lb');
const SHORT_TON = SI('short ton');
const TONNE = SI('t');

/**
 * An SI value in the measures of a system: areas sq ft or m2, stone cu yd or m3, sand cu ft or m3, masses short tons or t.
 * A run is a length that nothing is cut to: whole feet or metres.
 */
export function printAs(style: PrintStyle, value: number, system: System): string {
  switch (style) {
    case 'area':
      return printArea(value, system);
    case 'length':
      return printLength(value, system);
    case 'run':
      return system === 'imperial' ? `${decimals(value / FOOT, 0)} ft` : `${decimals(value, 0)} m`;
    case 'thickness':
      return printThickness(value, system);
    case 'joint':
      return printFine(value, system);
    case 'stone-volume':
      return system === 'imperial' ? `${decimals(value / CUBIC_YARD, 2)} cu yd` : `${decimals(value, 2)} m3`;
    case 'sand-volume':
      return system === 'imperial' ? `${decimals(value / CUBIC_FOOT, 2)} cu ft` : `${decimals(value, 3)} m3`;
    case 'mass':
      return system === 'imperial' ? `${decimals(value / SHORT_TON, 2)} short tons` : `${decimals(value / TONNE, 2)} t`;
    case 'sand-mass':
      return system === 'imperial' ? `${decimals(value / POUND, 0)} lb` : `${decimals(value, 0)} kg`;
    case 'density':
      return system === 'imperial'
        ? `${decimals((value / POUND) * CUBIC_FOOT, 1)} lb per cu ft`
        : `${decimals(value, 0)} kg/m3`;
    case 'face':
      return system === 'imperial'
        ? `${Number((value / INCH ** 2).toFixed(1))} sq in`
        : `${Number(value.toFixed(4))} m2`;
    case 'piece':
      return system === 'imperial' ? small(value / INCH ** 2, 'sq in') : small(value * 10_000, 'cm2');
    case 'share':
      return printPercent(value);
    case 'slope':
      return printSlope(value, system);
    case 'level':
      return printThickness(value, system);
    case 'angle':
      return `${plain(Number(decimals(value, 1)))} degrees`;
    case 'number':
      return plain(Number(decimals(value, 3)));
    case 'count':
      return decimals(value, 0);
  }
}

/** To a tenth; what is less is said to be so, for a sliver is not nothing. */
function small(value: number, measure: string): string {
  return value > 0 && value < 0.1 ? `under 0.1 ${measure}` : `${decimals(value, 1)} ${measure}`;
}

/** A value of a working or finding by its SI measure alone; lengths as on a tape, shares and counts as plain numbers. */
export function printByMeasure(value: number, measure: string, system: System): string {
  // Below a metre a length is a thickness or a joint: nobody reads those in metres.
  const style = measure === 'm' && Math.abs(value) < 1 ? 'thickness' : STYLE_OF_MEASURE[measure];
  return style === undefined ? `${plain(value)} ${measure}`.trim() : printAs(style, value, system);
}

const STYLE_OF_MEASURE: Readonly<Record<string, PrintStyle>> = {
  m: 'length',
  m2: 'area',
  m3: 'stone-volume',
  kg: 'mass',
  'kg/m3': 'density'
};

/** Feet and inches to the nearest sixteenth, `31 ft 3 11/16 in`; metres to the millimetre, `9.543 m`. */
export function printLength(metres: number, system: System): string {
  if (system === 'metric') return `${decimals(metres, 3)} m`;
  const total = roundHalfUp((Math.abs(metres) / INCH) * SIXTEENTHS);
  const feet = Math.floor(total / (12 * SIXTEENTHS));
  const rest = total - feet * 12 * SIXTEENTHS;
  const inches = rest === 0 && feet > 0 ? '' : `${fractions(rest, SIXTEENTHS)} in`;
  const sign = metres < 0 && total > 0 ? '-' : '';
  return sign + [feet > 0 ? `${feet} ft` : '', inches].filter(part => part !== '').join(' ');
}

/** The least length, m, that is no shorter and is printed as it is: whole sixteenths of an inch, whole millimetres. */
export function roundedUp(metres: number, system: System): number {
  const step = system === 'imperial' ? INCH / SIXTEENTHS : 0.001;
  return Math.ceil(metres / step - HAIR) * step;
}

/** Inches to the nearest sixteenth, `14 1/2 in`; millimetres, with a tenth where there is one, `150 mm`. */
export function printThickness(metres: number, system: System): string {
  return thickness(metres, system, SIXTEENTHS);
}

/** A size to mark out on a unit: sixteenths of an inch, whole millimetres; below 10 mm finer, from a metre as a length. */
export function printMarked(metres: number, system: System): string {
  const size = Math.abs(metres);
  if (size >= 1) return printLength(metres, system);
  if (size < FINE_BELOW) return printFine(metres, system);
  return system === 'imperial' ? printThickness(metres, system) : `${decimals(metres * 1000, 0)} mm`;
}

/** The same to the nearest sixty-fourth of an inch: a joint of 1/32 in must not be shown as 1/16. */
export function printFine(metres: number, system: System): string {
  return thickness(metres, system, 64);
}

function thickness(metres: number, system: System, parts: number): string {
  if (system === 'metric') return `${plain(Number(decimals(metres * 1000, 1)))} mm`;
  const total = roundHalfUp((Math.abs(metres) / INCH) * parts);
  return `${metres < 0 && total > 0 ? '-' : ''}${fractions(total, parts)} in`;
}

export function printArea(squareMetres: number, system: System): string {
  return system === 'imperial' ? `${decimals(squareMetres / SQUARE_FOOT, 2)} sq ft` : `${decimals(squareMetres, 2)} m2`;
}

/** A share as a percentage: `3 %`, `2.5 %`. */
export function printPercent(share: number): string {
  return `${plain(Number(decimals(share * 100, 2)))} %`;
}

/** `1:60`; in imperial also as it is set with a level, `1/4 in per ft (1:48)`. `level` where it falls by next to nothing. */
export function printSlope(ratio: number, system: System): string {
  const size = Math.abs(ratio);
  if (size < LEVEL_SLOPE) return 'level';
  const run = 1 / size;
  const ratioText = `1:${decimals(run, run < 20 ? 1 : 0)}`.replace(/\.0$/, '');
  if (system === 'metric') return ratioText;
  return `${printThickness(size * FOOT, system)} per ft (${ratioText})`;
}

/** Flatter than 1:500 nobody can lay. */
const LEVEL_SLOPE = 0.002;

/** A height against its benchmark: `2 1/2 in below door-sill`, `level with door-sill`. */
export function printHeight(above: number, benchmark: string, system: System): string {
  const size = Math.abs(above);
  const printed = printHeightAlone(size, system);
  if (Number.parseFloat(printed) === 0) return `level with ${benchmark}`;
  return `${printed} ${above < 0 ? 'below' : 'above'} ${benchmark}`;
}

/** Whole millimetres below a metre, as heights are read on site. */
function printHeightAlone(size: number, system: System): string {
  if (system === 'imperial') return printThickness(size, system);
  return size < 1 ? `${decimals(size * 1000, 0)} mm` : printLength(size, system);
}

function fractions(count: number, parts: number): string {
  const whole = Math.floor(count / parts);
  let upper = count - whole * parts;
  if (upper === 0) return String(whole);
  let lower = parts;
  while (upper % 2 === 0) {
    upper /= 2;
    lower /= 2;
  }
  return `${whole > 0 ? `${whole} ` : ''}${upper}/${lower}`;
}

function roundHalfUp(value: number): number {
  return Math.floor(value + 0.5 + HAIR);
}

/** A fixed number of decimals, halves away from nought, never `-0`. */
function decimals(value: number, places: number): string {
  const scale = 10 ** places;
  const rounded = roundHalfUp(Math.abs(value) * scale) / scale;
  return `${value < 0 && rounded > 0 ? '-' : ''}${rounded.toFixed(places)}`;
}

/** As few digits as say the number to six places. */
function plain(value: number): string {
  return String(Number(decimals(value, 6)));
}
