import type { Place } from '../findings/finding.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import type { Span } from '../syntax/text-edit.ts';
import type { SpecText } from './names.ts';

/** Part of a text that is put into another. */
export interface Piece extends Span {
  readonly of: SpecText;
}

/** What stands instead of a part of a text: pieces, a line each, or words that stand in no text. */
export interface Splice extends Span {
  readonly pieces: readonly (Piece | string)[];
}

interface Segment {
  /** Where it begins in the spliced text. */
  readonly start: number;
  readonly length: number;
  readonly from: Piece | undefined;
}

/** A text with parts of it put otherwise, which knows where each letter comes from. */
export class SplicedText {
  readonly text: string;
  readonly #segments: Segment[] = [];
  readonly #lines: LineStarts;
  readonly #originLines = new Map<SpecText, LineStarts>();

  /** The splices do not overlap. */
  constructor(of: SpecText, splices: readonly Splice[]) {
    const source = of.parsed.text;
    const parts: string[] = [];
    let length = 0;
    const put = (text: string, from: Piece | undefined): void => {
      if (text === '') return;
      parts.push(text);
      this.#segments.push({ start: length, length: text.length, from });
      length += text.length;
    };
    let at = 0;
    for (const { start, end, pieces } of splices.toSorted((a, b) => a.start - b.start || a.end - b.end)) {
      put(source.slice(at, start), { of, start: at, end: start });
      for (const piece of pieces) {
        put('\n', undefined);
        if (typeof piece === 'string') put(piece, undefined);
        else put(piece.of.parsed.text.slice(piece.start, piece.end), piece);
        put('\n', undefined);
      }
      at = end;
    }
    put(source.slice(at), { of, start: at, end: source.length });
    this.text = parts.join('');
    this.#lines = new LineStarts(this.text);
  }

  /** Where a place in the spliced text was written; undefined where it was written nowhere, or in several parts. */
  originOf({ line, column, endLine, endColumn }: Omit<Place, 'file'>): (Piece & { readonly place: Place }) | undefined {
    const start = this.#lines.offsetOf(line - 1, column - 1);
    const end = this.#lines.offsetOf(endLine - 1, endColumn - 1);
    const segment = this.#segments.findLast(one => one.start <= start);
    if (segment?.from === undefined || end > segment.start + segment.length) return undefined;
    const { of, start: first } = segment.from;
    const from = first + start - segment.start;
    const piece = { of, start: from, end: from + end - start };
    return { ...piece, place: this.#placeOf(piece) };
  }

  #placeOf({ of, start, end }: Piece): Place {
    let lines = this.#originLines.get(of);
    if (lines === undefined) this.#originLines.set(of, (lines = new LineStarts(of.parsed.text)));
    return {
      file: of.file,
      line: lines.lineOf(start) + 1,
      column: lines.columnOf(start) + 1,
      endLine: lines.lineOf(end) + 1,
      endColumn: lines.columnOf(end) + 1
    };
  }
}
