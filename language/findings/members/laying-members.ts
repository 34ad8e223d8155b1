import { quantitiesOf } from '../../quantities/catalogue.ts';
import type { LayingQuantities } from '../../quantities/contract.ts';
import { fromCatalogue } from './from-catalogue.ts';
import type { Member } from './member.ts';

/** Of these the least of all kinds of units counts; other numbers add up. */
const LEAST: ReadonlySet<string> = new Set(['smallest-piece', 'smallest-share', 'narrowest-piece']);

/** These take cut pieces to be put into units. */
const NESTED: ReadonlySet<string> = new Set(['units-used', 'units-least', 'breakage', 'units-to-buy']);

const KEYS: ReadonlyMap<string, string> = new Map(quantitiesOf('laying').map(({ id, key }) => [id, key]));

function numberOf(laying: LayingQuantities, name: string): number | undefined {
  return (laying as unknown as Readonly<Record<string, number | undefined>>)[KEYS.get(name)!];
}

/** What rules can look at of the units laid in an area, all kinds together. */
export const layingMembers: readonly Member<'area'>[] = fromCatalogue('area', 'laying', () => undefined).map(
  member => ({
    ...member,
    ...(NESTED.has(member.name) ? { nested: true } : {}),
    read: ({ judged }) => {
      const all = (judged.layers.laying ?? []).flatMap(laying => numberOf(laying, member.name) ?? []);
      if (all.length === 0) return undefined;
      return LEAST.has(member.name) ? Math.min(...all) : all.reduce((sum, one) => sum + one, 0);
    },
    at: ({ judged }) => judged.area.paving?.key
  })
);
