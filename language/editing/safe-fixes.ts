import type { Finding, Fix, Place, TextChange } from '../findings/finding.ts';
import { applyChanges } from './apply-changes.ts';

/** Each round mends what the one before left, or what one rule finds; more than this only nest in one another. */
const MOST_ROUNDS = 100;

/**
 * The text of a file with all safe fixes made, round by round until none is left; undefined when there are none.
 * `findingsOf` tells what is found with a text in the place of the file's own. A fix that a rule calls safe is made only
 * if it mends something and brings up nothing else: whoever wrote the rule may not have foreseen everything.
 */
export async function withSafeFixes(
  file: string,
  text: string,
  findings: readonly Finding[],
  findingsOf: (text: string) => Promise<readonly Finding[]>
): Promise<string | undefined> {
  let [mended, left] = [text, findings];
  const refused = new Set<string>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const changes = safeChanges(left.filter(isFault), file);
    const rule = left.find(each => !isFault(each) && !refused.has(nameOf(each)) && safeFixIn(each, file) !== undefined);
    if (changes.length === 0 && rule === undefined) break;
    const tried = applyChanges(mended, changes.length > 0 ? changes : safeFixIn(rule!, file)!.edits);
    const found = await findingsOf(tried);
    if (changes.length === 0 && !isBetter(found, left)) refused.add(nameOf(rule!));
    else [mended, left] = [tried, found];
  }
  return mended === text ? undefined : mended;
}

function isFault({ family }: Finding): boolean {
  return family === 'fault';
}

function safeFixIn({ fixes }: Finding, file: string): Fix | undefined {
  return fixes.find(fix => fix.safe && isIn(fix, file));
}

/** Fewer findings, and none that was not there before. */
function isBetter(found: readonly Finding[], before: readonly Finding[]): boolean {
  const names = new Set(before.map(({ id, target }) => `${id} ${target}`));
  return found.length < before.length && found.every(({ id, target }) => names.has(`${id} ${target}`));
}

function nameOf({ id, target, message }: Finding): string {
  return [id, target, message].join('\n');
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
