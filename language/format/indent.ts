import type { ParsedText, Token } from '../syntax/parse.ts';
import { indentAt, type TextEdit } from '../syntax/text-edit.ts';
import { BLOCKS } from '../syntax/words.ts';
import { CONTINUED, INDENT } from './layout.ts';

/**
 * The right indent of the line that an offset lies in, in a text however half-typed: nothing else of the line moves.
 * A line that begins with } stands under the line of its {; a line behind a comma or a sign goes on with the one before.
 */
export function indentEdits(parsed: ParsedText, offset: number): TextEdit[] {
  const { text, tokens } = parsed;
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const old = /^[^\S\n]*/.exec(text.slice(start))![0];
  const open = openBraces(tokens, start);
  const closes = text[start + old.length] === '}';
  const brace = open.at(-1);
  if (brace === undefined && (closes || isInUnknown(text, start))) return [];
  const outer = brace === undefined ? '' : indentAt(text, brace.startOffset);
  const indent = closes || brace === undefined ? outer : outer + ' '.repeat(INDENT);
  const wanted = !closes && goesOn(parsed, start) ? indent + ' '.repeat(CONTINUED) : indent;
  return wanted === old ? [] : [{ start, end: start + old.length, text: wanted }];
}

/** Behind a line that is itself set in, or opens a block, of which nothing is known: nobody knows better than who types. */
function isInUnknown(text: string, lineStart: number): boolean {
  const before = text.slice(text.lastIndexOf('\n', lineStart - 2) + 1, lineStart);
  return /^[^\S\n]+\S/.test(before) || /\{\s*$/.test(before);
}

/** The braces that are open before an offset. One that was never closed stays open as far as nothing is written behind it. */
function openBraces(tokens: readonly Token[], offset: number): Token[] {
  const open: Token[] = [];
  let forgotten = 0;
  for (const token of tokens) {
    if (token.startOffset >= offset) break;
    const { name } = token.tokenType;
    if (name === '}' && token.image === '') {
      forgotten++;
      continue;
    }
    for (; forgotten > 0; forgotten--) open.pop();
    if (name === '{') open.push(token);
    if (name === '}') open.pop();
  }
  return open;
}

/** The last word before calls for more; a comma does not where it may part statements. */
function goesOn({ text, tokens, statements }: ParsedText, offset: number): boolean {
  const next = tokens.findIndex(({ startOffset }) => startOffset >= offset);
  let at = (next < 0 ? tokens.length : next) - 1;
  while (at >= 0 && tokens[at]!.image === '') at--;
  const before = tokens[at];
  if (before === undefined || /\n[^\S\n]*\n/.test(text.slice(before.endOffset! + 1, offset))) return false;
  if (before.tokenType.name !== ',') return ['+', '-', '*', '/', '='].includes(before.tokenType.name);
  const block = statements.filter(({ token }) => token <= at).at(-1)?.block;
  return block !== undefined && !BLOCKS[block].commas;
}
