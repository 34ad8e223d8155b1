import type { Area, Material, Unit } from '../job/job.ts';
import type { AreaQuantities } from '../quantities/contract.ts';
import { LARGEST_BLOCK_FACE } from '../quantities/block-face.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { Amount } from './contract.ts';
import { type Draft, type Effort, rankOf } from './draft.ts';
import { waitsForEdging } from './edging-tasks.ts';
import { BOUND_FILLER_DRY, concreteWait, frostHold, secondSweepingWait } from './holds.ts';
import { effort, namesInRow, type Planned, type PlannedArea, printed, some, totalOf } from './planned.ts';

/** Id of the task that takes the place of vibrating where units are set by hand: no plate is needed for it. */
export const TAPPING = 'tapping';

/** Units from laying to clean-up. */
export function layingTasks(planned: Planned): Draft[] {
  const paved = planned.areas.filter(({ area, numbers }) => area.paving !== undefined && numbers.laying !== undefined);
  const all = [
    ...paved.flatMap(one => laying(planned, one)),
    cutting(planned, paved),
    backing(planned),
    ...vibrating(planned, paved),
    ...joints(planned, paved),
    cleanUp(planned)
  ];
  return all.filter(draft => draft.efforts.length > 0);
}

/** One task for each bond of an area. */
function laying({ job, logged }: Planned, one: PlannedArea): Draft[] {
  const { area, numbers, pointer } = one;
  const entries = (numbers.laying ?? []).map((entry, index) => ({ entry, index }));
  const bonds = [...new Set(entries.map(({ entry }) => entry.bond))];
  const done = logged.reached(area.key, 'paving');
  return bonds.map(bond => {
    const own = entries.filter(({ entry }) => entry.bond === bond);
    const units = own.map(({ entry }) => entry.unit);
    const pieces = own.reduce((sum, { entry }) => sum + entry.whole + entry.cut, 0);
    const covered = own.reduce((sum, { entry }) => sum + entry.unitArea, 0);
    const of = `${bond} of ${area.name}`;
    const size: Amount[] =
      bonds.length === 1
        ? some(of, numbers.netArea, 'm2', { pointer: `${pointer}/netArea`, area: area.key })
        : some(of, covered, 'm2', {
            ...(own.length === 1 ? { pointer: `${pointer}/laying/${own[0]!.index}/unitArea` } : {}),
            area: area.key
          });
    const words = [...bondWords(bond), ...unitWords(area, units)];
    const total = size[0] === undefined ? '' : `: ${printed('area', size[0].value, job.system)}`;
    return {
      id: `laying/${area.name}/${bond.replaceAll(', ', '+')}`,
      word: 'laying',
      title: `Lay ${area.name}, ${namesInRow(units)} in ${bond}${total}`,
      rank: rankOf('laying'),
      efforts: effort('laying', words, [...size, ...some(`pieces of ${of}`, pieces, 'piece', { area: area.key })], {
        done
      }),
      holds: [],
      waits: []
    };
  });
}

/** A bond's name and what it begins with: `herringbone-45` is `herringbone` too. */
function bondWords(bond: string): string[] {
  return bond.split(', ').flatMap(name => {
    const parts = name.split('-');
    return parts.map((_, index) => parts.slice(0, index + 1).join('-'));
  });
}

/** What a rate may ask about the units: their names, `clay-units`, `slab` or `block`, `hand` where they are tapped down. */
function unitWords(area: Area, names: readonly string[]): string[] {
  const units = unitsOf(area).filter(({ name }) => names.includes(name));
  const words = units.flatMap(unit => [
    unit.name,
    kindOf(unit),
    ...(unit.madeOf === 'clay' ? ['clay-units'] : []),
    ...(unit.setByHand === true ? ['hand'] : [])
  ]);
  return [...new Set(words)];
}

/** By its face alone: how long a block is for its thickness changes nothing in how it is laid. */
function kindOf({ length, width }: Unit): 'slab' | 'block' {
  return length.value * width.value > LARGEST_BLOCK_FACE ? 'slab' : 'block';
}

function cutting(planned: Planned, paved: readonly PlannedArea[]): Draft {
  const { system } = planned.job;
  const efforts = paved.flatMap(({ area, numbers, pointer }) =>
    (numbers.laying ?? []).flatMap((entry, index) => {
      const at = `${pointer}/laying/${index}`;
      const of = `${entry.unit} in ${area.name}`;
      return effort(
        'cutting',
        unitWords(area, [entry.unit]),
        [
          ...some(`saw length of ${of}`, entry.sawLength, 'm', { pointer: `${at}/sawLength`, area: area.key }),
          ...some(`cut ${of}`, entry.cut, 'piece', { pointer: `${at}/cut`, area: area.key })
        ],
        { done: planned.logged.reached(area.key, 'paving') }
      );
    })
  );
  const cuts = paved.flatMap(({ numbers }) => numbers.laying ?? []).reduce((sum, { cut }) => sum + cut, 0);
  return {
    id: 'cutting',
    word: 'cutting',
    title: `Cut and fit ${cuts} units: ${printed('run', totalOf(efforts, 'm'), system)} of saw cuts`,
    rank: rankOf('cutting'),
    efforts,
    holds: [],
    waits: []
  };
}

/** Concrete behind the last course, where a side is backed so. */
function backing(planned: Planned): Draft {
  const { job, logged } = planned;
  const efforts = planned.areas.flatMap(({ area, numbers, pointer }) =>
    area.edges.flatMap((edge, index) =>
      edge.backed !== true
        ? []
        : effort(
            'concrete',
            ['backing'],
            some(
              `concrete behind the last course along ${edge.name} of ${area.name}`,
              numbers.edges[index]?.length,
              'm',
              {
                pointer: `${pointer}/edges/${index}/length`,
                area: area.key,
                side: edge.name
              }
            ),
            { done: logged.reached(area.key, 'joints') }
          )
    )
  );
  return {
    id: 'concrete',
    word: 'concrete',
    title: `Concrete behind the last course: ${printed('run', totalOf(efforts, 'm'), job.system)}`,
    rank: rankOf('concrete'),
    efforts,
    holds: frostHold(planned, 'concrete', job.system),
    waits: []
  };
}

/** Units are vibrated, or tapped down one by one where they are set by hand. */
function vibrating(planned: Planned, paved: readonly PlannedArea[]): Draft[] {
  const { job } = planned;
  const isBacked = planned.areas.some(({ area }) => area.edges.some(({ backed }) => backed === true));
  const waits = [
    ...(isBacked ? [concreteWait('concrete', 'the last course', job.concrete.wait)] : []),
    ...waitsForEdging(planned, 'edging-after')
  ];
  const part = (id: string, words: string, by: 'hand' | 'machine', areas: readonly PlannedArea[]): Draft => {
    const efforts = areas.flatMap(one =>
      effort('vibrating', [by, ...unitWordsOf(one.area)], netArea(one), {
        done: planned.logged.reached(one.area.key, 'joints')
      })
    );
    return {
      id,
      word: 'vibrating',
      title: `${words}: ${printed('area', totalOf(efforts, 'm2'), job.system)}`,
      rank: rankOf('vibrating'),
      efforts,
      holds: [],
      waits
    };
  };
  return [
    part(
      'vibrating',
      'Vibrate the units',
      'machine',
      paved.filter(one => !isSetByHand(one.area))
    ),
    part(
      TAPPING,
      'Tap the units down by hand',
      'hand',
      paved.filter(one => isSetByHand(one.area))
    )
  ];
}

function isSetByHand({ paving }: Area): boolean {
  return paving?.units[0].setByHand === true;
}

function unitWordsOf(area: Area): string[] {
  return unitWords(
    area,
    unitsOf(area).map(({ name }) => name)
  );
}

function netArea({ area, numbers, pointer }: PlannedArea): Amount[] {
  return some(`net area of ${area.name}`, numbers.netArea, 'm2', { pointer: `${pointer}/netArea`, area: area.key });
}

/** Filler is swept in once; an unbound one settles and is filled up a second time. */
function joints(planned: Planned, paved: readonly PlannedArea[]): Draft[] {
  const filled = paved.flatMap(one =>
    one.area.jointFiller === undefined ? [] : [{ one, filler: one.area.jointFiller }]
  );
  const ways = [
    { id: 'joints', areas: filled.filter(({ filler }) => filler.unbound !== false) },
    { id: 'bound-joints', areas: filled.filter(({ filler }) => filler.unbound === false) }
  ];
  return ways.flatMap(({ id, areas }) => {
    if (areas.length === 0) return [];
    const isBound = id === 'bound-joints';
    const names = namesInRow(areas.map(({ filler }) => filler.name));
    const sweeping: Draft = {
      id,
      word: 'joints',
      title: isBound ? `Fill the joints with ${names}, once` : `Sweep ${names} into the joints`,
      rank: rankOf('joints'),
      efforts: areas.flatMap(({ one, filler }) =>
        effort('joints', [isBound ? 'bound' : 'unbound', filler.name], [...netArea(one), ...fillerMass(one, filler)], {
          done: planned.logged.reached(one.area.key, 'joints')
        })
      ),
      holds: isBound ? [BOUND_FILLER_DRY] : [],
      waits: []
    };
    if (isBound) return [sweeping];
    const second: Draft = {
      id: 'second-sweeping',
      word: 'second-sweeping',
      title: `Sweep ${names} in a second time`,
      rank: rankOf('second-sweeping'),
      efforts: areas.flatMap(({ one, filler }) => effort('second-sweeping', ['unbound', filler.name], netArea(one))),
      holds: [],
      waits: [secondSweepingWait(id, keptBack(areas.map(({ filler }) => filler)))],
      after: [id]
    };
    return [sweeping, second];
  });
}

/** The share that is kept back, where all fillers tell the same. */
function keptBack(fillers: readonly Material[]): number | undefined {
  const shares = new Set(fillers.map(({ allowances }) => allowances?.keptBack?.value));
  return shares.size === 1 ? [...shares][0] : undefined;
}

function fillerMass({ area, numbers, pointer }: PlannedArea, filler: Material): Amount[] {
  const { joints: of } = numbers as Pick<AreaQuantities, 'joints'>;
  return some(`${filler.name} in ${area.name}`, of?.mass, 'kg', { pointer: `${pointer}/joints/mass`, area: area.key });
}

function cleanUp(planned: Planned): Draft {
  const { totals } = planned.quantities;
  const amounts = [
    ...some('job', planned.areas.length === 0 ? 0 : 1, 'job'),
    ...some('net area', totals.netArea, 'm2', { pointer: '/totals/netArea' })
  ];
  const efforts: Effort[] = effort('clean-up', [], amounts);
  return {
    id: 'clean-up',
    word: 'clean-up',
    title: 'Clean up and hand over',
    rank: rankOf('clean-up'),
    efforts,
    holds: [],
    waits: []
  };
}
