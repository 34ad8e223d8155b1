import type { IntegerSolver } from './buying/integer-solver.ts';
import type { Job } from './job/job.ts';
import { computeJob } from './quantities/compute-job.ts';
import type { JobNumbers, JobQuantities } from './quantities/contract.ts';
import type { Schedule } from './schedule/contract.ts';
import { scheduleOfJob } from './schedule/schedule-of-job.ts';
import type { Session } from './session/session.ts';
import { type Costs, costsOf } from './pricing/costs.ts';
import { costInputsOf } from './pricing/inputs-of-job.ts';

/** A job with its price, and the numbers of the whole job that it was worked out from. */
export interface PricedJob {
  readonly job: Job;
  readonly numbers: JobNumbers;
  /** Absent where nothing names an amount of money. */
  readonly costs?: Costs;
  /** All of the work, whatever of it is done. */
  readonly schedule: Schedule;
  /** Days of the crew for all of it. */
  readonly days: number;
}

/**
 * Cost and price of the whole job, remembered until something that they hang on changes. What the log tells as delivered
 * and done is paid and worked all the same: where it tells any of it the order and the days are worked out without, else
 * they are those at hand.
 */
export function pricedJob(
  job: Job,
  numbers: JobNumbers,
  session: Session,
  scope: string,
  solver?: IntegerSolver
): Generator<void, PricedJob> {
  const inputs = { job, quantities: numbers.quantities, solves: solver !== undefined };
  const slot = { scope: scopeOfPrice(scope), stage: 'price', thing: job.key } as const;
  return session.recall(slot, inputs, () => pricedAnew(job, numbers, session, scope, solver));
}

function* pricedAnew(
  job: Job,
  numbers: JobNumbers,
  session: Session,
  scope: string,
  solver: IntegerSolver | undefined
): Generator<void, PricedJob> {
  const log = job.log.filter(({ kind }) => kind !== 'delivered' && kind !== 'done');
  const isAsItStands = log.length === job.log.length;
  const whole = isAsItStands ? job : { ...job, log };
  const priceScope = scopeOfPrice(scope);
  const found = isAsItStands ? numbers : yield* computeJob(whole, session, scope, solver, priceScope);
  const { quantities } = found;
  const schedule = yield* scheduleOfJob(whole, quantities, session, isAsItStands ? scope : priceScope);
  yield;
  const assumed = [...(isAsItStands ? [] : [AS_IF_NOTHING]), ...onHandText(quantities)];
  const costs = costsOf({ ...costInputsOf(whole, quantities, schedule), assumed });
  return { job: whole, numbers: found, ...(costs === undefined ? {} : { costs }), schedule, days: schedule.days };
}

const AS_IF_NOTHING =
  'The whole job is priced as if nothing were bought or done yet: what the log tells as delivered or done costs what it costs here.';

function onHandText({ needs = [] }: JobQuantities): string[] {
  const lying = needs.filter(({ in: amounts }) => amounts.some(({ onHand = 0 }) => onHand > 0)).map(({ item }) => item);
  return lying.length === 0 ? [] : [`What lies on hand already costs nothing: ${lying.join(', ')}.`];
}

/** What is worked out for the price alone is remembered apart. */
export function scopeOfPrice(scope: string): string {
  return `price of ${scope}`;
}
