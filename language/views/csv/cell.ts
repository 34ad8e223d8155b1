/**
 * Text for a cell of a table that a spreadsheet may open: what it would take for a formula is marked as text by an
 * apostrophe. On one line.
 */
export function textCell(text: string): string {
  const line = text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, ' ');
  return /^\s*[=+\-@＝＋－＠]/u.test(line) ? `'${line}` : line;
}
