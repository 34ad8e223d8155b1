import type { ParsedText, Token } from '../syntax/parse.ts';

/** How a word or a comment is written in the canonical form. */
export function spelling({ tokenType, image }: Token): string {
  if (tokenType.name === '-') return '-';
  return tokenType.name === 'COMMENT' ? image.trimEnd() : image;
}

/** The white space between two words of one line. */
export function gap(before: Token, token: Token, text: string, signsOfNegatives: ReadonlySet<number>): string {
  const [left, right] = [before.tokenType.name, token.tokenType.name];
  if (left === '(' || right === ')' || right === ',') return '';
  if (signsOfNegatives.has(before.startOffset)) return '';
  // 12' and 45°, but 12 ft and 5 %
  if (right === 'MEASURE' && left !== 'per' && /^[^\p{L}%]/u.test(token.image)) return '';
  // The hyphen of a tape, 12'-6"
  if (left === 'MEASURE' && right === 'NUMBER' && /^[-−]$/.test(text.slice(before.endOffset! + 1, token.startOffset)))
    return '-';
  // A whole number and a fraction could be read as one number with other white space between them.
  if (left === 'NUMBER' && right === 'NUMBER') return text.slice(before.endOffset! + 1, token.startOffset);
  return right === 'meets' ? '  ' : ' ';
}

/** The places of the minus signs that stand before a value and not between two: `north -3 m`. */
export function signsOfNegatives(root: ParsedText['root']): ReadonlySet<number> {
  const signs = new Set<number>();
  const waiting: unknown[] = [root];
  while (waiting.length > 0) {
    const node = waiting.pop();
    if (Array.isArray(node)) for (const each of node as unknown[]) waiting.push(each);
    if (!isNode(node)) continue;
    if (node.$type === 'Negative') signs.add(node.$cstNode!.offset);
    for (const [name, value] of Object.entries(node)) if (!name.startsWith('$')) waiting.push(value);
  }
  return signs;
}

type Node = Pick<ParsedText['root'], '$cstNode'> & { readonly $type: string };

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && '$type' in value;
}
