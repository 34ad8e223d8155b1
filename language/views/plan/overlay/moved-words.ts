import type { Point } from '../../../geometry/index.ts';
import type { System } from '../../../job/job.ts';
import { printMarked } from '../../../measures/print.ts';

/** A tenth of a millimetre: what is worked out a hair below a metre is a metre. */
export function roundedMove(length: number): number {
  return Math.round(length * 10_000) / 10_000;
}

/** `300 mm to the right, 150 mm up`, as the plan lies before one; what prints as nought is left out. */
export function movedWords({ x, y }: Point, system: System): string {
  const part = (length: number, onward: string, back: string): string[] => {
    const printed = printMarked(roundedMove(Math.abs(length)), system);
    return Number.parseFloat(printed) === 0 ? [] : [`${printed} ${length < 0 ? back : onward}`];
  };
  return [...part(x, 'to the right', 'to the left'), ...part(y, 'up', 'down')].join(', ');
}
