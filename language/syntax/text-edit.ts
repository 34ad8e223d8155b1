/** Writes `text` in the place of what stands between two offsets; an insertion begins where it ends. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What would mend a fault of the text. */
export interface TextFix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** Fixes that write a word, or one of several, in the place of what stands there. */
export function writes(words: readonly string[], start: number, length: number): TextFix[] {
  return words.map(text => ({ title: `Write \`${text}\``, edits: [{ start, end: start + length, text }] }));
}

/**
 * Takes out what stands between two offsets: its whole line with the comment behind it where it stands there alone, else
 * with the comma that parts it from its neighbour.
 */
export function takenOut(source: string, start: number, end: number): TextEdit {
  const lineStart = source.lastIndexOf('\n', start - 1) + 1;
  const lineEnd = endOfLine(source, end);
  const rest = /^\s*(,?)\s*(?:\/\/.*)?$/.exec(source.slice(end, lineEnd));
  const before = commaBefore(source, start);
  if (source.slice(lineStart, start).trim() === '' && rest !== null) {
    // Without a comma of its own it takes the one at the end of the line before.
    if (before !== undefined && rest[1] === '') return { start: before, end, text: '' };
    return withoutLine(source, lineStart, lineEnd);
  }
  if (before !== undefined) return { start: before, end, text: '' };
  const after = /^\s*,[^\S\n]*/.exec(source.slice(end, lineEnd))?.[0] ?? '';
  if (after !== '') return { start, end: end + after.length, text: '' };
  const space = /[^\S\n]*$/.exec(source.slice(lineStart, start))![0].length;
  return { start: start - space, end, text: '' };
}

/** A line with its break; of two blank lines that it parted one is left. */
function withoutLine(source: string, start: number, end: number): TextEdit {
  const next = afterBreak(source, end);
  const isBlankBefore = start === 0 || /\n[^\S\n]*\n$/.test(source.slice(Math.max(0, start - MOST_BLANK), start));
  const blankAfter = /^[^\S\n]*(?:\n|$)/.exec(source.slice(next, next + MOST_BLANK));
  const isLast = next >= source.length;
  return { start, end: isBlankBefore && !isLast && blankAfter ? next + blankAfter[0].length : next, text: '' };
}

/** Nobody indents a blank line further. */
const MOST_BLANK = 200;

function commaBefore(source: string, start: number): number | undefined {
  let at = start - 1;
  while (at >= 0 && /\s/.test(source[at]!)) at--;
  return source[at] === ',' ? at : undefined;
}

/** Where the line ends that an offset lies in, before its break. */
export function endOfLine(source: string, offset: number): number {
  const at = source.indexOf('\n', offset);
  const end = at < 0 ? source.length : at;
  return end > offset && source[end - 1] === '\r' ? end - 1 : end;
}

function afterBreak(source: string, lineEnd: number): number {
  const at = source.indexOf('\n', lineEnd);
  return at < 0 ? source.length : at + 1;
}

/** The white space that the line begins with that an offset lies in. */
export function indentAt(source: string, offset: number): string {
  const start = source.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(source.slice(start, Math.max(start, offset)))![0];
}

/** How the lines of a text end. */
export function lineBreakOf(source: string): string {
  return /\r?\n/.exec(source)?.[0] ?? '\n';
}

/** The text with edits that do not overlap; of two at one place the first stands first. */
export function applied(source: string, edits: readonly TextEdit[]): string {
  const inOrder = edits.map((edit, at) => ({ edit, at })).sort((a, b) => a.edit.start - b.edit.start || a.at - b.at);
  let text = '';
  let done = 0;
  for (const { edit } of inOrder) {
    text += source.slice(done, edit.start) + edit.text;
    done = edit.end;
  }
  return text + source.slice(done);
}
