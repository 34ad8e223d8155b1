/** Text of a spec on one line: nothing in it moves a terminal's cursor or changes its colours. */
export function plainLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, ' ');
}
