import britain from './britain.paving';
import continentalEurope from './continental-europe.paving';
import defaults from './defaults.paving';
import europe from './europe.paving';
import everywhere from './everywhere.paving';
import ireland from './ireland.paving';
import materials from './materials.paving';
import northAmerica from './north-america.paving';
import sides from './sides.paving';
import soils from './soils.paving';
import sources from './sources.paving';

const PARTS: readonly (readonly [string, string])[] = [
  ['defaults', defaults],
  ['soils', soils],
  ['sides', sides],
  ['materials', materials],
  ['sources', sources],
  ['everywhere', everywhere],
  ['north-america', northAmerica],
  ['europe', europe],
  ['britain', britain],
  ['ireland', ireland],
  ['continental-europe', continentalEurope]
];

/** Everything that ships as spec text, one after the other: defaults, soils, kinds of sides, materials, sources, rulebooks. */
export const SHIPPED_TEXT = PARTS.map(([, text]) => text).join('\n');

/** The file of the library that a line (from 1) of `SHIPPED_TEXT` stands in, and how many lines stand before it. */
export function shippedPartAt(line: number): { readonly file: string; readonly before: number } {
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
  [...SHIPPED_TEXT.matchAll(/^(?:material|side-kind|soil-kind|bond) +([\w-]+)/gm)].map(([, name]) => name!)
);

/** The rules of all rulebooks that ship, each name once. */
export const SHIPPED_RULES: readonly string[] = [
  ...new Set([...SHIPPED_TEXT.matchAll(/^rule +([\w-]+)/gm)].map(([, name]) => name!))
];

/** The rulebooks that ship. */
export const SHIPPED_RULEBOOKS: readonly string[] = [...SHIPPED_TEXT.matchAll(/^rulebook +([\w-]+)/gm)].map(
  ([, name]) => name!
);

/** The kinds of sides it declares, and whether what stands there holds the paving. */
export const SHIPPED_SIDES: readonly { readonly name: string; readonly holdsPaving: boolean }[] = [
  ...sides.matchAll(/^side-kind +([\w-]+) +\{.*holds +(paving|nothing)/gm)
].map(([, name, what]) => ({ name: name!, holdsPaving: what === 'paving' }));

/** The name under which shipped text is shown. */
export const SHIPPED_FILE = 'as shipped';
