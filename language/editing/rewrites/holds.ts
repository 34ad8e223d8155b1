import type { Finding } from '../../findings/finding.ts';
import type { Evaluation } from '../../paving.ts';
import type { Rewrite } from './rewrite.ts';

/** Sums worked out in another order differ by less, m; and by less than anyone can measure. */
const SAME = 1e-9;

/** What says how or where something was written, and is no number of the job. */
const NOT_NUMBERS: ReadonlySet<string> = new Set(['key', 'written', 'assumed', 'points']);

/** Whether a rewrite does what it says: the job it leads to has no new finding, and the numbers that it is to keep. */
export function holds({ keeps }: Rewrite, before: Evaluation, after: Evaluation): boolean {
  if (!bringsNothingUp(before, after)) return false;
  const { mends, within, but } = keeps;
  if (mends !== undefined && of(mends, after) >= of(mends, before)) return false;
  const skipped = new Set([...NOT_NUMBERS, ...(but ?? [])]);
  return within === undefined || alike(before.job, after.job, within + SAME, skipped);
}

/** Whether a job has no finding that it did not have before. */
export function bringsNothingUp(before: Evaluation, after: Evaluation): boolean {
  // What had no numbers was not judged before.
  const unjudged = new Set(before.job?.missing.map(({ key }) => key));
  const was = counted(before.findings);
  const is = counted(after.findings.filter(({ target }) => !unjudged.has(target)));
  return [...is].every(([name, count]) => count <= (was.get(name) ?? 0));
}

/** Findings by what they are about: their words may name what was rewritten. */
function counted(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { id, severity, target } of findings) {
    const name = `${severity} ${id} ${target}`;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}

function of(id: string, { findings }: Evaluation): number {
  return findings.filter(finding => finding.id === id).length;
}

/** The numbers of a job are worked out from the job alone: alike jobs have alike numbers. */
function alike(before: unknown, after: unknown, within: number, skipped: ReadonlySet<string>): boolean {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after) <= within;
  if (!isObject(before) || !isObject(after)) return before === after;
  const names = new Set([...Object.keys(before), ...Object.keys(after)].filter(name => !skipped.has(name)));
  return [...names].every(name => alike(before[name], after[name], within, skipped));
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
