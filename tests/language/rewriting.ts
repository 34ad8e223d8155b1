import { holds } from '../../language/editing/rewrites/holds.ts';
import type { Rewrite } from '../../language/editing/rewrites/rewrite.ts';
import { rewritesAt } from '../../language/editing/rewrites/rewrites-at.ts';
import { drain, Paving } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';

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
