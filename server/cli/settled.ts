import { drain, type Evaluation, type Paving } from '../../language/paving.ts';
import type { PricedJob } from '../../language/priced-job.ts';
import type { JobNumbers } from '../../language/quantities/contract.ts';
import { loadIntegerSolver } from './integer-solver.ts';

/** What a loaded file comes to, with its order settled; undefined where it could not be read. */
export function evaluatedInFull(paving: Paving, file: string): Promise<Evaluation | undefined> {
  return settled(
    paving,
    () => paving.evaluate(file),
    evaluation => [evaluation?.numbers]
  );
}

/** Cost, price and days of the whole job, with its order settled; undefined of a library. */
export function pricedInFull(paving: Paving, evaluation: Evaluation): Promise<PricedJob | undefined> {
  return settled(
    paving,
    () => pricedAsItStands(paving, evaluation),
    priced => [priced?.numbers]
  );
}

/** The price of the job; where the solver was lent since it was worked out, of its order anew. */
function* pricedAsItStands(paving: Paving, evaluation: Evaluation): Generator<void, PricedJob | undefined> {
  const priced = yield* paving.priced(evaluation);
  if (isSettled(priced?.numbers)) return priced;
  const anew = yield* paving.evaluate(evaluation.file);
  return anew && (yield* paving.priced(anew));
}

/**
 * What is worked out, with every order in it settled as far as can be: the solver is fetched where the search alone leaves
 * it open whether something is cheaper. Each order that is shown goes through this, so that it hangs on nothing else that
 * is asked for: one that the search proves is the same with the solver.
 */
export async function settled<T>(
  paving: Paving,
  work: () => Generator<void, T>,
  ordersOf: (found: T) => readonly (JobNumbers | undefined)[]
): Promise<T> {
  const found = drain(work());
  if (ordersOf(found).every(isSettled)) return found;
  paving.lendSolver(await loadIntegerSolver());
  return drain(work());
}

function isSettled(numbers: JobNumbers | undefined): boolean {
  return numbers?.quantities.orderCost?.proven !== false;
}
