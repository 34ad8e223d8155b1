import type { Finding, Place, TextChange } from '../../findings/finding.ts';
import type { SpecText } from '../../lowering/names.ts';
import { Placer } from '../../lowering/placer.ts';
import { applied, type Span } from '../../syntax/text-edit.ts';

/** Another way to write a part of a text, as the editor offers it. */
export interface Rewrite {
  readonly title: string;
  readonly kind: 'rewrite' | 'extract' | 'inline';
  /** None of them touches another. */
  readonly edits: readonly TextChange[];
  /** The text with all of them made. */
  readonly text: string;
  /** Where in that text a name stands that was chosen for the writer, who may want another. */
  readonly cursor?: Place;
  readonly keeps: Keeps;
}

/** What is the same after a rewrite: it is offered only where that holds. */
export interface Keeps {
  /** The most that a length may move, m; absent where the numbers are meant to change. */
  readonly within?: number;
  /** Parts of the job that are meant to change. */
  readonly but?: readonly ('system' | 'usualFall' | 'name' | 'centre')[];
  /** The finding that it mends. */
  readonly mends?: Finding['id'];
}

/** Writes `text` in the place of a span; an insertion has an empty one. `cursor`: where in `text` the cursor goes. */
export interface Edit extends Span {
  readonly text: string;
  readonly cursor?: number;
}

/** A rewrite from the edits that it is made of, in any order. */
export function rewrite(
  spec: SpecText,
  { title, kind, keeps }: Pick<Rewrite, 'title' | 'kind' | 'keeps'>,
  edits: readonly Edit[]
): Rewrite {
  const sorted = [...edits].sort((left, right) => left.start - right.start || left.end - right.end);
  const placer = Placer.of(spec);
  const text = applied(spec.parsed.text, sorted);
  const cursor = cursorAfter(sorted);
  return {
    title,
    kind,
    keeps,
    edits: sorted.map(edit => placer.change(edit)),
    text,
    ...(cursor === undefined ? {} : { cursor: new Placer(spec.file, text).place(cursor, cursor) })
  };
}

function cursorAfter(sorted: readonly Edit[]): number | undefined {
  let moved = 0;
  for (const { start, end, text, cursor } of sorted) {
    if (cursor !== undefined) return start + moved + cursor;
    moved += text.length - (end - start);
  }
  return undefined;
}

/** Touching is enough: the cursor may stand right behind a word. */
export function touches(one: Span, other: Span): boolean {
  return one.start <= other.end && other.start <= one.end;
}

export function covers(outer: Span, inner: Span): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}
