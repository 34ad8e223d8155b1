import { MOST_CHARACTERS } from '../../syntax/limits.ts';
import type { ParsedText, Token } from '../../syntax/parse.ts';
import { BRACES_AND_TEXTS } from '../../syntax/patterns.ts';
import { firstIndex, statementPathTo, type Statement } from '../../syntax/statement-tree.ts';
import { BLOCKS, type BlockName } from '../../syntax/words.ts';

/** The statement that is being written, as far as it stands before the word at the cursor. */
export interface Begun {
  /** Its word; of a line about a side the first name. */
  readonly word: string;
  readonly tokens: readonly Token[];
  /** What each word is to the grammar. */
  readonly kinds: readonly string[];
}

/** Where a cursor stands in a text. */
export interface Cursor {
  readonly parsed: ParsedText;
  /** The word at the cursor, by offsets; both are the cursor where there is none. */
  readonly start: number;
  readonly end: number;
  readonly block: BlockName;
  /** The statements whose blocks are open around the cursor, from the outermost inwards. */
  readonly around: readonly Statement[];
  /** A new statement may begin here. */
  readonly startsStatement: boolean;
  readonly begun?: Begun;
  /** Something follows on the line after the word, other than a comma, a brace that closes, or a comment. */
  readonly isFollowed: boolean;
}

const WORD_BEFORE = /[\p{L}_][\p{L}\p{M}\p{N}_-]*$/u;
const WORD_AFTER = /^[\p{L}\p{M}\p{N}_-]+/u;
const BEGINS_WORD = /^[\p{L}_]/u;

/** Undefined where nothing can be offered: in a comment, in a text in quotes, in a number, in what can't be read. */
export function cursorAt(parsed: ParsedText, offset: number): Cursor | undefined {
  const { text, tokens } = parsed;
  if (text.length > MOST_CHARACTERS || isInComment(parsed, offset)) return undefined;
  const { start, end } = wordAt(text, offset);
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const rest = restOfLine(text, end);
  const chunk = parsed.chunks[firstIndex(parsed.chunks, each => each.start >= start) - 1];
  if (chunk?.dropped) return undefined;
  let count = firstAt(tokens, start);
  while (count > 0 && tokens[count - 1]!.image === '') count--;
  const last = tokens[count - 1];
  if (last !== undefined && (last.endOffset! >= start || isOpenText(last, lineStart))) return undefined;
  const first = Math.min(chunk?.firstToken ?? 0, count);
  if (isUnread(text, chunk?.start ?? 0, start, tokens.slice(first, count))) return undefined;
  const isFirstOnLine = last === undefined || last.startOffset < lineStart;
  const between = text.slice(isFirstOnLine ? lineStart : last.endOffset! + 1, start);
  // What was passed over on this line makes it another statement than it seems.
  if (/[^\s,]/.test(between)) return undefined;
  const opening = openStatements(parsed, first, count).at(-1);
  const around = opening === undefined ? [] : statementPathTo(parsed, opening);
  const block = around.at(-1)?.opens ?? 'spec';
  const isOpen = last?.tokenType.name === '{' || last?.tokenType.name === '}';
  const before = isOpen ? undefined : begunStatement(parsed, count, between.includes(','));
  const goesOn = before !== undefined && goesOnAfter(before, block, isFirstOnLine);
  return {
    parsed,
    start,
    end,
    block,
    around,
    startsStatement: isFirstOnLine ? !goesOn || BLOCKS[block].commas : startsOnLine(block, before, last),
    ...(goesOn ? { begun: before } : {}),
    isFollowed: /^[^,}]/.test(rest)
  };
}

/** A statement goes on to the end of its line, and beyond it after a comma or a sign of a sum. */
function goesOnAfter({ kinds }: Begun, block: BlockName, isFirstOnLine: boolean): boolean {
  return !isFirstOnLine || (BLOCKS[block].lines === undefined && /^[,+*/=]$/.test(kinds.at(-1)!));
}

/** A statement begins on a line of its own, but for one right after a brace, or after a comma where the block allows it. */
function startsOnLine(block: BlockName, before: Begun | undefined, last: Token | undefined): boolean {
  if (last?.tokenType.name === '{') return true;
  return before?.kinds.at(-1) === ',' && BLOCKS[block].commas;
}

/** The text in quotes of a `use`: the offsets between its quotes. */
export interface UsePath {
  readonly start: number;
  readonly end: number;
  readonly opened: true;
  readonly closed: boolean;
}

/** The text of a `use` that the cursor stands in. */
export function usePathAt({ tokens }: ParsedText, offset: number): UsePath | undefined {
  const at = firstAt(tokens, offset) - 1;
  const token = tokens[at];
  if (token?.tokenType.name !== 'STRING' || tokens[at - 1]?.tokenType.name !== 'use') return undefined;
  const closed = token.image.length > 1 && token.image.endsWith('"');
  const end = token.startOffset + token.image.trimEnd().length - (closed ? 1 : 0);
  return offset <= end ? { start: token.startOffset + 1, end, opened: true, closed } : undefined;
}

/** The paths that other statements than the one at an offset use. */
export function pathsUsedElsewhere({ tokens }: ParsedText, offset: number): ReadonlySet<string> {
  const used = tokens.filter(({ tokenType, startOffset, endOffset }, at) => {
    const isPath = tokenType.name === 'STRING' && tokens[at - 1]?.tokenType.name === 'use';
    return isPath && (offset < startOffset || offset > endOffset! + 1);
  });
  return new Set(used.map(({ image }) => image.replaceAll('"', '')));
}

/** A text in quotes that is still being written on this line. */
function isOpenText({ tokenType, image, startOffset }: Token, lineStart: number): boolean {
  return tokenType.name === 'STRING' && startOffset >= lineStart && !/^.[^]*["“”»]$/.test(image);
}

function wordAt(text: string, offset: number): { start: number; end: number } {
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const before = WORD_BEFORE.exec(text.slice(lineStart, offset))?.[0] ?? '';
  const after = restOfLine(text, offset);
  const isWord = before !== '' || BEGINS_WORD.test(text.slice(offset, offset + 2));
  const rest = isWord ? (WORD_AFTER.exec(text.slice(offset, offset + after.length))?.[0] ?? '') : '';
  return { start: offset - before.length, end: offset + rest.length };
}

/** What stands on the line after an offset, without spaces around it and without a comment. */
function restOfLine(text: string, offset: number): string {
  const end = text.indexOf('\n', offset);
  return text
    .slice(offset, end < 0 ? undefined : end)
    .replace(/\/\/.*$/s, '')
    .trim();
}

function isInComment({ comments }: ParsedText, offset: number): boolean {
  const comment = comments[firstAt(comments, offset) - 1];
  return comment !== undefined && offset <= comment.endOffset! + 1;
}

/** The index of the first of some words that does not stand before an offset. */
function firstAt(tokens: readonly Token[], offset: number): number {
  return firstIndex(tokens, ({ startOffset }) => startOffset >= offset);
}

/** Inside a brace that opens nothing, nothing is read. */
function isUnread(text: string, from: number, to: number, tokens: readonly Token[]): boolean {
  const read = new Set(tokens.map(token => token.startOffset));
  let depth = 0;
  for (const { 0: mark, index } of text.slice(from, to).matchAll(BRACES_AND_TEXTS)) {
    if (read.has(from + index)) continue;
    if (mark === '{') depth++;
    else if (mark === '}') depth = Math.max(0, depth - 1);
  }
  return depth > 0;
}

/** The first words of the statements whose braces are open after the words from `first` up to `count`. */
function openStatements({ tokens, statements }: ParsedText, first: number, count: number): number[] {
  const starts = statements.filter(({ token, opens }) => opens !== undefined && token >= first && token < count);
  const open: number[] = [];
  let next = 0;
  let opening: number | undefined;
  for (let at = first; at < count; at++) {
    if (starts[next]?.token === at) opening = starts[next++]!.token;
    const { name } = tokens[at]!.tokenType;
    if (name === '{' && opening !== undefined) open.push(opening);
    if (name === '}') open.pop();
  }
  return open;
}

function begunStatement({ tokens, statements }: ParsedText, count: number, afterComma: boolean): Begun | undefined {
  const start = statements[firstIndex(statements, ({ token }) => token >= count) - 1];
  if (start === undefined) return undefined;
  const own = tokens.slice(start.token, count);
  const kinds = own.map(token => token.tokenType.name);
  // A comma that parts two statements is no word of either.
  const withComma = afterComma && kinds.at(-1) !== ',' ? [...kinds, ','] : kinds;
  return { word: own[0]!.image, tokens: own, kinds: withComma };
}
