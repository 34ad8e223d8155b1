import type { Place, TextChange } from '../findings/finding.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import type { TextEdit } from '../syntax/text-edit.ts';
import type { SpecText } from './names.ts';

/** Leads offsets of a text to places. */
export class Placer {
  private readonly text: SpecText;
  private readonly lines: LineStarts;

  constructor(text: SpecText) {
    this.text = text;
    this.lines = new LineStarts(text.parsed.text);
  }

  place(start: number, end: number): Place {
    const { length } = this.text.parsed.text;
    const from = Math.min(start, length);
    const to = Math.min(end, Math.max(length, start));
    return {
      file: this.text.file,
      line: this.lines.lineOf(from) + 1,
      column: this.lines.columnOf(from) + 1,
      endLine: this.lines.lineOf(to) + 1,
      endColumn: this.lines.columnOf(to) + 1
    };
  }

  change({ start, end, text }: TextEdit): TextChange {
    return { place: this.place(start, end), text };
  }
}
