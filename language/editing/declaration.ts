import { placeOf } from '../lowering/context.ts';
import type { Declared } from '../lowering/names.ts';
import { firstIndex, statementAround, statementWith, type Statement } from '../syntax/statement-tree.ts';
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
  const name = firstIndex(
    parsed.tokens,
    token => token.startLine! > line || (token.startLine === line && token.startColumn! >= column)
  );
  const around = name < 1 || parsed.tokens[name] === undefined ? undefined : statementAround(parsed, name);
  const statement = around && beginningAt(name - 1, around);
  return statement && { parsed, statement, line };
}

function beginningAt(first: number, around: Statement): Statement | undefined {
  if (around.first === first) return around;
  const inside = statementWith(around.inside, first);
  return inside && beginningAt(first, inside);
}

/** Longer declarations are cut off after so many lines. */
const MOST_LINES = 10;

/** As written, its left margin and the lines that say where figures come from left out. */
export function writtenLines({ parsed, statement }: Declaration): string[] {
  const { text, tokens } = parsed;
  const [first, last] = [tokens[statement.first]!, tokens[statement.end - 1]!];
  const after = parsed.comments[firstIndex(parsed.comments, ({ startOffset }) => startOffset > last.endOffset!)];
  const noteAt = after?.startLine === last.endLine ? after : undefined;
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
  const { comments } = parsed;
  let at = firstIndex(comments, ({ startLine }) => startLine! > line) - 1;
  for (; comments[at]?.startLine === line && isAlone(comments[at]!, parsed); at--, line--)
    notes.unshift(comments[at]!.image.replace(/^\/\/\s*/, ''));
  return notes;
}

function isAlone({ startOffset, startColumn }: ParsedText['comments'][number], { text }: ParsedText): boolean {
  return text.slice(startOffset - startColumn! + 1, startOffset).trim() === '';
}

/** What stands behind `according-to`. */
export function sourceIn({ parsed, statement }: Declaration): string | undefined {
  const source = statement.inside.find(({ word }) => word === 'according-to');
  return source && parsed.tokens[source.first + 1]?.image.replaceAll('"', '');
}
