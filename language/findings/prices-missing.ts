import type { Area, Job, Key, Material, Unit } from '../job/job.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { RawFinding } from './finding.ts';

/** What a job uses and has no price for, in one note: where nothing that it uses is priced, nobody asked for prices. */
export function pricesMissing(job: Job): RawFinding[] {
  const used = [...new Map(usedThings(job).map(thing => [thing.key, thing])).values()];
  const priced = new Set<Key>(
    job.prices.flatMap(({ thing, ways }) => [
      ...(thing === undefined ? [] : [thing]),
      ...ways.flatMap(way => (way.word === 'mixed-pack' ? way.holds.map(({ unit }) => unit) : []))
    ])
  );
  // A price with a fault of its own has told it.
  const broken = new Set(job.missing.flatMap(({ key }) => /^price:([^@]+)/.exec(key)?.[1] ?? []));
  const without = used.filter(({ key, name }) => !priced.has(key) && !broken.has(name));
  const [first] = without;
  if (first === undefined || without.length === used.length) return [];
  const names = without.map(({ name }) => name);
  const listed = names.length === 1 ? names[0]! : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
  const message = `No price for ${listed}: everything else is priced. Write one, such as \`price ${first.name} { ${sale(first)} }\`.`;
  return [{ id: 'price-missing', message, target: 'job' }];
}

function usedThings({ areas, drains, concrete }: Job): readonly (Unit | Material)[] {
  const inAreas = areas.flatMap(area => [...unitsOf(area), ...materialsOf(area)]);
  const isSetInConcrete =
    areas.some(({ edges }) =>
      edges.some(({ edging }) => edging?.concrete !== undefined || edging?.haunch !== undefined)
    ) || drains.some(drain => drain.concrete !== undefined);
  return isSetInConcrete ? [...inAreas, concrete] : inAreas;
}

function materialsOf({ layers, softSpots, geotextile, paving, jointFiller, edges }: Area): readonly Material[] {
  const all = [
    ...layers.map(({ material }) => material),
    ...softSpots.map(({ material }) => material),
    geotextile,
    paving === undefined ? undefined : jointFiller,
    ...edges.map(({ edging }) => edging)
  ];
  return all.filter(material => material !== undefined);
}

/** How it is mostly sold. */
function sale(thing: Unit | Material): string {
  if (!('roles' in thing)) return 'piece for …';
  if (thing.roles.includes('edging')) return 'length of … for …';
  if (thing.roles.includes('fixing')) return 'box-of … for …';
  return thing.roles.includes('geotextile') ? 'roll of … for …' : 'loose for … per …';
}
