import type { Comparison } from '../../language/comparing/contract.ts';
import { compareJobs, type Compared } from '../../language/comparing/compare.ts';
import { drain, Paving } from '../../language/paving.ts';
import { comparisonSheet } from '../../language/views/comparison/comparison-sheet.ts';
import { comparisonText } from '../../language/views/text/comparison/comparison-text.ts';
import { inMemory } from '../language/in-memory.ts';

const same = (words: string): string => words;
const COLOURS = { strong: same, faint: same, error: same, warning: same, note: same };

export type Texts = Readonly<Record<string, string>>;

/** One text of a job with its price; `file` is the one with the job. */
export async function read(texts: Texts, file = 'job.paving'): Promise<Compared> {
  const paving = new Paving(inMemory(texts), () => '2026-05-01');
  await paving.load(file);
  const evaluation = drain(paving.evaluate(file))!;
  const priced = drain(paving.priced(evaluation));
  return { evaluation, look: paving.look(file)!, ...(priced === undefined ? {} : { priced }) };
}

export async function compared(older: Texts, newer: Texts, file = 'job.paving'): Promise<Comparison> {
  return compareJobs(await read(older, file), await read(newer, file));
}

/** As a person reads it, without colours. */
export function asText(comparison: Comparison, isForClient = false): string {
  const sheet = comparisonSheet({
    title: 'Job',
    between: 'old to new',
    comparison,
    system: 'metric',
    isForClient
  });
  return comparisonText(sheet, COLOURS);
}
