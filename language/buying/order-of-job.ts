import type { Job, Key } from '../job/job.ts';
import type { AreaResult } from '../quantities/area-result.ts';
import { traysOf } from '../quantities/boxes.ts';
import type { Workings } from '../quantities/contract.ts';
import { type Memory, recall } from '../quantities/job-memory.ts';
import { pointerAt, withAreasAt } from '../quantities/page.ts';
import { unitsOf } from '../quantities/units-of-area.ts';
import type { WholeJob } from '../quantities/whole-job.ts';
import type { IntegerSolver } from './integer-solver.ts';
import { orderArea } from './order-area.ts';
import type { BuyingQuantities } from './order-contract.ts';
import { type OrderInputs, orderStage } from './order-stage.ts';

/** What the job needs and what to buy for it, with workings in words where they are asked for. */
export interface JobOrder {
  readonly quantities: BuyingQuantities;
  readonly workings: () => Workings;
}

/** The order of a job whose areas and whole are worked out; remembered until something that it hangs on changes. */
export function* orderOfJob(
  job: Job,
  results: readonly AreaResult[],
  { units, order: places }: WholeJob,
  memory: Memory,
  solver: IntegerSolver | undefined
): Generator<void, JobOrder> {
  if (results.length === 0) return { quantities: {}, workings: () => ({}) };
  // By key, as in the numbers of the whole job: an area moved in the text changes nothing.
  const sorted = places.map(index => results[index]!);
  const { currency, money } = job;
  const inputs: OrderInputs = {
    job: job.key,
    system: job.system,
    ...(currency === undefined ? {} : { currency }),
    ...(money.tax === undefined ? {} : { taxRate: money.tax }),
    ...materialInputs(job, sorted),
    units: [...new Map(sorted.flatMap(({ area }) => unitsOf(area)).map(unit => [unit.key, unit])).values()],
    jobUnits: units,
    trays: traysOf(job.boxes, results),
    delivered: job.log.flatMap(entry => (entry.kind === 'delivered' ? [entry] : [])),
    stock: job.stock,
    suppliers: job.suppliers,
    solves: solver !== undefined
  };
  const { quantities, workings } = yield* recall(memory, 'order', [job.key], inputs, () => orderStage(inputs, solver));
  return { quantities: placed(quantities, places), workings: () => withAreasAt(places, workings()) };
}

/** What all that is used besides units hangs on; areas in the order of their keys. */
export function materialInputs(
  { drains, concrete, prices }: Job,
  sorted: readonly AreaResult[]
): Pick<OrderInputs, 'areas' | 'drains' | 'concrete' | 'prices'> {
  return {
    areas: sorted.map(orderArea),
    drains: drains.map(({ key, name, area = drainedArea(key, sorted), line, width, depth, concrete: surround }) => ({
      key,
      name,
      ...(area === undefined ? {} : { area }),
      ...(line === undefined ? {} : { line }),
      ...(width === undefined ? {} : { width }),
      ...(depth === undefined ? {} : { depth }),
      ...(surround === undefined ? {} : { concrete: surround })
    })),
    concrete,
    prices
  };
}

/** The first area that a drain stands in or along. */
function drainedArea(drain: Key, results: readonly AreaResult[]): Key | undefined {
  return results.find(({ area }) => area.drains.some(({ key }) => key === drain))?.area.key;
}

/** What is led to the areas of the stage is led to those of the job. */
function placed({ needs, ...others }: BuyingQuantities, places: readonly number[]): BuyingQuantities {
  if (needs === undefined) return others;
  const led = needs.map(need => ({
    ...need,
    for: need.for.map(place => (place.from === undefined ? place : { ...place, from: pointerAt(places, place.from) }))
  }));
  return { needs: led, ...others };
}
