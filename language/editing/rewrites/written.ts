import type { ParsedText } from '../../syntax/parse.ts';
import type { SumList, WrittenSum } from '../../lowering/sums.ts';
import type { Span } from '../../syntax/text-edit.ts';

/** A part of a text on one line; undefined where a comment stands in it, which would be lost. */
export function onOneLine({ text, comments }: ParsedText, { start, end }: Span): string | undefined {
  if (comments.some(({ startOffset }) => start <= startOffset && startOffset < end)) return undefined;
  return text.slice(start, end).replace(/\s+/g, ' ');
}

/** A sum as it has to be written where no list gives it a measure: `12 ft` for the first of `12 x 16 ft`. */
export function standingAlone(parsed: ParsedText, sum: WrittenSum): string | undefined {
  const written = onOneLine(parsed, sum);
  if (written === undefined || sum.given === undefined || isNought(sum)) return written;
  return sum.form === 'quantity' ? `${written} ${sum.given}` : `(${written}) ${sum.given}`;
}

export function isNought({ amount }: WrittenSum): boolean {
  return amount?.value.equals(0) === true;
}

/** Whether it takes anything from the value of a name. */
export function hasNames({ form, inside }: WrittenSum): boolean {
  return form === 'name' || inside.some(hasNames);
}

/** A sum and all that it is made of. */
export function withParts(sum: WrittenSum): WrittenSum[] {
  return [sum, ...sum.inside.flatMap(withParts)];
}

/** The list that an offset lies in, of lists in the order of their text. */
export function listAt(lists: readonly SumList[], offset: number): SumList | undefined {
  let low = 0;
  let high = lists.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lists[middle]!.start <= offset) low = middle;
    else high = middle - 1;
  }
  const list = lists[low];
  return list !== undefined && list.start <= offset && offset < list.end ? list : undefined;
}

/** The `let` itself, not what stands in its sum. */
export function isWholeLet(list: SumList, sum: WrittenSum): boolean {
  return list.holder === 'Let' && list.sums[0] === sum;
}
