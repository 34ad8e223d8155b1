import type { Job } from '../job/job.ts';
import type { Hire } from '../job/money-lines.ts';
import type { AreaQuantities, JobQuantities } from '../quantities/contract.ts';
import type { Schedule, Task } from '../schedule/contract.ts';
import type {
  CostInputs,
  CostShare,
  HiredDays,
  OrderedDelivery,
  OrderedItem,
  OrderedLine,
  PricedArea,
  TakenAway,
  TaskHours
} from './cost-inputs.ts';
import { minorOf } from '../money/money.ts';

/**
 * What cost and price are worked out from. Order and schedule are those of the whole job, whatever of it the log tells as
 * delivered and done.
 */
export function costInputsOf(job: Job, quantities: JobQuantities, schedule: Schedule): CostInputs {
  const takenAway = takenAwayOf(quantities);
  const currency = job.currency ?? quantities.orderCost?.currency;
  return {
    job: job.key,
    ...(currency === undefined ? {} : { currency }),
    system: job.system,
    money: job.money,
    ordered: orderedOf(quantities),
    deliveries: (quantities.deliveryCharges ?? []).map(({ supplier, name, cost, tax }, index): OrderedDelivery => ({
      supplier,
      name,
      cost: minorOf(cost),
      ...(tax === undefined ? {} : { tax }),
      pointer: `/deliveryCharges/${index}`
    })),
    tasks: schedule.tasks.map(taskHours),
    hires: job.money.hires.map(hire => hiredDays(hire, schedule)),
    ...(takenAway === undefined ? {} : { takenAway }),
    areas: quantities.areas.map(({ id, name, netArea }, index): PricedArea => ({
      key: id,
      name,
      netArea,
      pointer: `/areas/${index}/netArea`
    })),
    netArea: quantities.totals.netArea
  };
}

function orderedOf({ needs = [], order = [], areas }: JobQuantities): OrderedItem[] {
  return needs.map((need): OrderedItem => {
    const lines = order.flatMap(({ id, cost, deposit, tax }, index): OrderedLine[] => {
      if (id !== need.id || cost === undefined) return [];
      return [
        {
          cost: minorOf(cost),
          ...(deposit === undefined ? {} : { deposit: minorOf(deposit) }),
          ...(tax === undefined ? {} : { tax }),
          pointer: `/order/${index}`
        }
      ];
    });
    // A further size of a pack of several has a line, and its cost stands with the first.
    const isBought = order.some(({ id }) => id === need.id) || need.in.every(({ toBuy }) => toBuy === 0);
    // Parts in several measures can't be weighed against each other: then it is for the job as a whole.
    const isOfOneMeasure = new Set(need.for.map(({ measure }) => measure)).size < 2;
    const shares = isOfOneMeasure ? need.for.flatMap(place => sharesOf(place, areas)) : [];
    return { thing: need.id, name: need.item, ...(isBought ? { lines } : {}), shares };
  });
}

type NeedPlace = NonNullable<JobQuantities['needs']>[number]['for'][number];

/** The edging that concrete or spikes go with, where what is needed is taken from its numbers. */
function edgingOf({ from = '' }: NeedPlace, areas: JobQuantities['areas']): string | undefined {
  const [, area, line] = /^\/areas\/(\d+)\/edging\/(\d+)\//.exec(from) ?? [];
  return areas[Number(area)]?.edging[Number(line)]?.material;
}

/** Edging goes to the sides that it stands along; what is told of an area alone to all that have it, by their lengths. */
function sharesOf(of: NeedPlace, areas: JobQuantities['areas']): CostShare[] {
  const { area, work, side, amount = 0 } = of;
  const edging = edgingOf(of, areas);
  const place = { ...(area === undefined ? {} : { area }), work };
  if (side !== undefined) return [{ ...place, edge: side, amount }];
  if (edging === undefined) return [{ ...place, amount }];
  const edges = areas.find(({ id }) => id === area)?.edges.filter(one => one.edging === edging) ?? [];
  const length = edges.reduce((sum, edge) => sum + edge.length, 0);
  if (length === 0) return [{ ...place, amount }];
  return edges.map(edge => ({ ...place, edge: edge.name, amount: (amount * edge.length) / length }));
}

function taskHours({ id, word, title, hours, working, noRate }: Task): TaskHours {
  const sources = [...new Set(working.map(({ rate }) => rate.name))].join(', ');
  return {
    id,
    // What there is to do stands behind a colon.
    title: word === undefined ? title : title.replace(/:.*$/, ''),
    ...(word === undefined ? {} : { task: word }),
    ...(hours === undefined ? {} : { hours }),
    from: { assumed: `hours of the schedule, by the rates ${sources}` },
    noRate: noRate.map(({ name }) => name),
    // What is taken off because areas share ground is taken off all of them, by their hours.
    shares: working
      .filter(({ hours: own }) => own > 0)
      .map(({ amount: { area, side }, hours: own }) => ({
        ...(area === undefined ? {} : { area }),
        ...(side === undefined ? {} : { edge: side }),
        amount: own
      }))
  };
}

/** A hire whose tasks are not there needs no days. */
function hiredDays(hire: Hire, { hires }: Schedule): HiredDays {
  const found = hires.find(({ id }) => id === hire.key);
  if (found?.days === undefined || found.span === undefined) return { hire };
  return { hire, days: found.days, span: found.span };
}

function takenAwayOf({ areas, dig }: JobQuantities): TakenAway | undefined {
  if (dig.looseVolume === undefined || dig.mass === undefined) return undefined;
  return {
    looseVolume: dig.looseVolume + (dig.softSpotLooseVolume ?? 0) + (dig.oldPavingVolume ?? 0),
    mass: dig.mass + (dig.softSpotMass ?? 0) + (dig.oldPavingMass ?? 0),
    ...(dig.truckLoads === undefined ? {} : { loads: dig.truckLoads }),
    shares: areas.map(area => ({ area: area.id, amount: looseOf(area) })).filter(({ amount }) => amount > 0)
  };
}

function looseOf({ dig, softSpots = [] }: AreaQuantities): number {
  return softSpots.reduce((sum, { looseVolume }) => sum + (looseVolume ?? 0), dig.looseVolume ?? 0);
}
