import type { TextChange } from '../findings/finding.ts';
import { Placer } from '../lowering/placer.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import { applied, smallest } from '../syntax/text-edit.ts';

/** A text with changes of it that do not overlap; of two at one place the first stands first. */
export function applyChanges(text: string, changes: readonly TextChange[]): string {
  const lines = new LineStarts(text);
  return applied(
    text,
    changes.map(({ place, text: words }) => ({
      start: lines.offsetOf(place.line - 1, place.column - 1),
      end: lines.offsetOf(place.endLine - 1, place.endColumn - 1),
      text: words
    }))
  );
}

/** The one change that makes a text of a file another, without what stays the same at both ends. */
export function changeBetween(file: string, before: string, after: string): TextChange {
  return new Placer(file, before).change(smallest(before, { start: 0, end: before.length, text: after }));
}
