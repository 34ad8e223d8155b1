import type { Given, Key, System } from '../job/job.ts';
import { printFine } from '../measures/print.ts';
import type { FindingValue, RawFix } from './finding.ts';
import type { Breach } from './rule.ts';

/** A limit met exactly passes: a micrometre, far below what any tape shows. */
export const TIE = 1e-6;

/** A published length is round in both systems, and the two differ by a hair: the looser one judges. */
export interface Limit {
  readonly inches: number;
  readonly millimetres: number;
}

const METRES_AN_INCH = 0.0254;
const SIXTY_FOURTHS = 64;

export function limit(inches: number, millimetres: number): Limit {
  return { inches, millimetres };
}

/** The limit as it stands in the measures of a system, m. */
export function inSystem({ inches, millimetres }: Limit, system: System): number {
  return system === 'imperial' ? inches * METRES_AN_INCH : millimetres / 1000;
}

export function printLimit(length: Limit, system: System): string {
  // Published as a decimal, 2.36 in, it is known by that.
  const isFraction = Number.isInteger(length.inches * SIXTY_FOURTHS);
  if (system === 'imperial' && !isFraction) return `${length.inches} in`;
  return printFine(inSystem(length, system), system);
}

/** By how much a length, m, falls short of a least length; undefined where it does not. */
export function shortOf(length: number, least: Limit, system: System): number | undefined {
  const loosest = Math.min(inSystem(least, 'imperial'), inSystem(least, 'metric'));
  return length >= loosest - TIE ? undefined : inSystem(least, system) - length;
}

/** By how much a length, m, exceeds a greatest length; undefined where it does not. */
export function beyond(length: number, greatest: Limit, system: System): number | undefined {
  const loosest = Math.max(inSystem(greatest, 'imperial'), inSystem(greatest, 'metric'));
  return length <= loosest + TIE ? undefined : length - inSystem(greatest, system);
}

/** Offers to write a limit in the place of what is written, and as it is; nothing where the value is assumed. */
export function fixTo(to: Limit, given: Given | undefined, system: System): Required<Pick<Breach, 'fixes'>> {
  if (given?.key === undefined || given.assumed !== undefined) return { fixes: [] };
  return { fixes: [writing(given.key, asWritten(to, given.written, system))] };
}

/** Offers to write words in the place of what stands at a key. */
export function writing(over: Key, text: string): RawFix {
  return { title: `Write \`${text}\``, edits: [{ over, text }] };
}

/** Offers to write something that is not said. */
export function saying(gap: Key, statement: string): RawFix {
  return { title: `Write \`${statement}\``, edits: [{ gap, statements: [statement] }] };
}

/** A limit in the measure in which a person wrote the value that misses it; the job's own where that can't be seen. */
function asWritten(to: Limit, written: string, system: System): string {
  const metric = /[0-9½¼¾] ?(mm|cm|m)$/.exec(written)?.[1];
  if (metric !== undefined) return `${Number((to.millimetres / MILLIMETRES[metric]!).toFixed(6))} ${metric}`;
  return printLimit(to, /(?:in|inch|inches|ft|foot|feet|["″”'′’])$/i.test(written) ? 'imperial' : system);
}

const MILLIMETRES: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

export function lengthValue(name: string, value: number): FindingValue {
  return { name, value, measure: 'm' };
}
