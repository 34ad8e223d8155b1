/** Wider than this, a first column stands out by itself instead of moving all others. */
const WIDEST_HEAD = 30;
/** Comments of neighbouring lines line up, but not behind a very long line. */
const WIDEST_BEFORE_COMMENT = 60;

export interface Line {
  readonly indent: number;
  text: string;
  comment?: string;
  /** A blank line stands before it. */
  readonly blank: boolean;
}

/** How much each head is padded so that what follows lines up. */
export function padding(widths: readonly number[], widest = WIDEST_HEAD): number[] {
  const column = widths.reduce((most, width) => (width > widest ? most : Math.max(most, width)), 0);
  return widths.map(width => Math.max(0, column - width));
}

/** The lines as text, with the comments at the ends of neighbouring lines in one column. */
export function printed(lines: readonly Line[], lineEnd: string): string {
  const texts: string[] = [];
  for (let from = 0, to = 0; from < lines.length; from = to) {
    do to++;
    while (to < lines.length && commentsAlign(lines[to - 1]!, lines[to]!));
    const run = lines.slice(from, to);
    const pads = padding(
      run.map(({ indent, text }) => indent + text.length),
      WIDEST_BEFORE_COMMENT
    );
    run.forEach(({ indent, text, comment, blank }, at) => {
      if (blank) texts.push(lineEnd);
      texts.push(' '.repeat(indent), text);
      if (comment !== undefined) texts.push(' '.repeat(pads[at]! + 2), comment);
      texts.push(lineEnd);
    });
  }
  return texts.join('');
}

function commentsAlign(before: Line, line: Line): boolean {
  return before.comment !== undefined && line.comment !== undefined && !line.blank && before.indent === line.indent;
}
