const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** A user's own words inside SVG, as text or within quotes: nothing in them is read as markup, or is no sign of XML at all. */
export function escaped(text: string): string {
  return asSigns(text).replace(/[&<>"']/g, sign => SIGNS[sign]!);
}

/** The same for who builds elements: what is no sign of XML, or turns the others about, is a space. */
export function asSigns(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029\uFFFE\uFFFF]/gu, ' ');
}
