/** Leads offsets of a text to its lines, by halving; lines and columns from nought. */
export class LineStarts {
  private readonly starts: number[] = [0];
  private readonly length: number;

  constructor(text: string) {
    this.length = text.length;
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) this.starts.push(at + 1);
  }

  lineOf(offset: number): number {
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  offsetOf(line: number, column: number): number {
    return this.starts[line]! + column;
  }

  /** Where a line ends, before its break; the text's end for a line past the last. */
  endOf(line: number): number {
    const next = this.starts[line + 1];
    return next === undefined ? this.length : next - 1;
  }

  columnOf(offset: number): number {
    return offset - this.starts[this.lineOf(offset)]!;
  }
}
