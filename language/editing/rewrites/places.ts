import type { SpecText } from '../../lowering/names.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { firstIndex, statementAround, type Statement } from '../../syntax/statement-tree.ts';
import { beginsLine, lineBreakOf } from '../../syntax/text-edit.ts';
import type { Edit, Span } from './rewrite.ts';

/** From the first to past the last character of words that follow each other. */
export function spanOf({ tokens }: ParsedText, first: number, end: number): Span {
  return { start: tokens[first]!.startOffset, end: tokens[end - 1]!.endOffset! + 1 };
}

/** The top-level statement that an offset stands in, or right behind. */
export function topStatementAt(parsed: ParsedText, offset: number): Statement | undefined {
  const word = firstIndex(parsed.tokens, ({ startOffset }) => startOffset > offset) - 1;
  const statement = statementAround(parsed, word);
  return statement !== undefined && offset <= spanOf(parsed, statement.first, statement.end).end
    ? statement
    : undefined;
}

/** Whether a fault of the text lies in a statement: what it means is not known then. */
export function isBroken(parsed: ParsedText, { first, end }: Statement): boolean {
  const span = spanOf(parsed, first, end);
  return parsed.faults.some(({ offset }) => span.start <= offset && offset < span.end);
}

/**
 * New lines before a top-level statement and the comments that belong to it; a blank line parts them from a block of
 * several lines. `cursor`: where in the first of them the cursor goes.
 */
export function linesBefore(
  { parsed }: SpecText,
  statement: Statement,
  lines: readonly string[],
  cursor?: number
): Edit {
  const { tokens, comments, text } = parsed;
  const lineEnd = lineBreakOf(text);
  let line = tokens[statement.first]!.startLine!;
  const own = new Set(
    comments.filter(comment => beginsLine(text, comment.startOffset)).map(({ startLine }) => startLine)
  );
  while (own.has(line - 1)) line--;
  const start = startOfLine(parsed, statement, line);
  const isTall = line !== tokens[statement.end - 1]!.endLine;
  return {
    start,
    end: start,
    text: lines.map(each => each + lineEnd).join('') + (isTall ? lineEnd : ''),
    ...(cursor === undefined ? {} : { cursor })
  };
}

/** The start of the statement's own line, or of a comment's above it. */
function startOfLine({ tokens, text }: ParsedText, { first }: Statement, line: number): number {
  let at = tokens[first]!.startOffset;
  for (let up = tokens[first]!.startLine! - line; ; up--) {
    at = text.lastIndexOf('\n', at - 1) + 1;
    if (up === 0) return at;
    at--;
  }
}
