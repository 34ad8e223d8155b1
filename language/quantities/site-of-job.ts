import { materialInputs } from '../buying/order-of-job.ts';
import { usedThings } from '../buying/used.ts';
import type { Job } from '../job/job.ts';
import type { AreaResult } from './area-result.ts';
import type { Workings } from './contract.ts';
import { deliveriesOf, type UnitsWanted } from './deliveries.ts';
import { drainsOf } from './drains.ts';
import { type Memory, recall } from './job-memory.ts';
import { Book, withAreasAt } from './page.ts';
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

const NOTHING: Site = { quantities: {}, workings: {} };

/** What takes time is worked out only where it is asked for. */
export interface SiteAsked {
  readonly water: boolean;
  readonly routes: boolean;
}

/** What stands in the job besides its areas; `units`: those used, where they are known. */
export function* siteOf(
  job: Job,
  results: readonly AreaResult[],
  asked: SiteAsked,
  units: UnitsWanted,
  memory: Memory
): Generator<void, Site> {
  // By key and by name: where in the text areas and points stand changes nothing.
  const areas = results.map(siteArea).sort((a, b) => (a.area.key < b.area.key ? -1 : 1));
  const points = [...job.points].sort((a, b) => (a.name < b.name ? -1 : 1));
  const { tapes, datum, setUps, boxes, pipes, gates, log } = job;
  const inputs: SiteInputs = {
    job: { points, tapes, setUps, boxes, pipes, gates, log, ...(datum === undefined ? {} : { datum }) },
    areas
  };
  const site = yield* recall(memory, 'site', [job.key], inputs, () => siteStage(inputs));
  const drainsAndWater = asked.water ? yield* waterOf(job, areas, memory) : undefined;
  const routes = asked.routes ? yield* routesOfJob(job, results, memory) : undefined;
  const delivered = yield* deliveredOf(job, results, units, memory);
  return {
    quantities: { ...site.quantities, ...drainsAndWater?.quantities, ...routes?.quantities, ...delivered.quantities },
    workings: { ...site.workings, ...drainsAndWater?.workings, ...delivered.workings }
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
  if (drains.length === 0 && alone.every(one => one === undefined)) return NOTHING;
  const inputs = { drains, areas, alone };
  return yield* recall(memory, 'drains', [key], inputs, () => {
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
  if (routes.length === 0) return NOTHING;
  const inputs = { routes, areas: results.map(({ area, edgeHeights }) => ({ area, edgeHeights })) };
  return yield* recall(memory, 'routes', [key], inputs, () => ({
    quantities: listed('routes', routesOf(routes, inputs.areas, new Book())),
    workings: {}
  }));
}

/** What was delivered against what is needed, which of units hangs on how the cut pieces come out of them. */
function* deliveredOf(
  job: Job,
  results: readonly AreaResult[],
  units: UnitsWanted,
  memory: Memory
): Generator<void, Site> {
  const delivered = job.log.filter(({ kind }) => kind === 'delivered');
  if (delivered.length === 0) return NOTHING;
  const places = [...results.keys()].sort((a, b) => (results[a]!.area.key < results[b]!.area.key ? -1 : 1));
  const inputs = {
    delivered,
    used: materialInputs(
      job,
      places.map(index => results[index]!)
    ),
    units
  };
  const { quantities, workings } = yield* recall(memory, 'deliveries', [job.key], inputs, () => {
    const book = new Book();
    const used = usedThings({ ...inputs.used, units: [], jobUnits: [], trays: [] });
    return { quantities: listed('deliveries', deliveriesOf(delivered, used, units, book)), workings: book.workings };
  });
  return { quantities, workings: withAreasAt(places, workings) };
}
