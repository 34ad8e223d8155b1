import { areaOf } from '../geometry/index.ts';
import type { BrokenOut, Key } from '../job/job.ts';
import { barrowWork } from './carrying.ts';
import { type Draft, type Effort, rankOf } from './draft.ts';
import { LEAD } from './holds.ts';
import { effort, namesInRow, type Planned, type PlannedArea, printed, some, totalOf } from './planned.ts';
import { later } from '../measures/days.ts';

/** What comes before anything is built: lines located, points set out, the ground dug and taken away. */
export function groundTasks(planned: Planned): Draft[] {
  return [
    locate(planned),
    setOut(planned),
    breakOut(planned),
    dig(planned),
    softSpots(planned),
    cartAway(planned)
  ].filter(draft => draft.efforts.length > 0);
}

const SHARED = 'ground that areas share, dug once';

/** m3: less is what rounding leaves. */
const LEAST = 1e-9;

const NOTHING_WAITS = { holds: [], waits: [] } as const;

function dugOn({ logged }: Planned, { area }: PlannedArea): string | undefined {
  return logged.reached(area.key, 'dig');
}

/** The day on which the first stone lay on what was dug. */
function stoneOn({ logged }: Planned, { area }: PlannedArea): string | undefined {
  return logged.reached(area.key, 'sub-base') ?? logged.reached(area.key, 'base');
}

/** The day on which the last of all areas was dug; undefined while one is not. */
function allDugOn(planned: Planned): string | undefined {
  const days = planned.areas.map(area => dugOn(planned, area));
  return days.includes(undefined) ? undefined : days.reduce(later, undefined);
}

function digsAnything({ quantities: { dig } }: Planned): boolean {
  return dig.bankVolume > 0 || (dig.oldPavingVolume ?? 0) > 0;
}

function locate(planned: Planned): Draft {
  const amounts = digsAnything(planned) ? some('job', 1, 'job') : [];
  return {
    id: 'locate',
    word: 'locate',
    title: 'Have services located',
    rank: rankOf('locate'),
    efforts: effort('locate', [], amounts, { done: allDugOn(planned) }),
    holds: [LEAD],
    waits: []
  };
}

function setOut(planned: Planned): Draft {
  const perimeter = planned.areas.reduce((sum, { numbers }) => sum + numbers.perimeter, 0);
  const amounts = [
    ...some('net area', planned.quantities.totals.netArea, 'm2', { pointer: '/totals/netArea' }),
    ...some('perimeter of all areas', perimeter, 'm'),
    ...some('points', planned.quantities.points.length, 'piece'),
    ...some('job', planned.areas.length === 0 ? 0 : 1, 'job')
  ];
  return {
    id: 'set-out',
    word: 'set-out',
    title: 'Set out points, lines and heights',
    rank: rankOf('set-out'),
    efforts: effort('set-out', [], amounts, { done: allDugOn(planned) }),
    ...NOTHING_WAITS
  };
}

function breakOut(planned: Planned): Draft {
  const { job } = planned;
  const efforts = planned.areas.flatMap(one => {
    const { area, numbers, pointer } = one;
    const volume = numbers.dig.oldPavingVolume;
    const amounts = [
      ...some(`old paving in ${area.name}`, volume, 'm3', {
        pointer: `${pointer}/dig/oldPavingVolume`,
        area: area.key
      }),
      ...some(`old paving in ${area.name}`, (volume ?? 0) / meanThickness(area.brokenOut), 'm2', { area: area.key })
    ];
    return effort('break-out', [job.carting.digBy ?? 'hand'], amounts, { done: dugOn(planned, one) });
  });
  const names = planned.areas.flatMap(({ area }) => area.brokenOut.map(({ name }) => name));
  return {
    id: 'break-out',
    word: 'break-out',
    title: `Break out ${namesInRow(names)}: ${printed('stone-volume', totalOf(efforts, 'm3'), job.system)}`,
    rank: rankOf('break-out'),
    efforts,
    ...NOTHING_WAITS
  };
}

/** Of several old pavings the mean by their areas, m; 1 where there is none. */
function meanThickness(all: readonly BrokenOut[]): number {
  const area = all.reduce((sum, { outline }) => sum + areaOf(outline), 0);
  const volume = all.reduce((sum, { outline, thickness }) => sum + areaOf(outline) * thickness.value, 0);
  return volume > 0 ? volume / area : 1;
}

function dig(planned: Planned): Draft {
  const { job, quantities } = planned;
  const by = job.carting.digBy ?? 'hand';
  const parts = planned.areas.flatMap(one =>
    effort(
      'dig',
      [by, one.area.site.soil.name],
      some(`dig of ${one.area.name}`, one.numbers.dig.bankVolume, 'm3', {
        pointer: `${one.pointer}/dig/bankVolume`,
        area: one.area.key
      }),
      { done: dugOn(planned, one) }
    )
  );
  const efforts = [...parts, ...dugTwice(planned, parts, quantities.dig.bankVolume, by)];
  return {
    id: 'dig',
    word: 'dig',
    title: `Dig by ${by}: ${printed('stone-volume', quantities.dig.bankVolume, job.system)}`,
    rank: rankOf('dig'),
    efforts,
    ...NOTHING_WAITS
  };
}

/** Ground that two areas share is dug once: what their sum is more than the job's. */
function dugTwice(planned: Planned, parts: readonly Effort[], once: number, by: string): Effort[] {
  const twice = totalOf(parts, 'm3') - once;
  if (twice <= LEAST) return [];
  const [task] = parts;
  const words = [by, planned.areas[0]!.area.site.soil.name];
  return effort(task!.task, words, some(SHARED, -twice, 'm3'), { done: allDugOn(planned) });
}

function softSpots(planned: Planned): Draft {
  const { system } = planned.job;
  const efforts = planned.areas.flatMap(one =>
    (one.numbers.softSpots ?? []).flatMap((spot, index) =>
      effort(
        'soft-spots',
        [planned.job.carting.digBy ?? 'hand', one.area.site.soil.name],
        some(`soft spot in ${one.area.name}`, spot.bankVolume, 'm3', {
          pointer: `${one.pointer}/softSpots/${index}/bankVolume`,
          area: one.area.key
        }),
        { done: stoneOn(planned, one) }
      )
    )
  );
  return {
    id: 'soft-spots',
    word: 'soft-spots',
    title: `Dig out soft spots and fill them: ${printed('stone-volume', totalOf(efforts, 'm3'), system)}`,
    rank: rankOf('soft-spots'),
    efforts,
    ...NOTHING_WAITS
  };
}

/** By barrow: loaded, wheeled and tipped. By machine: its loose volume. */
function cartAway(planned: Planned): Draft {
  const { job, quantities } = planned;
  const { carting } = job;
  const words = [carting.digBy ?? 'hand'];
  const part = (
    name: string,
    loose: { readonly volume: number | undefined; readonly mass: number | undefined },
    done: string | undefined,
    area?: Key
  ): Effort[] => {
    const byBarrow = barrowWork(name, loose, carting, area);
    const amounts = byBarrow.length > 0 ? byBarrow : some(name, loose.volume, 'm3', area === undefined ? {} : { area });
    return effort('cart-away', words, amounts, { done });
  };
  const parts = planned.areas.flatMap(one => {
    const { area, numbers } = one;
    const { looseVolume, mass, oldPavingVolume, oldPavingMass } = numbers.dig;
    const done = dugOn(planned, one);
    return [
      ...part(`spoil of ${area.name}`, { volume: looseVolume, mass }, done, area.key),
      ...part(`old paving of ${area.name}`, { volume: oldPavingVolume, mass: oldPavingMass }, done, area.key),
      ...(numbers.softSpots ?? []).flatMap(spot =>
        part(
          `spoil of the soft spot in ${area.name}`,
          { volume: spot.looseVolume, mass: spot.mass },
          stoneOn(planned, one),
          area.key
        )
      )
    ];
  });
  const twice = (key: 'looseVolume' | 'mass'): number =>
    quantities.dig[key] - planned.areas.reduce((total, { numbers }) => total + numbers.dig[key], 0);
  const shared =
    twice('looseVolume') > -LEAST
      ? []
      : part(SHARED, { volume: twice('looseVolume'), mass: twice('mass') }, allDugOn(planned));
  const loose = quantities.dig.looseVolume + (quantities.dig.softSpotLooseVolume ?? 0);
  return {
    id: 'cart-away',
    word: 'cart-away',
    title: `Cart away the spoil: ${printed('stone-volume', loose, job.system)} loose`,
    rank: rankOf('cart-away'),
    efforts: [...parts, ...shared],
    ...NOTHING_WAITS
  };
}
