import type { Job } from '../job/job.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import type { Session } from '../session/session.ts';
import type { Schedule } from './contract.ts';
import { scheduleOf } from './schedule.ts';

/** The schedule of a job by its numbers; remembered until something in either changes. */
export function scheduleOfJob(
  job: Job,
  quantities: JobQuantities,
  session: Session,
  scope: string
): Generator<void, Schedule> {
  const { work, money, prices } = job;
  return session.recall({ scope, stage: 'schedule', thing: job.key }, { job, quantities }, () =>
    scheduleOf({ job, quantities, work, hires: money.hires, prices })
  );
}
