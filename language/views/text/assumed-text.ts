import type { System } from '../../job/job.ts';
import type { Workings } from '../../quantities/contract.ts';
import { printWorkingValue } from '../working-value.ts';
import type { Colours } from './colours.ts';

/** Values that the job leaves open, each once: what was taken, why, and where it is from. */
export function assumedText(workings: Workings, system: System, colours: Colours): string[] {
  const byReason = new Map<string, { because: string; source: string | undefined; values: Set<string> }>();
  for (const { values } of Object.values(workings)) {
    for (const value of values) {
      const { name, from } = value;
      if (!('assumed' in from)) continue;
      const reason = JSON.stringify([from.assumed, from.source]);
      const known = byReason.get(reason) ?? { because: from.assumed, source: from.source, values: new Set() };
      known.values.add(`${name} ${printWorkingValue(value, system)}`);
      byReason.set(reason, known);
    }
  }
  return [...byReason.values()].flatMap(({ because, source, values }) => [
    `${[...values].join(', ')}: ${because}`,
    ...(source === undefined ? [] : [colours.faint(`  Source: ${source}`)])
  ]);
}
