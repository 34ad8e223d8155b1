import type { Job } from '../job/job.ts';
import type { AreaResult } from './area-result.ts';
import type { Workings } from './contract.ts';
import { deliveriesOf, type UnitsToBuy } from './deliveries.ts';
import { drainsOf } from './drains.ts';
import { type Memory, recall } from './job-memory.ts';
import { Book } from './page.ts';
import { routesOf } from './routes.ts';
import type { SiteArea } from './site-area.ts';
import type { SiteQuantities } from './site-contract.ts';
import { listed, type SiteInputs, siteStage } from './site-stage.ts';
import { type Water, waterInputs, waterLedOn, waterStage } from './water-stage.ts';

/** What stands in the job besides its areas. */
export interface Site {
  readonly quantities: SiteQuantities;
  readonly workings: Workings;
}

/** What takes time is worked out only where it is asked for. */
export interface SiteAsked {
  readonly water: boolean;
  readonly routes: boolean;
}

/** What stands in the job besides its areas, but for deliveries. */
export function* siteOf(
  job: Job,
  results: readonly AreaResult[],
  asked: SiteAsked,
  memory: Memory
): Generator<void, Site> {
  const areas = results.map(siteArea);
  const { points, tapes, datum, setUps, boxes, pipes, gates, log } = job;
  const inputs: SiteInputs = {
    job: { points, tapes, setUps, boxes, pipes, gates, log, ...(datum === undefined ? {} : { datum }) },
    areas
  };
  const site = yield* recall(memory, 'site', [job.key], inputs, () => siteStage(inputs));
  const drainsAndWater = asked.water ? yield* waterOf(job, areas, memory) : undefined;
  const routes = asked.routes ? yield* routesOfJob(job, results, memory) : undefined;
  return {
    quantities: { ...site.quantities, ...drainsAndWater?.quantities, ...routes?.quantities },
    workings: { ...site.workings, ...drainsAndWater?.workings }
  };
}

function siteArea({ area, layers: { baseLoops, layers, softSpots, dig } }: AreaResult): SiteArea {
  return { area, layers: { baseLoops, layers, softSpots, dig } };
}

function* waterOf({ key, drains }: Job, areas: readonly SiteArea[], memory: Memory): Generator<void, Site> {
  const alone: (ReturnType<typeof waterStage> | undefined)[] = [];
  for (const { area } of areas) {
    const inputs = waterInputs(area);
    alone.push(inputs && (yield* recall(memory, 'water', [area.key], inputs, () => waterStage(inputs))));
    yield;
  }
  const inputs = { drains, areas, alone };
  return yield* recall(memory, 'water', [key], inputs, () => {
    const water: Water = waterLedOn(
      areas.map(({ area }) => area),
      alone
    );
    const book = new Book();
    const quantities = {
      ...listed('drains', drainsOf(drains, areas, water.drains, book)),
      ...listed('water', water.areas)
    };
    return { quantities, workings: book.workings };
  });
}

function* routesOfJob({ key, routes }: Job, results: readonly AreaResult[], memory: Memory): Generator<void, Site> {
  const areas = results.map(({ area, edgeHeights }) => ({ area, edgeHeights }));
  const inputs = { routes, areas: routes.length === 0 ? [] : areas };
  return yield* recall(memory, 'routes', [key], inputs, () => ({
    quantities: listed('routes', routesOf(routes, inputs.areas, new Book())),
    workings: {}
  }));
}

/** What was delivered against what is needed, which of units hangs on how the cut pieces come out of them. */
export function* deliveredOf(
  { key, log }: Job,
  results: readonly AreaResult[],
  units: UnitsToBuy,
  memory: Memory
): Generator<void, Site> {
  const delivered = log.filter(({ kind }) => kind === 'delivered');
  const inputs = { delivered, areas: delivered.length === 0 ? [] : results.map(siteArea), units };
  return yield* recall(memory, 'deliveries', [key], inputs, () => {
    const book = new Book();
    const quantities = listed('deliveries', deliveriesOf(delivered, inputs.areas, units, book));
    return { quantities, workings: book.workings };
  });
}
