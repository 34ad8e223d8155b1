import type { Area, Job, Key, Material, Unit } from '../job/job.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { RawFinding } from './finding.ts';
import { listed } from './listed.ts';

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
  const message = `No price for ${listed(names)}: everything else is priced. Write one, such as \`price ${first.name} { ${sale(first)} }\`.`;
  return [{ id: 'price-missing', message, target: 'job' }];
}

/** Prices of what the job uses for which nothing tells of what day they are: one note, a rule of practice. */
export function pricesWithoutDay(job: Job): RawFinding[] {
  const used = new Set<Key>(usedThings(job).map(({ key }) => key));
  const dated = new Set(job.suppliers.flatMap(({ key, priced }) => (priced === undefined ? [] : [key])));
  const without = job.prices.filter(
    ({ thing, supplier, priced }) =>
      thing !== undefined && used.has(thing) && priced === undefined && (supplier === undefined || !dated.has(supplier))
  );
  const names = [...new Set(without.map(({ name }) => name))];
  if (names.length === 0) return [];
  const message = `Of what day the prices of ${listed(names)} are is not said. Common practice: write it beside them, such as \`prices on 2026-03-01, valid 60 days\`.`;
  return [{ id: 'price-without-day', message, target: 'job' }];
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
