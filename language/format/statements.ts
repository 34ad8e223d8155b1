import type { ParsedText, Token } from '../syntax/parse.ts';

/** A statement by the places of its tokens, `end` being one past the last. */
export interface Statement {
  readonly first: number;
  readonly end: number;
  /** Its opening brace, if it has a block; the closing one is its last token. */
  readonly open?: number;
  readonly inside: readonly Statement[];
}

interface Node {
  readonly $cstNode?: { readonly offset: number } | undefined;
  readonly items?: readonly Node[];
  /** Of an example of a rule. */
  readonly elements?: readonly Node[];
}

/** Statements follow each other without a gap, for a comma that parts two of them is no token. */
export function statementsOf({ root, tokens }: ParsedText): Statement[] {
  const places = new Map(tokens.map((token, at) => [token.startOffset, at]));
  const read = (nodes: readonly Node[], end: number): Statement[] => {
    const firsts = nodes.map(node => places.get(node.$cstNode!.offset)!);
    return nodes.map((node, at) => statement(node, firsts[at]!, firsts[at + 1] ?? end));
  };
  const statement = (node: Node, first: number, end: number): Statement => {
    if (!isBrace(tokens[end - 1]!, '}')) return { first, end, inside: [] };
    let open = first;
    while (!isBrace(tokens[open]!, '{')) open++;
    return { first, end, open, inside: read(node.items ?? node.elements ?? [], end - 1) };
  };
  return read(root.elements, tokens.length);
}

function isBrace(token: Token, brace: '{' | '}'): boolean {
  return token.tokenType.name === brace;
}
