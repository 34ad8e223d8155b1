// Heights as a sheet prints them: to the millimetre, to 1/16 in, to 0.01 ft as asked.
import { describe, expect, it } from 'vitest';
import { type LevelDatum, printDrop, printLevel, printLevelWithMark } from '../../language/measures/print-level.ts';
import { printSlope } from '../../language/measures/print.ts';
import { FOOT, INCH } from './jobs.ts';

const SILL: LevelDatum = { benchmark: 'sill', z: 0, fromNought: false };
const FLOOR: LevelDatum = { benchmark: 'floor', z: 10, fromNought: true };

describe('heights against a benchmark', () => {
  it.each([
    [-4.09 * INCH, 'inches', '4 1/16 in below'],
    [-4.0937 * INCH, 'inches', '4 1/16 in below'],
    [-4.0938 * INCH, 'inches', '4 1/8 in below'],
    [2.5 * INCH, 'inches', '2 1/2 in above'],
    [INCH / 33, 'inches', 'level'],
    [-0.0635, 'millimetres', '64 mm below'],
    [-0.0634, 'millimetres', '63 mm below'],
    [0.0004, 'millimetres', 'level'],
    [-1.15 * FOOT, 'decimal-feet', '1.15 ft below'],
    [-0.015 * FOOT, 'decimal-feet', '0.02 ft below'],
    [0.004 * FOOT, 'decimal-feet', '0.00 ft']
  ] as const)('%d m in %s: %s', (z, style, printed) => expect(printLevel(z, SILL, style)).toBe(printed));

  it('are told with it where they stand alone', () => {
    expect(printLevelWithMark(-0.08, SILL, 'millimetres')).toBe('80 mm below sill');
    expect(printLevelWithMark(0, SILL, 'inches')).toBe('level with sill');
    expect(printLevelWithMark(10.0948, FLOOR, 'millimetres')).toBe('10.095 m');
  });
});

describe('heights that count from nought', () => {
  it.each([
    [10.0945, 'millimetres', '10.095 m'],
    [10.0944, 'millimetres', '10.094 m'],
    [98.85 * FOOT, 'decimal-feet', '98.85 ft'],
    [98.854 * FOOT, 'decimal-feet', '98.85 ft'],
    [98 * FOOT + 10.1875 * INCH, 'inches', '98 ft 10 3/16 in']
  ] as const)('%d m in %s: %s', (z, style, printed) => expect(printLevel(z, FLOOR, style)).toBe(printed));
});

it('differences have no direction of their own', () => {
  expect(printDrop(0.0381, 'inches')).toBe('1 1/2 in');
  expect(printDrop(0.0384, 'millimetres')).toBe('38 mm');
  expect(printDrop(0.34 * FOOT, 'decimal-feet')).toBe('0.34 ft');
});

it.each([
  // O-26: BIA Technical Note 14A, a quarter inch in a foot is 2.083 %.
  [1 / 48, 'imperial', '1/4 in per ft (1:48)'],
  [0.0339682, 'metric', '1:29'],
  [1 / 60, 'metric', '1:60'],
  [1 / 12.5, 'metric', '1:12.5'],
  [0.001, 'metric', 'level']
] as const)('a slope of %d, %s: %s', (ratio, system, printed) => expect(printSlope(ratio, system)).toBe(printed));
