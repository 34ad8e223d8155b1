/** A place in an inserted text that is there to be changed; with `choices` it offers them. */
export interface Slot {
  readonly usual: string;
  readonly choices?: readonly string[];
}

export type Part = string | Slot;

/** The parts as plain text, with what is usual in each slot. */
export function plainText(parts: readonly Part[]): string {
  return parts.map(part => (typeof part === 'string' ? part : part.usual)).join('');
}

/** The parts as a snippet of the editor's protocol: `${1:6 in}`, `${2|foot,cars|}`. */
export function snippetText(parts: readonly Part[]): string {
  let slots = 0;
  return parts
    .map(part => {
      if (typeof part === 'string') return escaped(part, /[\\$}]/g);
      slots++;
      const { usual, choices } = part;
      if (choices === undefined || choices.length < 2) return `\${${slots}:${escaped(usual, /[\\$}]/g)}}`;
      const others = choices.slice(0, MOST_CHOICES).filter(choice => choice !== usual);
      const listed = [usual, ...others].slice(0, MOST_CHOICES);
      return `\${${slots}|${listed.map(choice => escaped(choice, /[\\$},|]/g)).join(',')}|}`;
    })
    .join('');
}

export function hasSlots(parts: readonly Part[]): boolean {
  return parts.some(part => typeof part !== 'string');
}

/** A longer list in the middle of a text hides what is being written. */
const MOST_CHOICES = 12;

function escaped(text: string, signs: RegExp): string {
  return text.replace(signs, sign => `\\${sign}`);
}
