import type { System } from '../job/job.ts';
import type { Working } from '../quantities/contract.ts';
import { printWorkingValue } from './working-value.ts';

/**
 * A working in one line: `gross area - kept-out area`, then its values in the job's own measures. What is measured on a
 * shape has no more to tell than that: its formula is its own name.
 */
export function workingLine(working: Working, system: System): string {
  if (working.values.length === 1 && working.values[0]!.name === working.formula) return 'measured on the shape itself';
  const values = working.values.map(value => `${value.name} ${printWorkingValue(value, system)}`);
  return `${working.formula}; ${values.join(', ')}`;
}
