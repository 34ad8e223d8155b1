import type { System } from '../../job/job.ts';
import { printLength } from '../../measures/print.ts';
import type { PlanArea, PlanSide } from './plan-input.ts';

/** `left`, or `left (curve)`: a length along a curve is no length of a tape held straight. */
export function sideName({ outline, sides }: PlanArea, index: number): string {
  const name = sides[index]!.name;
  return outline[index]?.arc === undefined ? name : `${name} (curve)`;
}

/** `A to B  18 ft 6 in` */
export function nameAndLength(area: PlanArea, index: number, system: System): string {
  return `${sideName(area, index)}, ${printLength(area.sides[index]!.length, system)}`;
}

/** `meets lawn, edging spiked-strip`; nothing where nothing is said. */
export function meetsText({ meets, flush, edging }: PlanSide): string {
  return [
    ...(meets === undefined ? [] : [`meets ${meets}`]),
    ...(flush ? ['flush'] : []),
    ...(edging === undefined ? [] : [`edging ${edging}`])
  ].join(', ');
}
