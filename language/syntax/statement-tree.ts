import type { ParsedText } from './parse.ts';
import type { Span } from './text-edit.ts';
import type { BlockName } from './words.ts';

/** A statement by the places of its tokens, `end` being one past the last; also in a broken text. */
export interface Statement {
  /** Its word; of a line that begins with a name (a side of an area) the name. */
  readonly word: string;
  /** The block that it stands in. */
  readonly block: BlockName;
  readonly first: number;
  readonly end: number;
  /** Its opening brace, if it has a block. */
  readonly open?: number;
  /** Its closing brace; one that was never written is an empty token. */
  readonly close?: number;
  /** The block inside the braces. */
  readonly opens?: BlockName;
  readonly inside: readonly Statement[];
}

/**
 * The statements of a text, one within the other, sound or broken, as the scanner parted them. They follow each other
 * without a gap: a comma between two is no token.
 */
export function statementTree(parsed: ParsedText): Statement[] {
  return parsed.chunks.flatMap((_, chunk) => statementsOfChunk(parsed, chunk));
}

/** The top-level statements that lie between two offsets at least in part, and perhaps some beside: without a look at the others. */
export function statementsWithin(parsed: ParsedText, { start, end }: Span): Statement[] {
  const { chunks } = parsed;
  const first = Math.max(0, firstIndex(chunks, chunk => chunk.start >= start) - 1);
  const after = firstIndex(chunks, chunk => chunk.start > end);
  return chunks.slice(first, after).flatMap((_, at) => statementsOfChunk(parsed, first + at));
}

/** The statements that hold an offset, or end there, from the outermost inwards. */
export function statementPathAt(parsed: ParsedText, offset: number): Statement[] {
  const span = ({ first, end }: Statement): Span => spanOf(parsed, first, end);
  return pathIn(statementsWithin(parsed, { start: offset, end: offset }), {
    beginsBehind: statement => span(statement).start > offset,
    reaches: statement => offset <= span(statement).end
  });
}

/** The statements that hold a word, by its place among all words, from the outermost inwards. */
export function statementPathTo(parsed: ParsedText, word: number): Statement[] {
  const after = firstIndex(parsed.chunks, ({ firstToken }) => firstToken > word);
  return pathIn(statementsOfChunk(parsed, after - 1), {
    beginsBehind: ({ first }) => first > word,
    reaches: ({ end }) => word < end
  });
}

/** How a statement lies to a place. */
interface Lies {
  readonly beginsBehind: (statement: Statement) => boolean;
  readonly reaches: (statement: Statement) => boolean;
}

/** Found by halving, for a block may be long. Where two statements touch, the one that begins there. */
function pathIn(statements: readonly Statement[], lies: Lies): Statement[] {
  const found = statements[firstIndex(statements, lies.beginsBehind) - 1];
  return found === undefined || !lies.reaches(found) ? [] : [found, ...pathIn(found.inside, lies)];
}

/** From the first to past the last character of words that follow each other, `end` being one past the last word. */
export function spanOf({ tokens }: ParsedText, first: number, end: number): Span {
  const last = tokens[Math.max(first, end - 1)]!;
  return { start: tokens[first]!.startOffset, end: last.startOffset + last.image.length };
}

/** The place of the `meets` among the words of a line about a side; its end where there is none. */
export function meetsOf(tokens: ParsedText['tokens'], { first, end }: Pick<Statement, 'first' | 'end'>): number {
  let at = first;
  while (at < end && tokens[at]!.tokenType.name !== 'meets') at++;
  return at;
}

/** The statements stay with the text they were read from and go with it: whoever asks word by word reads them once. */
const readBefore = new WeakMap<ParsedText, Map<number, readonly Statement[]>>();

function statementsOfChunk(parsed: ParsedText, chunk: number): readonly Statement[] {
  const known = readBefore.get(parsed) ?? new Map<number, readonly Statement[]>();
  readBefore.set(parsed, known);
  const statements = known.get(chunk) ?? readStatements(parsed, chunk);
  known.set(chunk, statements);
  return statements;
}

function readStatements({ tokens, statements, chunks }: ParsedText, chunk: number): Statement[] {
  if (chunks[chunk] === undefined) return [];
  const { firstToken } = chunks[chunk];
  let at = firstIndex(statements, ({ token }) => token >= firstToken);
  const read = (limit: number): Statement[] => {
    const found: Statement[] = [];
    while (at < statements.length && statements[at]!.token < limit) {
      const { token, block, opens } = statements[at]!;
      at++;
      const braces = opens === undefined ? undefined : bracesAfter(tokens, token, limit);
      const inside = braces === undefined ? [] : read(braces.close);
      const next = statements[at]?.token ?? limit;
      found.push({
        word: tokens[token]!.image,
        block,
        first: token,
        end: braces === undefined ? Math.min(next, limit) : braces.close + 1,
        ...(braces ?? {}),
        ...(opens === undefined ? {} : { opens }),
        inside
      });
    }
    return found;
  };
  return read(chunks[chunk + 1]?.firstToken ?? tokens.length);
}

/** The first of a sorted list that is as wanted, by halving; its length if none is. */
export function firstIndex<T>(sorted: readonly T[], isWanted: (each: T) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isWanted(sorted[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The braces of a statement: the first { before the next statement could begin, and the } that belongs to it. */
function bracesAfter(
  tokens: ParsedText['tokens'],
  first: number,
  limit: number
): { readonly open: number; readonly close: number } | undefined {
  let open = first;
  while (open < limit && tokens[open]!.tokenType.name !== '{') open++;
  let depth = 0;
  for (let close = open; close < limit; close++) {
    const { name } = tokens[close]!.tokenType;
    if (name === '{') depth++;
    if (name === '}' && --depth === 0) return { open, close };
  }
  return undefined;
}
