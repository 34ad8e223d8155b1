import path from 'node:path';
import type { Evaluation } from '../../language/paving.ts';
import { shownAs } from './with-job.ts';

/** A text of a job, worked out so far that its title is known. */
export interface TitledText {
  readonly evaluation: Evaluation & Required<Pick<Evaluation, 'job'>>;
}

export interface PairedFiles<T extends TitledText> {
  readonly pairs: readonly (readonly [T, T])[];
  /** What no text of the other side is. */
  readonly before: readonly T[];
  readonly after: readonly T[];
}

/**
 * Jobs whose files are called otherwise than before: those with the same text, then those with the same title in a file of
 * the same name in another folder, then those with the same title. What several could be meant by is left alone.
 */
export function pairRenamed<T extends TitledText>(before: readonly T[], after: readonly T[]): PairedFiles<T> {
  let left = { before, after };
  const pairs: (readonly [T, T])[] = [];
  for (const known of [ownText, titleAndName, title]) {
    const found = pairedBy(known, left);
    pairs.push(...found.pairs);
    left = found;
  }
  return { ...left, pairs };
}

function ownText({ evaluation }: TitledText): string {
  return evaluation.texts[0]!.text;
}

function title({ evaluation }: TitledText): string {
  return evaluation.job.title;
}

function titleAndName(text: TitledText): string {
  return `${title(text)}\n${path.posix.basename(shownAs(text.evaluation))}`;
}

function pairedBy<T extends TitledText>(
  known: (text: T) => string,
  { before, after }: Pick<PairedFiles<T>, 'before' | 'after'>
): PairedFiles<T> {
  const [older, newer] = [theOnlyOnes(before, known), theOnlyOnes(after, known)];
  const pairs = [...older].flatMap(([key, text]): (readonly [T, T])[] => {
    const other = newer.get(key);
    return other === undefined ? [] : [[text, other]];
  });
  const paired = new Set(pairs.flat());
  const rest = (all: readonly T[]): T[] => all.filter(text => !paired.has(text));
  return { pairs, before: rest(before), after: rest(after) };
}

/** What alone is known by its key. */
function theOnlyOnes<T>(all: readonly T[], known: (text: T) => string): Map<string, T> {
  const counts = new Map<string, number>();
  for (const text of all) counts.set(known(text), (counts.get(known(text)) ?? 0) + 1);
  return new Map(all.filter(text => counts.get(known(text)) === 1).map(text => [known(text), text]));
}
