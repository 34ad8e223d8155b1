import type { Evaluation, Look } from '../paving.ts';
import type { PricedJob } from '../priced-job.ts';

/** One text of a job, worked out. */
export interface Compared {
  readonly evaluation: Evaluation;
  readonly look: Look;
  readonly priced?: PricedJob;
}
