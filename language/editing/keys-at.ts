import type { Place } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import type { SpecText } from '../lowering/names.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import { statementPathAt } from '../syntax/statement-tree.ts';
import { placeBetween } from './words.ts';

/**
 * Keys of what an offset of a text stands in, the innermost first; last the thing whose block it is. `places` as the text
 * was last lowered, `file` as they name it.
 */
export function keysAt({ parsed }: SpecText, file: string, places: ReadonlyMap<Key, Place>, offset: number): Key[] {
  const lines = new LineStarts(parsed.text);
  const line = lines.lineOf(offset) + 1;
  const column = lines.columnOf(offset) + 1;
  const [outermost] = statementPathAt(parsed, offset);
  const name = outermost && parsed.tokens[outermost.first + 1];
  const named = name && placeBetween(file, name, name);
  const own = [...places].filter(([, place]) => place.file === file);
  const around = own
    .filter(
      ([, place]) =>
        isBefore(place.line, place.column, line, column) && isBefore(line, column, place.endLine, place.endColumn)
    )
    .sort(
      ([, a], [, b]) => a.endLine - a.line - (b.endLine - b.line) || a.endColumn - a.column - (b.endColumn - b.column)
    );
  const block = own.filter(([, place]) => place.line === named?.line && place.column === named.column);
  return [...new Set([...around, ...block].map(([key]) => key))];
}

function isBefore(line: number, column: number, otherLine: number, otherColumn: number): boolean {
  return line < otherLine || (line === otherLine && column <= otherColumn);
}
