import type { Job } from '../job/job.ts';
import { boxesOf } from './boxes.ts';
import type { Workings } from './contract.ts';
import { gatesOf } from './gates-stage.ts';
import { datumOf, measuredHeightsOf, tapesOf } from './measured-heights.ts';
import { Book } from './page.ts';
import { pipesOf } from './pipes.ts';
import { gapsOf, readingsOf, slopesOf } from './readings.ts';
import type { SiteArea } from './site-area.ts';
import type { SiteQuantities } from './site-contract.ts';

/** What stands in the job besides its areas, and the areas it is held against. */
export interface SiteInputs {
  readonly job: Pick<Job, 'points' | 'tapes' | 'datum' | 'setUps' | 'boxes' | 'pipes' | 'gates' | 'log'>;
  readonly areas: readonly SiteArea[];
}

export interface SiteNumbers {
  readonly quantities: Omit<SiteQuantities, 'water' | 'drains' | 'routes' | 'deliveries'>;
  readonly workings: Workings;
}

/** Its numbers; of lists that hold nothing there is no key. */
export function siteStage({ job, areas }: SiteInputs): SiteNumbers {
  const book = new Book();
  const datum = datumOf(job);
  return {
    quantities: {
      ...(datum === undefined ? {} : { datum }),
      ...listed('tapes', tapesOf(job.tapes, book)),
      ...listed('heights', measuredHeightsOf(areas[0]?.area.site, job.setUps, book)),
      ...listed('boxes', boxesOf(job.boxes, areas, job.points, book)),
      ...listed('gates', gatesOf(job.gates, areas, book)),
      ...listed('pipes', pipesOf(job.pipes, areas, job.points, book)),
      ...listed('readings', readingsOf(job.log, areas, book)),
      ...listed('gaps', gapsOf(job.log, book)),
      ...listed('slopes', slopesOf(job.log, areas, book))
    },
    workings: book.workings
  };
}

/** A list under its key, where it holds anything. */
export function listed<K extends string, T>(key: K, list: readonly T[]): Partial<Record<K, readonly T[]>> {
  return (list.length === 0 ? {} : { [key]: list }) as Partial<Record<K, readonly T[]>>;
}
