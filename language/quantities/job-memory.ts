import type { Session, Stage } from '../session/session.ts';

/** The memory, as one job uses it. */
export interface Memory {
  readonly session: Session;
  readonly scope: string;
  /** Cut pieces are put into units; where only findings are wanted, few rules ask for that. */
  readonly nests: boolean;
}

/** A stage's result for some things of the job, by key: remembered, or computed in steps from what it was before. */
export function recall<T>(
  { session, scope }: Memory,
  stage: Stage,
  things: readonly string[],
  inputs: unknown,
  compute: (before: T | undefined) => Generator<void, T> | T
): Generator<void, T> {
  const slot = { scope, stage, thing: things.join('\n') };
  return session.recall(slot, inputs, compute);
}
