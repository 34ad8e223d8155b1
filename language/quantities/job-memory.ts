import type { Session, Stage } from '../session/session.ts';

/** The memory, as one job uses it. */
export interface Memory {
  readonly session: Session;
  readonly scope: string;
  /** Where what hangs on the log is held, if apart: of a job as if nothing were delivered and done. */
  readonly logScope?: string;
  /** Cut pieces are put into units; where only findings are wanted, few rules ask for that. */
  readonly nests: boolean;
}

/** A stage's result for some things of the job, by key: remembered, or computed in steps from what it was before. */
export function recall<T>(
  { session, scope, logScope = scope }: Memory,
  stage: Stage,
  things: readonly string[],
  inputs: unknown,
  compute: (before: T | undefined) => Generator<void, T> | T
): Generator<void, T> {
  const slot = { scope: HANGING_ON_THE_LOG.has(stage) ? logScope : scope, stage, thing: things.join('\n') };
  return session.recall(slot, inputs, compute);
}

const HANGING_ON_THE_LOG: ReadonlySet<Stage> = new Set(['site', 'deliveries', 'site-rules', 'order']);
