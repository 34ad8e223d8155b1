import type { System } from '../job/job.ts';
import { printByMeasure } from '../measures/print.ts';
import type { WorkingValue } from '../quantities/contract.ts';

/** A value of a working in the job's own measures; a share as it was written, `43 %`. */
export function printWorkingValue({ value, measure, written }: WorkingValue, system: System): string {
  return measure === '' && /^[0-9]/.test(written ?? '') ? written! : printByMeasure(value, measure, system);
}
