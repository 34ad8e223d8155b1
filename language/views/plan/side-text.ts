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

/** The sides as a person counts them: what bends on its way between two corners, as a measured edge, is one side. */
export function sidesTold(area: PlanArea): { index: number; area: PlanArea }[] {
  const runs: number[][] = [];
  area.sides.forEach((side, index) => {
    const run = runs.at(-1);
    const before = area.sides[index - 1];
    const isStraight = area.outline[index]?.arc === undefined && area.outline[index - 1]?.arc === undefined;
    if (run && isStraight && before?.name === side.name) run.push(index);
    else runs.push([index]);
  });
  return runs.map(run => {
    const lengthOf = (index: number): number => area.sides[index]!.length;
    const index = run.reduce((best, one) => (lengthOf(one) > lengthOf(best) + HAIR ? one : best));
    if (run.length === 1) return { index, area };
    const length = run.reduce((sum, one) => sum + lengthOf(one), 0);
    return { index, area: { ...area, sides: area.sides.with(index, { ...area.sides[index]!, length }) } };
  });
}

/** m: rounding decides nothing. */
const HAIR = 1e-9;
