import type { SoldBy } from '../buying/used.ts';
import type { System } from '../job/job.ts';
import { printAs } from '../measures/print.ts';

/** So much of a thing in the measure that it is sold by, as the job prints it: pieces, masses, loose volumes. */
export function soldText(amount: number, measure: SoldBy, system: System): string {
  switch (measure) {
    case 'piece':
      return printAs('count', amount, system);
    case 'kg':
      return printAs(isLittle(amount) ? 'sand-mass' : 'mass', amount, system);
    case 'm3':
      return printAs(amount < LITTLE_VOLUME ? 'sand-volume' : 'stone-volume', amount, system);
    case 'm2':
      return printAs('area', amount, system);
    case 'm':
      return printAs('length', amount, system);
  }
}

/** Less is told in pounds or kilograms, kg. */
const LITTLE_MASS = 500;

/** Less is told in cubic feet, m3. */
const LITTLE_VOLUME = 0.76;

function isLittle(mass: number): boolean {
  return mass < LITTLE_MASS;
}
