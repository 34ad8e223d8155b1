import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';

/** Help with prices and stock; `at` is the odd word's index, or one past the end. */
export function priceHint(tokens: readonly IToken[], at: number): Hint | undefined {
  return amountFirst(tokens, at) ?? perLoad(tokens, at);
}

/** `stock slab-16 12`: what there is of it stands before its name. */
function amountFirst(tokens: readonly IToken[], at: number): Hint | undefined {
  const [stock, name, number] = [tokens[at - 2], tokens[at - 1], tokens[at]];
  if (stock?.tokenType.name !== 'stock' || name?.tokenType.name !== 'ID' || number?.tokenType.name !== 'NUMBER')
    return undefined;
  const line = name.startLine;
  let last = at;
  while (tokens[last + 1]?.startLine === line) last++;
  const rest = tokens.slice(at, last + 1).map(({ image }) => image);
  const words = `${rest.join(' ')} ${name.image}`;
  const end = tokens[last]!.endOffset! + 1;
  const fixes = [{ title: `Write \`stock ${words}\``, edits: [{ start: name.startOffset, end, text: words }] }];
  return { message: `Write how much first: \`stock ${words}\`.`, fixes, isWhole: true };
}

/** `delivery 65 USD per load`. */
function perLoad(tokens: readonly IToken[], at: number): Hint | undefined {
  const load = [at, at - 1].find(index => tokens[index]?.image === 'load' && tokens[index - 1]?.image === 'per');
  if (load === undefined || tokens[load - 4]?.image !== 'delivery') return undefined;
  const { startOffset: start, image } = tokens[load - 1]!;
  const fixes = [{ title: 'Write `a load`', edits: [{ start, end: start + image.length, text: 'a' }] }];
  return { message: 'Write `a load`.', fixes, isWhole: true };
}
