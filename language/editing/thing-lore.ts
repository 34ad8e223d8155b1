import type { Declared, Kind } from '../lowering/names.ts';
import { BOND_LORE } from './help/bond-lore.ts';
import type { Helps, WordHelp } from './help/help.ts';
import { MATERIAL_LORE } from './help/material-lore.ts';
import { RULEBOOK_LORE } from './help/rulebook-words.ts';
import { SIDE_LORE } from './help/side-lore.ts';
import { SOIL_LORE } from './help/soil-lore.ts';

const LORE: Readonly<Partial<Record<Kind, Helps>>> = {
  'soil-kind': SOIL_LORE,
  'side-kind': SIDE_LORE,
  material: MATERIAL_LORE,
  bond: BOND_LORE,
  rulebook: RULEBOOK_LORE
};

/** What the trade knows of a thing by its name: of all that ships, and of things of one's own that go by the same name. */
export function loreOf({ kind, name }: Declared): WordHelp | undefined {
  const lore = LORE[kind];
  return lore !== undefined && Object.hasOwn(lore, name) ? lore[name] : undefined;
}
