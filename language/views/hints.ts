import type { Place } from '../findings/finding.ts';
import type { Key, System } from '../job/job.ts';
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
    const atPlaces = [...valuesOf(area, job.system), ...sidesOf(area, places, job.system)];
    return atPlaces.flatMap(([key, text, tooltip]) => {
      const place = places.get(key);
      return place?.file === file && text.length <= LONGEST_HINT ? [{ place, text, tooltip }] : [];
    });
  });
}

type Value = readonly [key: Key, text: string, tooltip: string];

function valuesOf(area: AreaQuantities, system: System): Value[] {
  const { id, layers, laying, joints, geotextile } = area;
  return [
    ...layers.map(layer => layerValue(id, layer, system)),
    ...(laying ?? []).map(laid => layingValue(id, laid)),
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

function layingValue(area: Key, { unit, whole, cut }: LayingQuantities): Value {
  const both = `${whole} whole, ${cut} cut`;
  const text = both.length <= LONGEST_HINT ? both : `${whole + cut} laid`;
  return [`${area}/paving`, text, `pieces of ${unit} as laid: whole ones, and those that are cut`];
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
