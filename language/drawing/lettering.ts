/*
 * About how much room text takes: printers have their own letters, so widths are those of a rather wide face, and what is
 * placed by them never overlaps by much.
 */

/** Widths as shares of the size of the letters. */
const NARROW = 0.32;
const USUAL = 0.61;
const WIDE = 0.88;

/** Height that figures and capitals take, as a share of the size of the letters. */
export const LETTER_HEIGHT = 0.74;

/** From line to line, as a share of the size of the letters. */
export const LINE_HEIGHT = 1.3;

/** Bold letters are so many times wider. */
export const BOLD = 1.12;

/** Width of a line of text for letters of size one. */
export function textWidth(text: string): number {
  let width = 0;
  for (const sign of text) width += /[ .,:;'!|ijlI()/·]/.test(sign) ? NARROW : /[MWmw@%—→]/.test(sign) ? WIDE : USUAL;
  return width;
}

/** Text in lines no wider than so many sizes of its letters; a longer word stands alone. */
export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
