import type { Job } from '../job/job.ts';
import type { AreaResult } from './area-result.ts';
import type { Workings } from './contract.ts';
import { type Memory, recall } from './job-memory.ts';
import type { SiteArea } from './site-area.ts';
import type { SiteQuantities } from './site-contract.ts';
import { type SiteInputs, siteStage } from './site-stage.ts';

/** What stands in the job besides its areas. */
export interface Site {
  readonly quantities: SiteQuantities;
  readonly workings: Workings;
}

export function* siteOf(job: Job, results: readonly AreaResult[], memory: Memory): Generator<void, Site> {
  const areas = results.map(({ area, layers: { baseLoops, layers, softSpots, dig } }): SiteArea => ({
    area,
    layers: { baseLoops, layers, softSpots, dig }
  }));
  const { points, tapes, datum, setUps, boxes, pipes, gates, log } = job;
  const inputs: SiteInputs = {
    job: { points, tapes, setUps, boxes, pipes, gates, log, ...(datum === undefined ? {} : { datum }) },
    areas
  };
  return yield* recall(memory, 'site', [job.key], inputs, () => siteStage(inputs));
}
