import type { ParsedText } from './parse.ts';
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
export function statementTree({ tokens, statements, chunks }: ParsedText): Statement[] {
  let at = 0;
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
  return chunks.flatMap((_, index) => {
    const firstOfNext = chunks[index + 1]?.firstToken ?? tokens.length;
    return read(firstOfNext);
  });
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
