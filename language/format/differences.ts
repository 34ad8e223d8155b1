import type { ParsedText } from '../syntax/parse.ts';
import { smallest, type TextEdit } from '../syntax/text-edit.ts';

/**
 * What has to change for a text to become its other form, gap by gap between words: so a cursor stays at its word, and a
 * folded block folded. Both forms have the same words and comments.
 */
export function differences(before: ParsedText, after: ParsedText): TextEdit[] {
  const [old, next] = [inkOf(before), inkOf(after)];
  const edits: TextEdit[] = [];
  const compare = (start: number, end: number, text: string): void => {
    const edit = smallest(before.text, { start, end, text });
    if (edit.start < edit.end || edit.text !== '') edits.push(edit);
  };
  let [oldEnd, nextEnd] = [0, 0];
  old.forEach((word, at) => {
    const other = next[at]!;
    compare(oldEnd, word.start, after.text.slice(nextEnd, other.start));
    compare(word.start, word.end, after.text.slice(other.start, other.end));
    [oldEnd, nextEnd] = [word.end, other.end];
  });
  compare(oldEnd, before.text.length, after.text.slice(nextEnd));
  return edits;
}

/** Words and comments in their order; a word that was never written has no place. */
function inkOf({ tokens, comments }: ParsedText): { readonly start: number; readonly end: number }[] {
  return [...tokens, ...comments]
    .filter(({ image }) => image !== '')
    .map(({ startOffset, endOffset }) => ({ start: startOffset, end: endOffset! + 1 }))
    .sort((left, right) => left.start - right.start);
}
