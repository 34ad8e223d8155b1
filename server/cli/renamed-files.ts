import path from 'node:path';
import type { JobText } from './compared-jobs.ts';
import { shownAs } from './with-job.ts';

export interface PairedFiles {
  readonly pairs: readonly (readonly [JobText, JobText])[];
  /** What no text of the other side is. */
  readonly before: readonly JobText[];
  readonly after: readonly JobText[];
}

/**
 * Jobs whose files are called otherwise than before: those with the same text, then those with the same title in a file of
 * the same name in another folder, then those with the same title. What several could be meant by is left alone.
 */
export function pairRenamed(before: readonly JobText[], after: readonly JobText[]): PairedFiles {
  let left = { before, after };
  const pairs: (readonly [JobText, JobText])[] = [];
  for (const known of [ownText, titleAndName, title]) {
    const found = pairedBy(known, left);
    pairs.push(...found.pairs);
    left = found;
  }
  return { ...left, pairs };
}

function ownText({ evaluation }: JobText): string {
  return evaluation.texts[0]!.text;
}

function title({ evaluation }: JobText): string {
  return evaluation.job.title;
}

function titleAndName(text: JobText): string {
  return `${title(text)}\n${path.posix.basename(shownAs(text.evaluation))}`;
}

function pairedBy(
  known: (text: JobText) => string,
  { before, after }: Pick<PairedFiles, 'before' | 'after'>
): PairedFiles {
  const [older, newer] = [theOnlyOnes(before, known), theOnlyOnes(after, known)];
  const pairs = [...older].flatMap(([key, text]): (readonly [JobText, JobText])[] => {
    const other = newer.get(key);
    return other === undefined ? [] : [[text, other]];
  });
  const paired = new Set(pairs.flat());
  const rest = (all: readonly JobText[]): JobText[] => all.filter(text => !paired.has(text));
  return { pairs, before: rest(before), after: rest(after) };
}

/** What alone is known by its key. */
function theOnlyOnes(all: readonly JobText[], known: (text: JobText) => string): Map<string, JobText> {
  const counts = new Map<string, number>();
  for (const text of all) counts.set(known(text), (counts.get(known(text)) ?? 0) + 1);
  return new Map(all.filter(text => counts.get(known(text)) === 1).map(text => [known(text), text]));
}
