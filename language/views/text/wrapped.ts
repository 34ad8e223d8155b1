/** Room for a sentence: with its indent it fits a usual window. */
export const SENTENCE_WIDTH = 98;

/** Text in lines of at most so many characters, broken between words; lines after the first begin with `indent`. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  for (const word of wordsOf(text)) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= width) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(line === undefined ? word : indent + word);
  }
  return lines;
}

/** Words; a number stays with its fraction and its measure: `12 ft 5 3/8 in`. */
function wordsOf(text: string): string[] {
  return text.split(/ (?!(?<=\d )(?:\d+\/\d+|ft|in|mm|m|m2|m3)\b)/);
}
