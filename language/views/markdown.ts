/** A user's own words inside Markdown: nothing in them is read as markup. */
export function markdownText(text: string): string {
  return text
    .replace(/[\\`*_{}[\]()#+!|<>~&-]/g, sign =>
      sign === '-' ? '-' : sign === '<' ? '&lt;' : sign === '&' ? '&amp;' : `\\${sign}`
    )
    .replace(/\s+/g, ' ');
}
