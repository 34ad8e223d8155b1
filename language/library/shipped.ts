import defaults from './defaults.paving';
import materials from './materials.paving';
import sides from './sides.paving';
import soils from './soils.paving';

/** Everything that ships as spec text, one after the other: defaults, soils, kinds of sides, materials. */
export const SHIPPED_TEXT = [defaults, soils, sides, materials].join('\n');

/** Names that it declares. */
export const SHIPPED_NAMES: ReadonlySet<string> = new Set(
  [...SHIPPED_TEXT.matchAll(/^(?:material|side-kind|soil-kind|bond) +([\w-]+)/gm)].map(([, name]) => name!)
);

/** The kinds of sides it declares, and whether what stands there holds the paving. */
export const SHIPPED_SIDES: readonly { readonly name: string; readonly holdsPaving: boolean }[] = [
  ...sides.matchAll(/^side-kind +([\w-]+) +\{.*holds +(paving|nothing)/gm)
].map(([, name, what]) => ({ name: name!, holdsPaving: what === 'paving' }));

/** The name under which shipped text is shown. */
export const SHIPPED_FILE = 'as shipped';
