/**
 * Wider than this, a first column stands out by itself instead of moving all others. It has to stay inside the scanner's
 * look ahead for `meets` after a point that is called like a top-level word.
 */
const WIDEST_HEAD = 30;
/** Comments at the ends of lines begin in this column, so that they run down the page in one line … */
const COMMENT_COLUMN = 38;
/** … and those of neighbouring lines further right if one of them is longer, but not behind a very long one. */
const WIDEST_BEFORE_COMMENT = 60;
/** At least this much white space stands before a comment. */
const BEFORE_COMMENT = 2;

export interface Line {
  readonly indent: number;
  text: string;
  comment?: string;
  /** A blank line stands before it. */
  readonly blank: boolean;
}

/** How much each head is padded so that what follows lines up. */
export function padding(widths: readonly number[], widest = WIDEST_HEAD, least = 0): number[] {
  const column = widths.reduce((most, width) => (width > widest ? most : Math.max(most, width)), least);
  return widths.map(width => Math.max(0, column - width));
}

/** The lines as text, with the comments at the ends of neighbouring lines in one column. */
export function printed(lines: readonly Line[], lineEnd: string): string {
  const texts: string[] = [];
  for (let from = 0, to = 0; from < lines.length; from = to) {
    do to++;
    while (to < lines.length && commentsAlign(lines[to - 1]!, lines[to]!));
    const run = lines.slice(from, to);
    const widths = run.map(({ indent, text }) => indent + text.length);
    const pads = padding(widths, WIDEST_BEFORE_COMMENT, COMMENT_COLUMN - BEFORE_COMMENT);
    run.forEach(({ indent, text, comment, blank }, at) => {
      if (blank) texts.push(lineEnd);
      texts.push(' '.repeat(indent), text);
      if (comment !== undefined) texts.push(' '.repeat(pads[at]! + BEFORE_COMMENT), comment);
      texts.push(lineEnd);
    });
  }
  return texts.join('');
}

function commentsAlign(before: Line, line: Line): boolean {
  return before.comment !== undefined && line.comment !== undefined && !line.blank && before.indent === line.indent;
}
