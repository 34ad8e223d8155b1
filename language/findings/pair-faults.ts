import type { Area, System } from '../job/job.ts';
import { printArea } from '../measures/print.ts';
import type { RawFinding } from './finding.ts';
import { OVERLAP_TOLERANCE } from './outline-faults.ts';

/** Two areas that pave the same ground; `shared` in m2. */
export function overlapFault(first: Area, second: Area, shared: number, system: System): RawFinding[] {
  if (shared <= OVERLAP_TOLERANCE) return [];
  return [
    {
      id: 'areas-overlap',
      message: `The areas ${first.name} and ${second.name} overlap by ${printArea(shared, system)}.`,
      target: second.key,
      values: [{ name: 'overlap', value: shared, measure: 'm2' }],
      related: [{ key: first.key, message: `The area ${first.name}` }]
    }
  ];
}
