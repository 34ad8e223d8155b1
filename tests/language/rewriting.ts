import { holds } from '../../language/editing/rewrites/holds.ts';
import type { Rewrite } from '../../language/editing/rewrites/rewrite.ts';
import { rewritesAt } from '../../language/editing/rewrites/rewrites-at.ts';
import { drain, Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

/** A text with a `‸` at the cursor, or with what is selected between two of them. */
export function withCursor(drawn: string): { text: string; start: number; end: number } {
  const [before, inside, after] = drawn.split('‸') as [string, string, string?];
  const start = before.length;
  return after === undefined
    ? { text: before + inside, start, end: start }
    : { text: before + inside + after, start, end: start + inside.length };
}

/** What an editor would offer there: what does not hold is left out. */
export async function offered(drawn: string): Promise<Rewrite[]> {
  const { text, start, end } = withCursor(drawn);
  const paving = new Paving(inMemory({ 'job.paving': text }));
  await paving.load('job.paving');
  return offeredBy(paving, 'job.paving', start, end);
}

export function offeredBy(paving: Paving, file: string, start: number, end: number): Rewrite[] {
  const before = drain(paving.evaluate(file))!;
  return rewritesAt(paving.look(file)!, before, start, end).filter(rewrite =>
    holds(rewrite, before, drain(paving.tryOut(file, file, rewrite.text))!)
  );
}
