/** Offsets, the end one past the last character. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Writes `text` in the place of what stands between two offsets; an insertion begins where it ends. */
export interface TextEdit extends Span {
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
  REST_OF_LINE.lastIndex = end;
  const rest = REST_OF_LINE.exec(source);
  const lineStart = spaceBefore(source, start, /[^\S\n]/);
  const comma = spaceBefore(source, start, /\s/) - 1;
  const hasComma = source[comma] === ',';
  if (rest !== null && (lineStart === 0 || source[lineStart - 1] === '\n')) {
    // Without a comma of its own it takes the one at the end of the line before.
    if (hasComma && rest[1] === '') return { start: comma, end, text: '' };
    return withoutLine(source, lineStart, end + rest[0].length);
  }
  if (hasComma) return { start: comma, end, text: '' };
  COMMA_AFTER.lastIndex = end;
  const after = COMMA_AFTER.exec(source)?.[0];
  if (after !== undefined) return { start, end: end + after.length, text: '' };
  // Two words that it parted stay two.
  const parts = WORD.test(source[lineStart - 1] ?? '') && WORD.test(source[end] ?? '');
  return { start: lineStart, end, text: parts ? ' ' : '' };
}

const WORD = /[\p{L}\p{N}_]/u;

const REST_OF_LINE = /[^\S\n]*(,?)[^\S\n]*(?:\/\/[^\n]*)?(?:\n|$)/y;
const COMMA_AFTER = /\s*,[^\S\n]*/y;

/** A line with its break, where `next` begins the one after; of two blank lines that it parted one is left. */
function withoutLine(source: string, start: number, next: number): TextEdit {
  const isBlankBefore = start === 0 || /\n[^\S\n]*\n$/.test(source.slice(Math.max(0, start - MOST_BLANK), start));
  const blankAfter = /^[^\S\n]*(?:\n|$)/.exec(source.slice(next, next + MOST_BLANK));
  const isLast = next >= source.length;
  return { start, end: isBlankBefore && !isLast && blankAfter ? next + blankAfter[0].length : next, text: '' };
}

/** Nobody indents a blank line further. */
const MOST_BLANK = 200;

/** Where the white space begins that stands before an offset. */
function spaceBefore(source: string, offset: number, space: RegExp): number {
  let at = offset;
  while (at > 0 && space.test(source[at - 1]!)) at--;
  return at;
}

/** Whether nothing stands before an offset on its line. */
export function beginsLine(source: string, offset: number): boolean {
  const at = spaceBefore(source, offset, /[^\S\n]/);
  return at === 0 || source[at - 1] === '\n';
}

/** Where the line ends that an offset lies in, before its break. */
export function endOfLine(source: string, offset: number): number {
  const at = source.indexOf('\n', offset);
  const end = at < 0 ? source.length : at;
  return end > offset && source[end - 1] === '\r' ? end - 1 : end;
}

/** The white space that the line begins with that an offset lies in. */
export function indentAt(source: string, offset: number): string {
  const start = source.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(source.slice(start, Math.max(start, offset)))![0];
}

/** How the lines of a text end. */
export function lineBreakOf(source: string): string {
  return source[source.indexOf('\n') - 1] === '\r' ? '\r\n' : '\n';
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

/** An edit without what stays the same at its ends. */
export function smallest(source: string, { start, end, text }: TextEdit): TextEdit {
  const old = source.slice(start, end);
  const most = Math.min(old.length, text.length);
  let head = 0;
  while (head < most && old[head] === text[head]) head++;
  let tail = 0;
  while (tail < most - head && old.at(-1 - tail) === text.at(-1 - tail)) tail++;
  return { start: start + head, end: end - tail, text: text.slice(head, text.length - tail) };
}
