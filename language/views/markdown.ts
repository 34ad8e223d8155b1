const SIGNS: Readonly<Record<string, string>> = { '<': '&lt;', '&': '&amp;' };

/** A user's own words inside Markdown: nothing in them is read as markup or becomes a link. */
export function markdownText(text: string): string {
  return text
    .replace(/[\\`*_{}[\]()#+!|<>~&]/g, sign => SIGNS[sign] ?? `\\${sign}`)
    .replace(/:(?=\/\/)/g, '&#58;')
    .replace(/(?<=\bwww)\./gi, '&#46;')
    .replace(/\s+/g, ' ');
}
