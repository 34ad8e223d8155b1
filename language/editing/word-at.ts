import type { Place } from '../findings/finding.ts';
import type { SpecText } from '../lowering/names.ts';
import type { ParsedText } from '../syntax/parse.ts';
import { firstIndex, statementPathTo } from '../syntax/statement-tree.ts';
import type { WordPlace } from './word-help.ts';
import { endOf, placeBetween } from './words.ts';

/** A word, number or sign of a text. */
export interface WordAt {
  readonly index: number;
  readonly word: string;
  /** `ID`, `NUMBER`, `MEASURE`, …, or the word itself where it is one of the language. */
  readonly type: string;
  readonly offset: number;
  readonly place: Place;
  /** Absent where the text is too broken to tell. */
  readonly at?: WordPlace;
}

/** The word that an offset lies in, or else that ends there; undefined between words. */
export function wordAt(text: SpecText, offset: number): WordAt | undefined {
  const { tokens } = text.parsed;
  let index = firstIndex(tokens, ({ startOffset }) => startOffset > offset) - 1;
  // A brace that was never written is no word.
  while (tokens[index]?.image === '') index--;
  const token = tokens[index];
  if (token === undefined || offset > endOf(token)) return undefined;
  const at = placeOfWord(text.parsed, index);
  return {
    index,
    word: token.image,
    type: token.tokenType.name,
    offset: token.startOffset,
    place: placeBetween(text.file, token, token),
    ...(at === undefined ? {} : { at })
  };
}

/** Absent between the braces of a statement, where no statement of its own begins. */
function placeOfWord(parsed: ParsedText, index: number): WordPlace | undefined {
  const around = statementPathTo(parsed, index).at(-1);
  if (around === undefined) return undefined;
  const { block, word, first, open, close } = around;
  if (open !== undefined && open < index && index < close!) return undefined;
  return first === index ? { block } : { block, statement: word };
}
