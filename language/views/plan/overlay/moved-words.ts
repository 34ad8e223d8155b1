import type { Point } from '../../../geometry/index.ts';
import type { System } from '../../../job/job.ts';
import { printLength, printMarked } from '../../../measures/print.ts';

/** As it is measured on site: `33 ft 5/8 in`, `300 mm`, `1.100 m`. */
export function printMove(length: number, system: System): string {
  // What is worked out a hair below a metre is a metre.
  return system === 'imperial'
    ? printLength(length, system)
    : printMarked(Math.round(length * 10_000) / 10_000, system);
}

/** `300 mm to the right, 150 mm up`, as the plan lies before one; what prints as nought is left out. */
export function movedWords({ x, y }: Point, system: System): string {
  const part = (length: number, onward: string, back: string): string[] => {
    const printed = printMove(Math.abs(length), system);
    return Number.parseFloat(printed) === 0 ? [] : [`${printed} ${length < 0 ? back : onward}`];
  };
  return [...part(x, 'to the right', 'to the left'), ...part(y, 'up', 'down')].join(', ');
}
