import { expect } from 'vitest';
import type { Evaluation } from '../../language/paving.ts';
import type { Place } from '../../language/findings/finding.ts';

/** Words of those who write programs, none of those who lay paving. Capitals matter where the small word is a plain one. */
const WORDS: readonly RegExp[] = [
  /\b(?:tokens?|tokeni[sz]e\w*|lex(?:er|ing|ical)|pars(?:e|er|ers|ed|ing)|expect(?:ed|ing|s)?|unexpected|syntax\w*|identifiers?|keywords?)\b/i,
  /\b(?:undefined|null|nan|infinity|boolean|integers?|floats?|strings?|objects?|arrays?|tuples?|functions?|methods?|callbacks?)\b/i,
  /\b(?:exceptions?|stack ?trace|overflow\w*|regex\w*|regular expressions?|iterat\w+|recursi\w+|offsets? [0-9]+|instance of|typeof)\b/i,
  /\b(?:EOF|ID|AST|CST|JSON|URI|UTF-16|TypeError|RangeError|ReferenceError)\b/,
  /\[object|=>|\$\{|\$ref|\$type/
];

/** What a message says that only a programmer would understand. */
export function programmersWords(message: string): string[] {
  // What the user wrote is quoted and may be any word.
  const said = message.replaceAll(/`[^`]*`/g, '');
  return WORDS.flatMap(pattern => pattern.exec(said)?.[0] ?? []);
}

/** Lines and columns exist: the end may stand just past the last character of its line. */
export function isRealPlace(place: Place, texts: Evaluation['texts']): boolean {
  const text = texts.find(({ file }) => file === place.file)?.text;
  if (text === undefined) return false;
  const lines = text.split(/\r\n|\n/);
  const inside = (line: number, column: number): boolean =>
    Number.isInteger(line) && Number.isInteger(column) && line >= 1 && column >= 1 && column <= (lines[line - 1]?.length ?? -1) + 1;
  const forward = place.endLine > place.line || (place.endLine === place.line && place.endColumn >= place.column);
  return inside(place.line, place.column) && inside(place.endLine, place.endColumn) && forward;
}

/** Every finding has a real place, and says what it says in plain words. */
export function expectPlainAndPlaced({ findings, texts }: Evaluation, where = ''): void {
  for (const finding of findings) {
    const { message, fixes, related, file, line, column, endLine, endColumn } = finding;
    const shown = `${where} ${file}:${line}:${column}-${endLine}:${endColumn} ${finding.id}: ${message}`;
    const told = [message, ...fixes.map(fix => fix.title), ...related.map(other => other.message)];
    expect(told.flatMap(programmersWords), shown).toEqual([]);
    expect(message, shown).toMatch(/^[^a-z].*[.!?]$/s);
    const places = [finding, ...related, ...fixes.flatMap(fix => fix.edits.map(edit => edit.place))];
    expect(places.filter(place => !isRealPlace(place, texts)), shown).toEqual([]);
    // Nobody sees a mark of no width.
    expect(endLine > line || endColumn > column, `${shown} has no width`).toBe(true);
  }
}
