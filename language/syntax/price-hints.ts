import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';

/** Help with prices and stock; `at` is the odd word's index, or one past the end. */
export function priceHint(tokens: readonly IToken[], at: number): Hint | undefined {
  return (
    amountFirst(tokens, at) ??
    packLast(tokens, at) ??
    deliveredLast(tokens, at) ??
    perLoad(tokens, at) ??
    freeOver(tokens, at) ??
    perPiece(tokens, at) ??
    taxOnTop(tokens, at) ??
    taxIn(tokens, at) ??
    tasksInRow(tokens, at)
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
  return inTurn(`${rest.join(' ')} ${name.image}`, name, tokens[last]!, 'Write how much first', 'stock ');
}

/** `25 kg bag for 3.60 GBP`: how it is sold begins the line. */
function packLast(tokens: readonly IToken[], at: number): Hint | undefined {
  const [number, measure, way] = tokens.slice(at, at + 3);
  if (number?.tokenType.name !== 'NUMBER' || measure?.tokenType.name !== 'MEASURE') return undefined;
  if (way === undefined || !PACKS.has(way.image) || way.startLine !== number.startLine) return undefined;
  return inTurn(`${way.image} of ${number.image} ${measure.image}`, number, way, 'Write how it is sold first');
}

const PACKS: ReadonlySet<string> = new Set(['bag', 'bulk-bag', 'pallet', 'pack', 'roll', 'length', 'box']);

/** `delivered 1 pallet flag-450`: what came stands before how much. */
function deliveredLast(tokens: readonly IToken[], at: number): Hint | undefined {
  const [delivered, number] = [tokens[at - 1], tokens[at]];
  if (delivered?.image !== 'delivered' || number?.tokenType.name !== 'NUMBER') return undefined;
  let last = at;
  while (tokens[last + 1]?.startLine === number.startLine && !/^[,}]$/.test(tokens[last + 1]!.image)) last++;
  const name = tokens[last]!;
  if (last - at < 1 || name.tokenType.name !== 'ID') return undefined;
  const much = tokens.slice(at, last).map(({ image }) => image);
  return inTurn(`${name.image} ${much.join(' ')}`, number, name, 'Name what came first');
}

/** The same words in the order in which they are read; `after`: what stands before them and is told along. */
function inTurn(words: string, { startOffset: start }: IToken, last: IToken, why: string, after = ''): Hint {
  const shown = after + words;
  const fixes = [{ title: `Write \`${shown}\``, edits: [{ start, end: last.endOffset! + 1, text: words }] }];
  return { message: `${why}: \`${shown}\`.`, fixes, isWhole: true };
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

/** `tax on top`: it is added to the prices. */
function taxOnTop(tokens: readonly IToken[], at: number): Hint | undefined {
  const word = [at, at + 1].map(index => tokens[index]).find(token => token?.image === 'top');
  const tax = tokens.slice(Math.max(0, at - 2), at).find(({ image }) => image === 'tax');
  if (word === undefined || tax === undefined) return undefined;
  const edits = [{ start: tax.endOffset! + 1, end: word.endOffset! + 1, text: ' added' }];
  return { message: 'Write `tax added`.', fixes: [{ title: 'Write `tax added`', edits }], isWhole: true };
}

/** `hire "Plate" 45 GBP a day, for base, vibrating`: a comma begins another clause. */
function tasksInRow(tokens: readonly IToken[], at: number): Hint | undefined {
  const [word, comma, next] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (comma?.tokenType.name !== ',' || word?.tokenType.name !== 'ID' || next?.tokenType.name !== 'ID') return undefined;
  const line = tokens.slice(0, at).filter(({ startLine }) => startLine === comma.startLine);
  if (line[0]?.image !== 'hire' && line[0]?.image !== 'task') return undefined;
  const edits = [{ start: word.endOffset! + 1, end: comma.endOffset! + 1, text: ' and' }];
  return { message: 'Between two tasks write `and`.', fixes: [{ title: 'Write `and`', edits }], isWhole: true };
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
