import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';

/** Help with prices and stock; `at` is the odd word's index, or one past the end. */
export function priceHint(tokens: readonly IToken[], at: number): Hint | undefined {
  return (
    amountFirst(tokens, at) ?? perLoad(tokens, at) ?? freeOver(tokens, at) ?? perPiece(tokens, at) ?? taxIn(tokens, at)
  );
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

/** `free over 500 USD`: from that much on nothing is charged. */
function freeOver(tokens: readonly IToken[], at: number): Hint | undefined {
  const word = tokens[at];
  if (word === undefined || tokens[at - 1]?.image !== 'free' || !OVER.has(word.image)) return undefined;
  const fixes = [
    { title: 'Write `from`', edits: [{ start: word.startOffset, end: word.endOffset! + 1, text: 'from' }] }
  ];
  return { message: 'Write `from`: `free from 500 USD`.', fixes, isWhole: true };
}

const OVER: ReadonlySet<string> = new Set(['over', 'above', 'after']);

/** `piece for 3.95 USD each`: what is sold stands before the price. */
function perPiece(tokens: readonly IToken[], at: number): Hint | undefined {
  const [before, word] = [tokens[at - 1], tokens[at]];
  if (word?.image !== 'each' || before === undefined || before.tokenType.name !== 'MEASURE') return undefined;
  const edits = [{ start: before.endOffset! + 1, end: word.endOffset! + 1, text: '' }];
  const message = 'Leave `each` out: what one price is for stands before it, as in `piece for 3.95 USD`.';
  return { message, fixes: [{ title: 'Take `each` out', edits }], isWhole: true };
}

/** `inc VAT` behind a price. */
function taxIn(tokens: readonly IToken[], at: number): Hint | undefined {
  const word = tokens[at];
  if (word === undefined || !/^(?:inc|incl|including|plus|VAT)$/i.test(word.image)) return undefined;
  return {
    message: 'Say on a line of its own whether tax is in the price: `tax included` or `tax added`.',
    fixes: [],
    isWhole: true
  };
}
