import type { ParsedText, Token } from '../syntax/parse.ts';

/** How a word or a comment is written in the canonical form. */
export function spelling({ tokenType, image }: Token): string {
  if (tokenType.name === '-') return '-';
  return tokenType.name === 'COMMENT' ? image.trimEnd() : image;
}

/** What the words of a text are beyond what they look like, by their offsets. */
export interface Roles {
  /** Minus signs that stand before a value and not between two: `north -3 m`. */
  readonly negatives: ReadonlySet<number>;
  /** Points that follow others in a row of points with their heights: `A 1.462  B 1.470 m`. */
  readonly nextSpots: ReadonlySet<number>;
}

/** The white space between two words of one line. */
export function gap(before: Token, token: Token, text: string, { negatives, nextSpots }: Roles): string {
  const [left, right] = [before.tokenType.name, token.tokenType.name];
  if (left === '(' || right === ')' || right === ',') return '';
  if (negatives.has(before.startOffset)) return '';
  if (nextSpots.has(token.startOffset)) return '  ';
  // 12' and 45°, but 12 ft and 5 %
  if (right === 'MEASURE' && left !== 'per' && /^[^\p{L}%]/u.test(token.image)) return '';
  // The hyphen of a tape, 12'-6"
  if (left === 'MEASURE' && right === 'NUMBER' && /^[-−]$/.test(text.slice(before.endOffset! + 1, token.startOffset)))
    return '-';
  // A whole number and a fraction could be read as one number with other white space between them.
  if (left === 'NUMBER' && right === 'NUMBER') return text.slice(before.endOffset! + 1, token.startOffset);
  return right === 'meets' ? '  ' : ' ';
}

export function rolesIn(root: ParsedText['root']): Roles {
  const negatives = new Set<number>();
  const nextSpots = new Set<number>();
  const waiting: unknown[] = [root];
  while (waiting.length > 0) {
    const node = waiting.pop();
    if (Array.isArray(node)) for (const each of node as unknown[]) waiting.push(each);
    if (!isNode(node)) continue;
    if (node.$type === 'Negative') negatives.add(node.$cstNode!.offset);
    if (node.$type === 'SpotHeight' && node.$containerIndex! > 0) nextSpots.add(node.$cstNode!.offset);
    for (const [name, value] of Object.entries(node)) if (!name.startsWith('$')) waiting.push(value);
  }
  return { negatives, nextSpots };
}

type Node = Pick<ParsedText['root'], '$cstNode' | '$containerIndex'> & { readonly $type: string };

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && '$type' in value;
}
