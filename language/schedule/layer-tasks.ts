import type { Layer } from '../job/job.ts';
import type { Stage } from '../job/log.ts';
import { barrowWork } from './carrying.ts';
import { type Draft, type Effort, rankOf } from './draft.ts';
import { waitsForEdging } from './edging-tasks.ts';
import { BED_BEFORE_RAIN, concreteWait, frostHold } from './holds.ts';
import { effort, namesInRow, type Planned, type PlannedArea, printed, some, totalOf } from './planned.ts';

/** Geotextile, stone in compaction layers, the bed. */
export function layerTasks(planned: Planned): Draft[] {
  return [geotextile(planned), stone(planned, 'sub-base'), stone(planned, 'base'), bed(planned)].filter(
    draft => draft.efforts.length > 0
  );
}

function geotextile(planned: Planned): Draft {
  const efforts = planned.areas.flatMap(one =>
    effort(
      'geotextile',
      [],
      some(`geotextile of ${one.area.name}`, one.numbers.geotextile?.area, 'm2', {
        pointer: `${one.pointer}/geotextile/area`,
        area: one.area.key
      }),
      { done: planned.logged.reached(one.area.key, 'geotextile') }
    )
  );
  const names = planned.areas.flatMap(({ area }) => area.geotextile?.name ?? []);
  return {
    id: 'geotextile',
    word: 'geotextile',
    title: `Roll out ${namesInRow(names)}: ${printed('area', totalOf(efforts, 'm2'), planned.job.system)}`,
    rank: rankOf('geotextile'),
    efforts,
    holds: [],
    waits: []
  };
}

/** Layers of one role, with the words of the job beside their numbers. */
function layersOf({ areas }: Planned, role: Layer['role']) {
  return areas.flatMap(one =>
    one.area.layers.flatMap((layer, index) => (layer.role === role ? [{ one, layer, index }] : []))
  );
}

type PlacedLayer = ReturnType<typeof layersOf>[number];

function stone(planned: Planned, role: Exclude<Layer['role'], 'bed'>): Draft {
  const { job } = planned;
  const layers = layersOf(planned, role);
  const own = layers.flatMap(layer => [...spreading(planned, layer, role), ...carriedIn(planned, layer, role)]);
  const efforts = [...own, ...makingUp(planned, role)];
  const isOnlyStone = role === 'base' ? planned.areas.every(({ area }) => !area.layers.some(isSubBase)) : true;
  return {
    id: role,
    word: 'base',
    title: `Spread and compact the ${role}: ${namesInRow(layers.map(({ layer }) => compactionLayers(planned, layer)))}`,
    rank: rankOf(role),
    efforts,
    holds: frostHold(planned, 'stone', job.system),
    waits: isOnlyStone ? [...waitsForDrains(planned), ...waitsForEdging(planned, 'edging-on-concrete')] : []
  };
}

function isSubBase({ role }: Layer): boolean {
  return role === 'sub-base';
}

/** `crushed-stone 8 in in 2 compaction layers of 4 in` */
function compactionLayers({ job: { system } }: Planned, { material, thickness, inPartsOf }: Layer): string {
  const whole = `${material.name} ${printed('thickness', thickness.value, system)}`;
  const count = partsOf(thickness.value, inPartsOf?.value);
  if (count === 1) return `${whole} in one compaction layer`;
  return `${whole} in ${count} compaction layers of ${printed('thickness', thickness.value / count, system)}`;
}

/** How many compaction layers a thickness takes, none thicker than `most`. */
function partsOf(thickness: number, most: number | undefined): number {
  return most === undefined || !(most > 0) ? 1 : Math.max(1, Math.ceil(thickness / most - 1e-6));
}

function spreading(planned: Planned, { one, layer, index }: PlacedLayer, role: Stage & Layer['role']): Effort[] {
  const { area, numbers, pointer } = one;
  const own = numbers.layers[index];
  const from = { area: area.key };
  const done = planned.logged.reached(area.key, role);
  const parts = partsOf(layer.thickness.value, layer.inPartsOf?.value);
  return effort(
    'base',
    [role, layer.material.name, ...(layer.material.openGraded ? ['open'] : ['dense'])],
    [
      ...some(`${role} of ${area.name}, compacted`, own?.compactedVolume, 'm3', {
        ...from,
        pointer: `${pointer}/layers/${index}/compactedVolume`
      }),
      ...some(`${role} of ${area.name}, ${parts} compaction layers`, (own?.area ?? 0) * parts, 'm2', from)
    ],
    { done }
  );
}

/** Put into barrows from the heap and wheeled in, where that is how it comes in. */
function carriedIn(planned: Planned, { one, layer, index }: PlacedLayer, role: Stage & Layer['role']): Effort[] {
  const { area, numbers } = one;
  const own = numbers.layers[index];
  const work = barrowWork(
    `${layer.material.name} of ${area.name}`,
    { volume: own?.looseVolume, mass: own?.mass },
    planned.job.carting,
    area.key
  );
  const done = planned.logged.reached(area.key, role);
  const words = [planned.job.carting.digBy ?? 'hand', layer.material.name];
  return effort(role === 'bed' ? 'bed' : 'base', words, work, { done, brings: true });
}

/** Low ground that is made up with stone: part of the lowest layer of stone. */
function makingUp(planned: Planned, role: Layer['role']): Effort[] {
  return planned.areas.flatMap((one: PlannedArea) => {
    const { area, numbers, pointer } = one;
    const lowest = area.layers.some(isSubBase) ? 'sub-base' : 'base';
    if (lowest !== role) return [];
    return effort(
      'base',
      [role],
      some(`low ground of ${area.name} made up`, numbers.dig.fillVolume, 'm3', {
        pointer: `${pointer}/dig/fillVolume`,
        area: area.key
      }),
      { done: planned.logged.reached(area.key, role) }
    );
  });
}

function waitsForDrains({ job: { drains, concrete: mix } }: Planned): Draft['waits'] {
  const onConcrete = drains.filter(({ concrete }) => concrete !== undefined);
  const names = namesInRow(onConcrete.map(({ name }) => name));
  return onConcrete.length === 0 ? [] : [concreteWait('drains', names, mix.wait)];
}

function bed(planned: Planned): Draft {
  const { system } = planned.job;
  const layers = layersOf(planned, 'bed');
  const screeding = layers.flatMap(({ one, layer, index }) => {
    const { area, numbers, pointer } = one;
    const own = numbers.layers[index];
    const from = { area: area.key };
    return effort(
      'bed',
      [layer.material.name],
      [
        ...some(`bed of ${area.name}`, own?.area, 'm2', { ...from, pointer: `${pointer}/layers/${index}/area` }),
        ...some(`bed of ${area.name}, settled`, own?.compactedVolume, 'm3', {
          ...from,
          pointer: `${pointer}/layers/${index}/compactedVolume`
        })
      ],
      { done: planned.logged.reached(area.key, 'bed') }
    );
  });
  const carried = layers.flatMap(layer => carriedIn(planned, layer, 'bed'));
  return {
    id: 'bed',
    word: 'bed',
    title: `Screed the bed: ${namesInRow(layers.map(({ layer }) => screeded(layer, system)))}`,
    rank: rankOf('bed'),
    efforts: [...screeding, ...carried],
    holds: [...frostHold(planned, 'bed', system), BED_BEFORE_RAIN],
    waits: [],
    goesOnWith: 'laying'
  };
}

function screeded({ material, thickness, settles }: Layer, system: Planned['job']['system']): string {
  const whole = `${material.name} ${printed('thickness', thickness.value, system)}`;
  if (settles === undefined) return whole;
  const loose = printed('thickness', thickness.value + settles.value, system);
  return `${whole}, screeded ${loose}`;
}
