/** A text with a `‸` at the cursor, or with what is selected between two of them. */
export function withCursor(drawn: string): { text: string; start: number; end: number } {
  const [before, inside, after] = drawn.split('‸') as [string, string, string?];
  const start = before.length;
  return after === undefined
    ? { text: before + inside, start, end: start }
    : { text: before + inside + after, start, end: start + inside.length };
}

/** The same, as an editor counts: the line and the character that the cursor stands at. */
export function withPosition(drawn: string): { text: string; position: { line: number; character: number } } {
  const { text, start } = withCursor(drawn);
  const before = text.slice(0, start).split('\n');
  return { text, position: { line: before.length - 1, character: before.at(-1)!.length } };
}
