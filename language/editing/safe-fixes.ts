import type { Finding, Fix, Place, TextChange } from '../findings/finding.ts';
import { applyChanges } from './apply-changes.ts';

/** Each round mends what the one before left; more than a few only nest in one another. */
const MOST_ROUNDS = 20;

/**
 * The text of a file with all safe fixes made, round by round until none is left; undefined when there are none.
 * `findingsOf` tells what is found with a text in the place of the file's own.
 */
export async function withSafeFixes(
  file: string,
  text: string,
  findings: readonly Finding[],
  findingsOf: (text: string) => Promise<readonly Finding[]>
): Promise<string | undefined> {
  let mended = text;
  let changes = safeChanges(findings, file);
  for (let round = 0; changes.length > 0 && round < MOST_ROUNDS; round++) {
    mended = applyChanges(mended, changes);
    changes = safeChanges(await findingsOf(mended), file);
  }
  return mended === text ? undefined : mended;
}

/** The safe fixes of one round: of two that touch, the first; the next round takes the other. */
export function safeChanges(findings: readonly Finding[], file: string): TextChange[] {
  const taken: TextChange[] = [];
  const inOrder = findings
    .flatMap(({ fixes }) => fixes.filter(fix => fix.safe && isIn(fix, file)).slice(0, 1))
    .sort((left, right) => compare(left.edits[0]!.place, right.edits[0]!.place));
  for (const { edits } of inOrder)
    if (!edits.some(edit => taken.some(other => touches(edit.place, other.place)))) taken.push(...edits);
  return taken;
}

function isIn({ edits }: Fix, file: string): boolean {
  return edits.every(({ place }) => place.file === file);
}

function touches(one: Place, other: Place): boolean {
  return compare(startOf(one), endOf(other)) <= 0 && compare(startOf(other), endOf(one)) <= 0;
}

type Spot = Pick<Place, 'line' | 'column'>;

const startOf = ({ line, column }: Place): Spot => ({ line, column });
const endOf = ({ endLine, endColumn }: Place): Spot => ({ line: endLine, column: endColumn });

function compare(one: Spot, other: Spot): number {
  return one.line - other.line || one.column - other.column;
}
