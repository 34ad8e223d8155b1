// What went wrong with a job that was told, and how a spec of it shows that.
import { expect } from 'vitest';
import { evaluated } from '../language/in-memory.ts';
import type { Entered } from './read.ts';

/** What went wrong, or was left out. */
export interface Flaw {
  readonly flaw: string;
  readonly told: ByFinding | ByFigure | NotYet | Untold | Unknown;
  readonly spec?: string;
}

export interface ByFinding {
  readonly finding: string;
  /** Stands in its message. */
  readonly saying: string;
}

/** No finding, because the job's own figures show it. */
export interface ByFigure {
  readonly figure: string;
  readonly shows: (job: Entered) => boolean;
}

/** Why it can't be known yet: what would have to be said has no word in the language. */
export interface NotYet {
  readonly notYet: string;
  /** The statement that there is no word for, in an area or in the job. */
  readonly unsaid: string;
  readonly in: 'area' | 'job';
}

/** The language holds it, and it was not told. */
export interface Untold {
  readonly untold: string;
}

/** Why it can't be known from the job. */
export interface Unknown {
  readonly unknown: string;
  /** What it would take is not in the spec. */
  readonly lacks: (job: Entered) => boolean;
}

/** Expects that the job shows it; the cells of its line in the table. */
export async function expectFlaw(job: Entered, { flaw, told }: Flaw): Promise<string[]> {
  if ('finding' in told) {
    const found = job.evaluation.findings.filter(({ id }) => id === told.finding);
    expect(found.map(({ message }) => message).join('\n')).toContain(told.saying);
    return [flaw, 'a flaw', told.finding, told.saying];
  }
  if ('figure' in told) {
    expect(told.shows(job)).toBe(true);
    return [flaw, 'a flaw', 'its figures', told.figure];
  }
  if ('untold' in told) {
    expect(job.evaluation.numbers!.quantities.heights).toBeUndefined();
    return [flaw, 'a flaw', 'not told', told.untold];
  }
  if ('unknown' in told) {
    expect(told.lacks(job)).toBe(true);
    return [flaw, 'a flaw', 'not known', told.unknown];
  }
  await expectNoWord(job, told);
  return [flaw, 'a flaw', 'not yet', told.notYet];
}

/** There is no word for it: once there is, this line has to be told anew. */
async function expectNoWord({ text }: Entered, { unsaid, in: within }: NotYet): Promise<void> {
  const opens = within === 'area' ? /^area .*\{$/m : /^job .*\{/m;
  const { findings } = await evaluated(text.replace(opens, opened => `${opened}\n  ${unsaid}\n`));
  expect(findings.map(({ id }) => id)).toContain('unknown-statement');
}

/** Lines of a table, the first its head. */
export function inColumns(lines: readonly (readonly string[])[]): string {
  const widths = (lines[0] ?? []).map((_, column) => Math.max(...lines.map(line => line[column]!.length)));
  return lines
    .map(line =>
      line
        .map((cell, column) => cell.padEnd(widths[column]!))
        .join('  ')
        .trimEnd()
    )
    .join('\n');
}
