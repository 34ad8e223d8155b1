import type { Place } from '../findings/finding.ts';
import type { ParsedText, Token } from '../syntax/parse.ts';
import type { Span } from '../syntax/text-edit.ts';

/** A word, number or sign of a text, or a comment, as the scanner parted them. */
export type Word = Token;

export const startOf = (word: Word): number => word.startOffset;

/** One past the last character. */
export const endOf = (word: Word): number => word.startOffset + word.image.length;

/** Whether the word is one of the language here, and no name, number or text. */
export function isKeyword({ image, tokenType }: Word): boolean {
  return tokenType.name === image && /^\p{Ll}/u.test(image);
}

export function spanBetween(first: Word, last: Word): Span {
  return { start: startOf(first), end: endOf(last) };
}

/** From the start of one word to the end of another. */
export function placeBetween(file: string, first: Word, last: Word): Place {
  return {
    file,
    line: first.startLine!,
    column: first.startColumn!,
    endLine: last.endLine!,
    endColumn: last.image === '' ? last.startColumn! : last.endColumn! + 1
  };
}

/** The words from `first` up to `end` as written, on one line and without comments. */
export function written(parsed: ParsedText, first: number, end: number): string {
  let text = '';
  for (let at = first; at < end; at++) {
    const word = parsed.tokens[at]!;
    const before = parsed.tokens[at - 1];
    const touches = at === first || before === undefined || endOf(before) === startOf(word);
    text += (touches ? '' : ' ') + word.image;
  }
  return text;
}

/** The place of the last word that reads as wanted; -1 where none does. */
export function lastOf(words: readonly { readonly image: string }[], wanted: RegExp): number {
  let at = words.length - 1;
  while (at >= 0 && !wanted.test(words[at]!.image)) at--;
  return at;
}
