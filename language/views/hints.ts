import type { Place } from '../findings/finding.ts';
import { listed } from '../findings/listed.ts';
import type { Area, Key, System } from '../job/job.ts';
import { printAs } from '../measures/print.ts';
import type { Evaluation } from '../paving.ts';
import type { AreaQuantities, LayerQuantities, LayingQuantities } from '../quantities/contract.ts';

/** A short computed value, shown at the end of the statement that it follows from. */
export interface Hint {
  /** It stands at the end of this place. */
  readonly place: Place;
  readonly text: string;
  /** What the value is, in words. */
  readonly tooltip: string;
}

/** Longer ones would be cut, or push the text aside. */
export const LONGEST_HINT = 20;

/** What the statements of sound areas come to: what to buy of each layer, how many units, how long each side. */
export function hintsIn(evaluation: Evaluation, file: string): Hint[] {
  const { job, numbers, places } = evaluation;
  if (job === undefined || numbers === undefined) return [];
  return numbers.quantities.areas.flatMap(area => {
    const laidIn = job.areas.find(({ key }) => key === area.id)!;
    const atPlaces = [...valuesOf(area, laidIn, job.system), ...sidesOf(area, places, job.system)];
    return atPlaces.flatMap(([key, text, tooltip]) => {
      const place = places.get(key);
      return place?.file === file && text.length <= LONGEST_HINT ? [{ place, text, tooltip }] : [];
    });
  });
}

type Value = readonly [key: Key, text: string, tooltip: string];

function valuesOf(area: AreaQuantities, laidIn: Area, system: System): Value[] {
  const { id, layers, joints, geotextile } = area;
  return [
    ...layers.map(layer => layerValue(id, layer, system)),
    ...unitsIn(area, laidIn),
    ...(joints?.mass === undefined
      ? []
      : [[`${id}/joints`, printAs('sand-mass', joints.mass, system), 'joint filler, by mass'] as const]),
    ...(geotextile === undefined
      ? []
      : [[`${id}/geotextile`, printAs('area', geotextile.area, system), 'geotextile under the area'] as const])
  ];
}

function layerValue(area: Key, layer: LayerQuantities, system: System): Value {
  const { role, material, mass, looseVolume, compactedVolume } = layer;
  const volume = role === 'bed' ? 'sand-volume' : 'stone-volume';
  const key = `${area}/${role}`;
  if (mass !== undefined)
    return [key, printAs(role === 'bed' ? 'sand-mass' : 'mass', mass, system), `${material} for this layer, by mass`];
  if (looseVolume !== undefined)
    return [key, printAs(volume, looseVolume, system), `${material} for this layer, loose, as it is tipped`];
  return [key, printAs(volume, compactedVolume, system), `${material} for this layer, as compacted`];
}

/** Each kind of unit once, all of it that lies in the area: at the paving, else at the first course or inset that lays it. */
function unitsIn({ id, laying }: AreaQuantities, { paving, insets, borders, bands }: Area): Value[] {
  const courses = [...borders, ...bands].map(({ key, unit }) => ({ key, units: [unit] }));
  // What is laid as in another area has that one's key.
  const field = paving === undefined ? [] : [{ key: `${id}/paving`, units: paving.units }];
  const statements = [...field, ...courses, ...insets.map(({ paving: own }) => own)];
  const told = new Set<string>();
  return statements.flatMap(({ key, units }) => {
    const own = (laying ?? []).filter(({ unit }) => !told.has(unit) && units.some(({ name }) => name === unit));
    own.forEach(({ unit }) => told.add(unit));
    return own.length === 0 ? [] : [layingValue(key, own)];
  });
}

function layingValue(key: Key, laying: readonly LayingQuantities[]): Value {
  const sum = (of: 'whole' | 'cut'): number => laying.reduce((total, one) => total + one[of], 0);
  const both = `${sum('whole')} whole, ${sum('cut')} cut`;
  const text = both.length <= LONGEST_HINT ? both : `${sum('whole') + sum('cut')} laid`;
  const units = listed(laying.map(({ unit }) => unit));
  return [key, text, `units of ${units} in this area: whole ones, and those that are cut`];
}

/** The length of the sides that one line of the edges names, together. */
function sidesOf({ id, edges }: AreaQuantities, places: ReadonlyMap<Key, Place>, system: System): Value[] {
  const byPlace = new Map<string, { readonly key: Key; length: number; sides: number }>();
  for (const { name, length, meets } of edges) {
    const key = `${id}/edges/${name}`;
    const place = places.get(key);
    if (place === undefined || meets === undefined) continue;
    const line = byPlace.get(JSON.stringify(place)) ?? { key, length: 0, sides: 0 };
    line.length += length;
    line.sides++;
    byPlace.set(JSON.stringify(place), line);
  }
  return [...byPlace.values()].map(({ key, length, sides }) => [
    key,
    printAs('length', length, system),
    sides === 1 ? 'length of this side' : `length of these ${sides} sides together`
  ]);
}
