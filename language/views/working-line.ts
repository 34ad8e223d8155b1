import type { System } from '../job/job.ts';
import { printByMeasure } from '../measures/print.ts';
import type { Working } from '../quantities/contract.ts';

/** A working in one line: `gross area - kept-out area`, then its values in the job's own measures. */
export function workingLine(working: Working, system: System): string {
  const values = working.values.map(({ name, value, measure }) => `${name} ${printByMeasure(value, measure, system)}`);
  return `${working.formula}; ${values.join(', ')}`;
}
