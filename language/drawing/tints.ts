/** A hint of a unit's colour under the lines; what is told by it is told in words and hatching, too. */
export type Tint = (typeof TINTS)[number];

export const TINTS = ['light', 'grey', 'dark', 'red', 'yellow', 'brown', 'green', 'blue'] as const;

/** Words in which colours of concrete and clay units are told (common practice). */
const WORDS: Readonly<Record<Tint, readonly string[]>> = {
  light: ['white', 'ivory', 'cream', 'light', 'silver', 'pale'],
  grey: ['grey', 'gray', 'natural', 'pewter', 'granite'],
  dark: ['charcoal', 'black', 'anthracite', 'dark', 'graphite', 'slate'],
  red: ['red', 'terracotta', 'burgundy', 'brick', 'rose', 'pink'],
  yellow: ['buff', 'sand', 'tan', 'yellow', 'gold', 'straw'],
  brown: ['brown', 'brindle', 'rust', 'autumn', 'russet', 'bronze'],
  green: ['green', 'moss'],
  blue: ['blue']
};

/** The tint of a colour as a job tells it, such as `charcoal` or `light-grey`: that of the first word known. */
export function tintOf(colour: string | undefined): Tint | undefined {
  for (const word of (colour ?? '').toLowerCase().split(/[^a-z]+/)) {
    const tint = TINTS.find(one => WORDS[one].includes(word));
    if (tint !== undefined) return tint;
  }
  return undefined;
}
