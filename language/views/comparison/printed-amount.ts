import type { System } from '../../job/job.ts';
import { printAs, printByMeasure } from '../../measures/print.ts';

/** Less mass, kg, is read in kilograms or pounds. */
const LIGHT = 500;

/** An amount of something that is built or bought; small masses as sand is told. */
export function printedAmount(value: number, measure: string, system: System): string {
  return measure === 'kg' && Math.abs(value) < LIGHT
    ? printAs('sand-mass', value, system)
    : printByMeasure(value, measure, system);
}
