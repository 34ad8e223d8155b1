import type { Given, Key, System } from '../job/job.ts';
import { printFine } from '../measures/print.ts';
import type { FindingValue, RawFix } from './finding.ts';

/** A limit met exactly passes: a micrometre, far below what any tape shows. */
export const TIE = 1e-6;

/** A published length, m, is round in both systems, and the two differ by a hair. `written`: as the rule has it. */
export interface Length extends Readonly<Record<System, number>> {
  readonly written?: Readonly<Partial<Record<System, string>>>;
}

export function sameInBoth(length: number): Length {
  return { imperial: length, metric: length };
}

export function printLimit(length: Length, system: System): string {
  return length.written?.[system] ?? printFine(length[system], system);
}

/** Offers to write a length in the place of what is written, and as it is; nothing where the value is assumed. */
export function fixTo(to: Length, given: Given | undefined, system: System): RawFix[] {
  if (given?.key === undefined || given.assumed !== undefined) return [];
  return [writing(given.key, asWritten(to, given.written, system))];
}

/** Offers to write words in the place of what stands at a key. */
export function writing(over: Key, text: string): RawFix {
  return { title: `Write \`${text}\``, edits: [{ over, text }] };
}

/** Offers to write something that is not said. */
export function saying(gap: Key, statement: string): RawFix {
  return { title: `Write \`${statement}\``, edits: [{ gap, statements: [statement] }] };
}

/** A length in the measure in which a person wrote the value that misses it; the job's own where that can't be seen. */
function asWritten(to: Length, written: string, system: System): string {
  const metric = METRIC.exec(written)?.[1];
  if (metric !== undefined) return `${Number((to.metric / METRES[metric]!).toFixed(6))} ${metric}`;
  return printLimit(to, systemWritten(written, system));
}

/** The system in which a person wrote a length; the job's own where that can't be seen. */
export function systemWritten(written: string, system: System): System {
  if (METRIC.test(written)) return 'metric';
  return /(?:in|inch|inches|ft|foot|feet|["″”'′’])$/i.test(written) ? 'imperial' : system;
}

const METRIC = /[0-9½¼¾] ?(mm|cm|m)$/;

const METRES: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1 };

export function lengthValue(name: string, value: number): FindingValue {
  return { name, value, measure: 'm' };
}
