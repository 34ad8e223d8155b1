import type { Edge, Given, Key, Material } from '../job/job.ts';
import { type Draft, type Effort, type Place, rankOf } from './draft.ts';
import { concreteWait, frostHold } from './holds.ts';
import { effort, namesInRow, type Planned, type PlannedArea, printed, some, totalOf } from './planned.ts';

/** One side with its edging. */
interface EdgedSide {
  readonly one: PlannedArea;
  readonly edge: Edge;
  readonly index: number;
  readonly material: Material;
}

export type EdgingPlace = Extract<Place, `edging-${string}`>;

/** Edging in its three places: on concrete before the base is compacted against it, before the bed, after laying. */
export function edgingTasks(planned: Planned): Draft[] {
  const sides = planned.areas.flatMap(one =>
    one.area.edges.flatMap((edge, index) =>
      edge.edging === undefined ? [] : [{ one, edge, index, material: edge.edging }]
    )
  );
  return (['edging-on-concrete', 'edging-before', 'edging-after'] as const).flatMap(place => {
    const there = sides.filter(({ edge, material }) => placeOfEdging(edge, material) === place);
    return there.length === 0 ? [] : [edging(planned, place, there)];
  });
}

/** Where the text does not say: on concrete it is set first, any other when the units lie. */
export function placeOfEdging({ edgingSet }: Edge, material: Material): EdgingPlace {
  const onConcrete = isOnConcrete(material);
  if (edgingSet === 'after' || (edgingSet === undefined && !onConcrete)) return 'edging-after';
  return onConcrete ? 'edging-on-concrete' : 'edging-before';
}

/** Whether edging is set in concrete: below it, behind it, or both. */
export function isOnConcrete({ concrete, haunch }: Material): boolean {
  return concrete !== undefined || haunch !== undefined;
}

const WHEN: Readonly<Record<EdgingPlace, string>> = {
  'edging-on-concrete': 'on concrete, before the base',
  'edging-before': 'before the bed',
  'edging-after': 'when the units lie'
};

function edging(planned: Planned, place: EdgingPlace, sides: readonly EdgedSide[]): Draft {
  const { system } = planned.job;
  const efforts = sides.flatMap(side => effortsOf(planned, side));
  const materials = namesInRow(sides.map(({ material }) => material.name));
  const length = totalOf(
    efforts.filter(({ task }) => task === 'edging'),
    'm'
  );
  const withConcrete = sides.some(({ material }) => isOnConcrete(material));
  return {
    id: place === 'edging-on-concrete' ? 'edging' : place,
    word: 'edging',
    title: `Set ${materials} ${WHEN[place]}: ${printed('run', length, system)}`,
    rank: rankOf(place),
    efforts,
    holds: withConcrete ? frostHold(planned, 'concrete', system) : [],
    waits: []
  };
}

function effortsOf({ logged }: Planned, { one, edge, index, material }: EdgedSide): Effort[] {
  const { area, numbers, pointer } = one;
  const length = numbers.edges[index]?.length;
  const done = logged.edging(area.key, edge);
  const from = { pointer: `${pointer}/edges/${index}/length`, area: area.key, side: edge.name };
  const words = [
    material.name,
    ...(isOnConcrete(material) ? ['concrete'] : []),
    ...(isSpiked(material) ? ['spikes'] : [])
  ];
  const all = numbers.edging.find(other => other.material === material.name);
  const share = all === undefined || length === undefined || all.length === 0 ? 0 : length / all.length;
  return [
    ...effort('edging', words, some(`${material.name} along ${edge.name} of ${area.name}`, length, 'm', from), {
      done
    }),
    ...concreteOf(share * (all?.concreteVolume ?? 0), `concrete along ${edge.name} of ${area.name}`, from, done)
  ];
}

function concreteOf(
  volume: number,
  name: string,
  { area, side }: { readonly area: Key; readonly side: string },
  done: string | undefined
): Effort[] {
  return effort('concrete', ['edging'], some(name, volume, 'm3', { area, side }), { done });
}

function isSpiked({ spikesEvery }: Material): boolean {
  return spikesEvery !== undefined;
}

/** What is compacted against edging on concrete waits for it, those with the longest wait first. */
export function waitsForEdging(planned: Planned, place: 'edging-on-concrete' | 'edging-after'): Draft['waits'] {
  const materials = planned.areas
    .flatMap(({ area }) => area.edges)
    .filter(edge => edge.edging !== undefined && isOnConcrete(edge.edging))
    .filter(edge => (edge.edgingSet === 'after') === (place === 'edging-after'))
    .map(edge => edge.edging!);
  const [first, ...others] = materials;
  if (first === undefined) return [];
  const waitOf = ({ wait }: Material): Given | undefined => wait ?? planned.job.concrete.wait;
  const longest = others.reduce(
    (one, other) => ((waitOf(other)?.value ?? 0) > (waitOf(one)?.value ?? 0) ? other : one),
    first
  );
  return [concreteWait(place === 'edging-on-concrete' ? 'edging' : 'edging-after', longest.name, waitOf(longest))];
}
