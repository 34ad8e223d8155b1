const SIGNS: Readonly<Record<string, string>> = { '<': '&lt;', '&': '&amp;' };

/** A user's own words inside Markdown: nothing in them is read as markup or becomes a link. */
export function markdownText(text: string): string {
  return text
    .replace(/[\\`*_{}[\]()#+!|<>~&]/g, sign => SIGNS[sign] ?? `\\${sign}`)
    .replace(/:(?=\/\/)/g, '&#58;')
    .replace(/(?<=\bwww)\./gi, '&#46;')
    .replace(/\s+/g, ' ');
}

/** A table; what stands in it is plain text, and all but the first column is flush right. */
export function markdownTable(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(markdownText).join(' | ')} |`;
  return [line(heads), `|:--|${'--:|'.repeat(heads.length - 1)}`, ...rows.map(line)].join('\n');
}
