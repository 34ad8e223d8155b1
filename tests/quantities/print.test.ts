import { describe, expect, it } from 'vitest';
import {
  printAs,
  printByMeasure,
  printHeight,
  printLength,
  printMarked,
  printPercent,
  printThickness
} from '../../language/measures/print.ts';
import { CUBIC_FOOT, CUBIC_YARD, FOOT, INCH, POUND, POUND_PER_CUBIC_FOOT, SHORT_TON } from './jobs.ts';

describe('printing, each measure as the trade writes it', () => {
  it.each([
    [31 * FOOT + 3.6875 * INCH, '31 ft 3 11/16 in'],
    [12 * INCH - INCH / 33, '1 ft'],
    [11.5 * INCH, '11 1/2 in'],
    [FOOT + INCH / 32, '1 ft 1/16 in'],
    [FOOT + INCH / 33, '1 ft'],
    [0, '0 in'],
    [-INCH / 64, '0 in'],
    [-2.5 * INCH, '-2 1/2 in']
  ])('%d m in feet and inches: %s', (metres, printed) => expect(printLength(metres, 'imperial')).toBe(printed));

  it.each([
    [14.5 * INCH, 'imperial', '14 1/2 in'],
    [0.15, 'metric', '150 mm'],
    [0.0035, 'metric', '3.5 mm'],
    [0.00005, 'metric', '0.1 mm'],
    [-0.00001, 'metric', '0 mm']
  ] as const)('thickness %d m, %s: %s', (metres, system, printed) =>
    expect(printThickness(metres, system)).toBe(printed)
  );

  it.each([
    ['area', 42.745, 'metric', '42.75 m2'],
    ['area', 2.675, 'metric', '2.68 m2'],
    ['length', 9.5425, 'metric', '9.543 m'],
    ['run', 123.4 * FOOT, 'imperial', '123 ft'],
    ['run', 617.51, 'metric', '618 m'],
    ['stone-volume', 4.615 * CUBIC_YARD, 'imperial', '4.62 cu yd'],
    ['sand-volume', 19.48 * CUBIC_FOOT, 'imperial', '19.48 cu ft'],
    ['sand-volume', 0.02608, 'metric', '0.026 m3'],
    ['mass', 8.735 * SHORT_TON, 'imperial', '8.74 short tons'],
    ['mass', 39_100, 'metric', '39.10 t'],
    ['sand-mass', 49.6 * POUND, 'imperial', '50 lb'],
    ['density', 140 * POUND_PER_CUBIC_FOOT, 'imperial', '140.0 lb per cu ft'],
    ['density', 2200, 'metric', '2200 kg/m3'],
    // A unit's face to the tenth of a square inch, a piece of it in square centimetres: a sliver is not nothing.
    ['face', 0.02, 'metric', '0.02 m2'],
    ['piece', 0.0192, 'metric', '192.0 cm2'],
    ['piece', 0.000_004, 'metric', 'under 0.1 cm2'],
    ['piece', 17.9 * INCH ** 2, 'imperial', '17.9 sq in'],
    ['piece', 0.02 * INCH ** 2, 'imperial', 'under 0.1 sq in'],
    ['share', 0.0559, 'metric', '5.59 %'],
    ['count', 585, 'metric', '585'],
    ['area', -0.001, 'metric', '0.00 m2']
  ] as const)('%s of %d, %s: %s', (style, value, system, printed) =>
    expect(printAs(style, value, system)).toBe(printed)
  );

  it.each([
    [0.1204, 'metric', '120 mm'],
    [0.0018, 'metric', '1.8 mm'],
    [2.5, 'metric', '2.500 m'],
    [5.3755 * INCH, 'imperial', '5 3/8 in'],
    [INCH / 32, 'imperial', '1/32 in']
  ] as const)('%d m to mark out, %s: %s', (metres, system, printed) =>
    expect(printMarked(metres, system)).toBe(printed)
  );

  it('heights, percentages, and values of which only the measure is known', () => {
    expect(printHeight(-2.5 * INCH, 'door-sill', 'imperial')).toBe('2 1/2 in below door-sill');
    expect(printHeight(9.985, 'garage-floor', 'metric')).toBe('9.985 m above garage-floor');
    expect(printHeight(-0.015, 'garage-floor', 'metric')).toBe('15 mm below garage-floor');
    expect(printHeight(1, 'garage-floor', 'metric')).toBe('1.000 m above garage-floor');
    expect(printHeight(-0.0001, 'door-sill', 'metric')).toBe('level with door-sill');
    expect(printPercent(0.43)).toBe('43 %');
    expect([printByMeasure(0.43, '', 'metric'), printByMeasure(2, 'm', 'metric')]).toEqual(['0.43', '2.000 m']);
  });
});
