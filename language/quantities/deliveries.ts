import type { Key, Material } from '../job/job.ts';
import type { Delivered, LogEntry } from '../job/log.ts';
import { type Expression, given, leaf, multiply, plainNumber, subtract, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import { looseVolumeOf } from './loose-volume.ts';
import type { Book } from './page.ts';
import type { SiteArea } from './site-area.ts';
import type { DeliveryQuantities } from './site-contract.ts';

/** Units that are wanted: used, in trays of covers, for breakage and put by, by name. */
export type UnitsWanted = readonly ({ readonly unit: string } & Pick<NumbersOf<'job-unit'>, 'toBuy'>)[];

/** What was delivered, thing by thing and measure by measure, against what the job wants; of a material before loss. */
export function deliveriesOf(
  log: readonly LogEntry[],
  areas: readonly SiteArea[],
  units: UnitsWanted,
  book: Book
): DeliveryQuantities[] {
  const groups = new Map<string, (LogEntry & Delivered)[]>();
  for (const entry of log) {
    if (entry.kind !== 'delivered') continue;
    const name = `${entry.thing}\n${entry.measure}`;
    groups.set(name, [...(groups.get(name) ?? []), entry]);
  }
  return [...groups.values()].map((entries, index) => {
    const { name, thing, measure } = entries[0]!;
    const page = book.page('delivery', `/deliveries/${index}`);
    const loads = entries.map(entry => loadOf(entry));
    const delivered = page.put('delivered', total(loads)!, measure);
    const wanted = neededOf(entries[0]!, areas, units);
    if (wanted !== undefined) page.put('short', subtract(page.put('needed', wanted, measure), delivered), measure);
    return { id: thing, thing: name, measure, ...page.numbers };
  });
}

/** By the pack: their count times what one holds. */
function loadOf({ date, amount, measure, packs }: LogEntry & Delivered): Expression {
  if (packs === undefined) return given(`delivered on ${date}`, amount, measure);
  const word = packs.word.replace('-', ' ');
  return multiply(given(`${word}s on ${date}`, packs.count, ''), given(`one ${word} holds`, packs.holds, measure));
}

/** What the job needs of it; not told of edging and cloth. */
function neededOf(
  { name, thing, measure }: Delivered,
  areas: readonly SiteArea[],
  units: UnitsWanted
): Expression | undefined {
  if (measure === '') return unitsNeeded(name, units);
  return measure === 'kg' || measure === 'm3' ? stoneNeeded(thing, measure, areas) : undefined;
}

function total([first, ...others]: readonly Expression[]): Expression | undefined {
  if (first === undefined) return undefined;
  return others.length === 0 ? multiply(plainNumber(1), first) : sum(first, ...others);
}

function unitsNeeded(name: string, units: UnitsWanted): Expression | undefined {
  const index = units.findIndex(({ unit }) => unit === name);
  const found = units[index]?.toBuy;
  if (found === undefined) return undefined;
  return total([leaf(`${name} wanted`, found, '', { pointer: `/units/${index}/toBuy` })]);
}

/** Of a material: what its layers, soft spots and low ground take; undefined where one of them can't be told. */
function stoneNeeded(material: Key, measure: 'kg' | 'm3', areas: readonly SiteArea[]): Expression | undefined {
  const parts: (Expression | undefined)[] = [];
  for (const { one, at } of inOrder(areas)) {
    const { area, layers } = one;
    const key = measure === 'kg' ? 'mass' : 'looseVolume';
    area.layers.forEach((layer, index) => {
      if (layer.material.key !== material) return;
      const value = layers.layers[index]?.[key];
      const from = { pointer: `${at}/layers/${index}/${key}` };
      parts.push(value === undefined ? undefined : leaf(`${layer.role} of ${area.name}`, value, measure, from));
    });
    const stone = area.layers.findLast(({ role }) => role !== 'bed')?.material;
    area.softSpots.forEach((spot, index) => {
      const filling = spot.material ?? stone;
      if (filling?.key !== material) return;
      const spots = `${at}/softSpots/${index}`;
      parts.push(more(filling, measure, layers.softSpots[index]!, 'stone', spots, `soft spot of ${area.name}`));
    });
    if (stone?.key !== material || layers.dig.fillVolume === undefined) continue;
    parts.push(more(stone, measure, layers.dig, 'fill', `${at}/dig`, `low ground of ${area.name}`));
  }
  return parts.includes(undefined) ? undefined : total(parts as Expression[]);
}

/** By key, so that an area moved in the text changes nothing. */
function inOrder(areas: readonly SiteArea[]): { readonly one: SiteArea; readonly at: string }[] {
  return areas
    .map((one, index) => ({ one, at: `/areas/${index}` }))
    .sort((a, b) => (a.one.area.key < b.one.area.key ? -1 : 1));
}

/** Stone besides that of the layers: its mass, or its volume loose. */
function more(
  material: Material,
  measure: 'kg' | 'm3',
  numbers: object,
  what: 'stone' | 'fill',
  at: string,
  words: string
): Expression | undefined {
  const key = `${what}${measure === 'kg' ? 'Mass' : 'Volume'}`;
  const value = (numbers as Readonly<Record<string, unknown>>)[key];
  if (typeof value !== 'number') return undefined;
  const amount = leaf(words, value, measure, { pointer: `${at}/${key}` });
  if (measure === 'kg') return amount;
  return looseVolumeOf(amount, material);
}
