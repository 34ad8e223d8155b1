import { escaped } from './escaped.ts';

/** An element of a drawing, as data: printed as text, or built where it is shown. */
export interface SvgElement {
  readonly name: string;
  /** As they are printed, in their order. */
  readonly attributes: Readonly<Record<string, string | number>>;
  /** Elements; or words, as they are meant, escaped by no one yet. */
  readonly inside: readonly (SvgElement | string)[];
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Attributes that are undefined are left out. */
export function element(
  name: string,
  attributes: Attributes,
  ...inside: readonly (SvgElement | string | undefined)[]
): SvgElement {
  const told = Object.entries(attributes).filter((pair): pair is [string, string | number] => pair[1] !== undefined);
  return { name, attributes: Object.fromEntries(told), inside: inside.filter(part => part !== undefined) };
}

/** Of these each part stands on a line of its own. */
const IN_LINES: ReadonlySet<string> = new Set(['svg', 'defs', 'g']);

function printElement(printed: SvgElement): string {
  const { name, inside } = printed;
  const start = printStart(printed);
  if (IN_LINES.has(name)) return [`${start}>`, ...inside.map(printPart), `</${name}>`].join('\n');
  return inside.length === 0 ? `${start}/>` : `${start}>${inside.map(printPart).join('')}</${name}>`;
}

/** Its name and attributes, not closed yet. */
export function printStart({ name, attributes }: SvgElement): string {
  const told = Object.entries(attributes).map(([attribute, value]) => ` ${attribute}="${escaped(String(value))}"`);
  return `<${name}${told.join('')}`;
}

export function printPart(part: SvgElement | string): string {
  return typeof part === 'string' ? escaped(part) : printElement(part);
}
