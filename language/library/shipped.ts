import britain from './britain.paving';
import continentalEurope from './continental-europe.paving';
import defaults from './defaults.paving';
import europe from './europe.paving';
import everywhere from './everywhere.paving';
import ireland from './ireland.paving';
import materials from './materials.paving';
import northAmerica from './north-america.paving';
import rates from './rates.paving';
import sides from './sides.paving';
import soils from './soils.paving';
import sources from './sources.paving';

const PARTS: readonly (readonly [string, string])[] = [
  ['defaults', defaults],
  ['soils', soils],
  ['sides', sides],
  ['materials', materials],
  ['sources', sources],
  ['rates', rates]
];

/** What every job can name, one after the other: defaults, soils, kinds of sides, materials, sources, rates. */
export const SHIPPED_TEXT = PARTS.map(([, text]) => text).join('\n');

/** The rulebooks by name: each is a text of its own, since a job is checked by one or two of them. */
export const RULEBOOK_TEXTS: ReadonlyMap<string, string> = new Map([
  ['everywhere', everywhere],
  ['north-america', northAmerica],
  ['europe', europe],
  ['britain', britain],
  ['ireland', ireland],
  ['continental-europe', continentalEurope]
]);

/**
 * The file of the library that a place in what ships stands in, and how many lines stand before that file; undefined for
 * a place in a file of one's own.
 */
export function shippedPartAt({
  file: shown,
  line
}: {
  readonly file: string;
  readonly line: number;
}): { readonly file: string; readonly before: number } | undefined {
  const rulebook = [...RULEBOOK_TEXTS.keys()].find(name => rulebookFile(name) === shown);
  if (rulebook !== undefined) return { file: `${rulebook}.paving`, before: 0 };
  if (shown !== SHIPPED_FILE) return undefined;
  let before = 0;
  for (const [name, text] of PARTS) {
    const lines = text.split('\n').length;
    if (line <= before + lines) return { file: `${name}.paving`, before };
    before += lines;
  }
  throw new Error(`What ships has no line ${line}.`);
}

/** Names that it declares. */
export const SHIPPED_NAMES: ReadonlySet<string> = new Set(
  [...SHIPPED_TEXT.matchAll(/^(?:material|side-kind|soil-kind|bond|rate) +([\w-]+)/gm)].map(([, name]) => name!)
);

/** The rules of all rulebooks that ship, each name once. */
export const SHIPPED_RULES: readonly string[] = [
  ...new Set(
    [...RULEBOOK_TEXTS.values()].flatMap(text => [...text.matchAll(/^rule +([\w-]+)/gm)].map(([, name]) => name!))
  )
];

/** The rulebooks that ship. */
export const SHIPPED_RULEBOOKS: readonly string[] = [...RULEBOOK_TEXTS.keys()];

/** The kinds of sides it declares, and whether what stands there holds the paving. */
export const SHIPPED_SIDES: readonly { readonly name: string; readonly holdsPaving: boolean }[] = [
  ...sides.matchAll(/^side-kind +([\w-]+) +\{.*holds +(paving|nothing)/gm)
].map(([, name, what]) => ({ name: name!, holdsPaving: what === 'paving' }));

/** The bonds it declares, in its order. */
export const SHIPPED_BONDS: readonly string[] = [...defaults.matchAll(/^bond +([\w-]+)/gm)].map(([, name]) => name!);

/** The name under which shipped text is shown. */
export const SHIPPED_FILE = 'as shipped';

/** The name under which a rulebook that ships is shown. */
export function rulebookFile(name: string): string {
  return `${SHIPPED_FILE}, ${name}`;
}
