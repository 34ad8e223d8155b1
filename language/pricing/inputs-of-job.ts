import type { Job } from '../job/job.ts';
import type { Hire } from '../job/money-lines.ts';
import type { AreaQuantities, JobQuantities } from '../quantities/contract.ts';
import type { Schedule, Task } from '../schedule/contract.ts';
import type {
  CostInputs,
  HiredDays,
  OrderedDelivery,
  OrderedItem,
  PricedArea,
  TakenAway,
  TaskHours
} from './cost-inputs.ts';

/** What is bought, as far as costs go. */
export interface Bought {
  readonly ordered: readonly OrderedItem[];
  readonly deliveries: readonly OrderedDelivery[];
}

/** What cost and price are worked out from: the schedule is that of the whole job, whatever of it the log tells as done. */
export function costInputsOf(
  job: Job,
  quantities: JobQuantities,
  schedule: Schedule,
  { ordered, deliveries }: Bought
): CostInputs {
  const takenAway = takenAwayOf(quantities);
  return {
    job: job.key,
    ...(job.currency === undefined ? {} : { currency: job.currency }),
    system: job.system,
    money: job.money,
    ordered,
    deliveries,
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
    shares: working.map(({ amount: { area }, hours: own }) => ({
      ...(area === undefined ? {} : { area }),
      amount: own
    }))
  };
}

/** A hire whose tasks are not there needs no days. */
function hiredDays(hire: Hire, { hires }: Schedule): HiredDays {
  const found = hires.find(({ id }) => id === hire.key);
  return found === undefined ? { hire } : { hire, days: found.days, span: found.span };
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
