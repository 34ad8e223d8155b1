import { placeOfKey } from '../../language/findings/placed.ts';
import { type JobInput, quantitiesJson } from '../../language/views/json/quantities-json.ts';
import type { Reading } from './reading.ts';
import { VERSION } from './version.ts';
import { shownAs, type WithJob } from './with-job.ts';

/** All that jobs come to, with their prices and variants, as other programs read it. */
export async function jobsJson(reading: Reading, jobs: readonly WithJob[], asOf: string): Promise<object> {
  const files = [...new Set(jobs.flatMap(({ texts }) => texts.map(({ file }) => file)))];
  return quantitiesJson({
    tool: `paving ${VERSION}`,
    asOf,
    files: files.map(file => ({ file, sha256: reading.hashOf(file) })),
    jobs: await Promise.all(
      jobs.map(async (job): Promise<JobInput> => ({
        numbers: job.numbers,
        ...(await pricedIn(reading, job)),
        findings: [...job.findings, ...job.accepted],
        variants: await reading.variantsOf(job),
        placeOf: placer(job)
      }))
    )
  });
}

/** Nothing where nothing names an amount of money. */
export async function pricedIn(reading: Reading, job: WithJob): Promise<Pick<JobInput, 'priced'>> {
  const priced = await reading.pricedOf(job);
  return priced === undefined ? {} : { priced };
}

export function placer(job: WithJob): JobInput['placeOf'] {
  return key => placeOfKey(key, job.places, shownAs(job));
}
