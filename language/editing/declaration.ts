import { placeOf } from '../lowering/context.ts';
import type { Declared } from '../lowering/names.ts';
import { statementTree, type Statement } from '../syntax/statement-tree.ts';
import type { ParsedText } from '../syntax/parse.ts';

/** A declaration as its text has it. */
export interface Declaration {
  readonly parsed: ParsedText;
  readonly statement: Statement;
  /** 1-based. */
  readonly line: number;
}

/** The statement that declares a thing; undefined where its text could not be read so far. */
export function declarationOf({ text, node }: Declared): Declaration | undefined {
  const { parsed } = text;
  const { line, column } = placeOf(text, node, 'name');
  const name = parsed.tokens.findIndex(token => token.startLine === line && token.startColumn === column);
  const statement = name < 1 ? undefined : beginningAt(name - 1, statementTree(parsed));
  return statement && { parsed, statement, line };
}

function beginningAt(first: number, statements: readonly Statement[]): Statement | undefined {
  const around = statements.find(statement => statement.first <= first && first < statement.end);
  return around === undefined || around.first === first ? around : beginningAt(first, around.inside);
}

/** Longer declarations are cut off after so many lines. */
const MOST_LINES = 10;

/** As written, its left margin and the lines that say where figures come from left out. */
export function writtenLines({ parsed, statement }: Declaration): string[] {
  const { text, tokens } = parsed;
  const [first, last] = [tokens[statement.first]!, tokens[statement.end - 1]!];
  const noteAt = parsed.comments.find(
    ({ startLine, startOffset }) => startLine === last.endLine && startOffset > last.endOffset!
  );
  const isItsOwn = tokens[statement.end] === undefined || tokens[statement.end]!.startLine! > last.endLine!;
  const end = noteAt !== undefined && isItsOwn ? noteAt.endOffset! : last.endOffset!;
  const margin = new RegExp(`^[ \\t]{0,${first.startColumn! - 1}}`);
  const lines = text
    .slice(first.startOffset, end + 1)
    .split(/\r?\n/)
    .map((line, index) => (index === 0 ? line : line.replace(margin, '')).trimEnd())
    .filter(line => !/^\s*according-to\b/.test(line));
  return lines.length <= MOST_LINES ? lines : [...lines.slice(0, MOST_LINES), '…'];
}

/** The notes on the lines right above. */
export function notesAbove({ parsed, statement }: Declaration): string[] {
  const notes: string[] = [];
  let line = parsed.tokens[statement.first]!.startLine! - 1;
  const alone = new Map(
    parsed.comments
      .filter(
        ({ startOffset, startColumn }) => parsed.text.slice(startOffset - startColumn! + 1, startOffset).trim() === ''
      )
      .map(comment => [comment.startLine!, comment.image])
  );
  for (let note = alone.get(line); note !== undefined; note = alone.get(--line))
    notes.unshift(note.replace(/^\/\/\s*/, ''));
  return notes;
}

/** What stands behind `according-to`. */
export function sourceIn({ parsed, statement }: Declaration): string | undefined {
  const source = statement.inside.find(({ word }) => word === 'according-to');
  return source && parsed.tokens[source.first + 1]?.image.replaceAll('"', '');
}
