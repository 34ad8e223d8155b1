import type { SoldBy } from '../buying/used.ts';
import type { System } from '../job/job.ts';
import { printAs } from '../measures/print.ts';

/**
 * So much of a thing in the measure that it is sold by, as the job prints it: pieces, masses, loose volumes. Of pieces
 * that are used in part it takes whole ones.
 */
export function soldText(amount: number, measure: SoldBy, system: System, piece = 'piece'): string {
  switch (measure) {
    case 'piece': {
      const count = Math.ceil(amount - HAIR);
      return `${printAs('count', count, system)} ${piece}${count === 1 ? '' : 's'}`;
    }
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

/** What is left over: of pieces whole ones. */
export function leftText(amount: number, measure: SoldBy, system: System, piece?: string): string {
  if (measure !== 'piece') return soldText(amount, measure, system);
  const count = Math.floor(amount + HAIR);
  return count === 0 ? 'none' : soldText(count, measure, system, piece);
}

/** Of a piece; less is what rounding leaves. */
const HAIR = 1e-6;

/** Less is told in pounds or kilograms, kg. */
const LITTLE_MASS = 500;

/** Less is told in cubic feet, m3. */
const LITTLE_VOLUME = 0.76;

function isLittle(mass: number): boolean {
  return mass < LITTLE_MASS;
}
