import type { Place, TextChange } from '../findings/finding.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import type { TextEdit } from '../syntax/text-edit.ts';
import type { SpecText } from './names.ts';

/** Leads offsets of a text to places. */
export class Placer {
  private readonly file: string;
  private readonly length: number;
  private readonly lines: LineStarts;

  /** `text` as it stands in the file, or as it would. */
  constructor(file: string, text: string) {
    this.file = file;
    this.length = text.length;
    this.lines = new LineStarts(text);
  }

  static of({ file, parsed }: SpecText): Placer {
    return new Placer(file, parsed.text);
  }

  place(start: number, end: number): Place {
    const from = Math.min(start, this.length);
    const to = Math.min(end, Math.max(this.length, start));
    return {
      file: this.file,
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
