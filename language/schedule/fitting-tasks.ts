import { distance } from '../geometry/index.ts';
import { drainConcrete } from '../quantities/drain-concrete.ts';
import type { Drain } from '../job/heights.ts';
import type { KeptOut } from '../job/job.ts';
import { later } from '../measures/days.ts';
import { type Draft, rankOf } from './draft.ts';
import { frostHold } from './holds.ts';
import { effort, namesInRow, type Planned, some } from './planned.ts';

/** Drains, and boxes: those out of use are cut down before stone covers them, the others set before the bed. */
export function fittingTasks(planned: Planned): Draft[] {
  return [buried(planned), drains(planned), boxes(planned)].filter(draft => draft.efforts.length > 0);
}

function isBuried({ use }: KeptOut): boolean {
  return use !== undefined && use.buried && !use.inUse;
}

function buried(planned: Planned): Draft {
  const all = planned.job.boxes.filter(box => box.kind === 'box' && isBuried(box));
  return {
    id: 'buried-boxes',
    word: 'boxes',
    title: `Cut down and bury ${namesInRow(all.map(({ name }) => name))}; write down where`,
    rank: rankOf('buried-boxes'),
    efforts: all.flatMap(box => {
      const { logged } = planned;
      const done = logged.reached(box.area, 'sub-base') ?? logged.reached(box.area, 'base');
      return effort('boxes', ['bury'], some(box.name, 1, 'piece', { area: box.area }), { done });
    }),
    holds: [],
    waits: []
  };
}

function boxes(planned: Planned): Draft {
  const { job, quantities, logged } = planned;
  const all = job.boxes.filter(box => box.kind === 'box' && !isBuried(box));
  const changeOf = new Map(quantities.boxes?.map(({ id, change }) => [id, change]));
  return {
    id: 'boxes',
    word: 'boxes',
    title: `Set lids to the finish: ${namesInRow(all.map(({ name }) => name))}`,
    rank: rankOf('boxes'),
    efforts: all.flatMap(box => {
      const change = changeOf.get(box.key) ?? 0;
      const words = [change < 0 ? 'lower' : 'raise', ...(box.use?.tray === undefined ? [] : ['tray'])];
      const done = logged.reached(box.area, 'bed');
      return effort('boxes', words, some(box.name, 1, 'piece', { area: box.area }), { done });
    }),
    holds: [],
    waits: []
  };
}

function drains(planned: Planned): Draft {
  const { job, logged } = planned;
  const efforts = job.drains.flatMap(drain => {
    const areas = job.areas.filter(area => area.key === drain.area || area.drains.some(({ key }) => key === drain.key));
    const days = areas.map(({ key }) => logged.reached(key, 'sub-base') ?? logged.reached(key, 'base'));
    const done = days.length === 0 || days.includes(undefined) ? undefined : days.reduce(later, undefined);
    const [area] = areas;
    const from = area === undefined ? {} : { area: area.key };
    return [
      ...effort('drains', [drain.kind], amountsOf(drain, from), { done }),
      ...effort('concrete', ['drain'], some(`concrete of ${drain.name}`, drainConcrete(drain)?.value, 'm3', from), {
        done
      })
    ];
  });
  const isOnConcrete = job.drains.some(({ concrete }) => concrete !== undefined);
  const names = namesInRow(job.drains.map(({ name }) => name));
  return {
    id: 'drains',
    word: 'drains',
    title: `Set ${names}${isOnConcrete ? ' on concrete' : ''}, with what leads away from it`,
    rank: rankOf('drains'),
    efforts,
    holds: isOnConcrete ? frostHold(planned, 'concrete', job.system) : [],
    waits: []
  };
}

function amountsOf(drain: Drain, from: { readonly area?: string }) {
  const { kind, line, name } = drain;
  if (kind === 'channel' && line !== undefined) return some(name, distance(line.from, line.to), 'm', from);
  return some(name, 1, 'piece', from);
}
