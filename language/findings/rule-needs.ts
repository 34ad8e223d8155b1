import type { System } from '../job/job.ts';
import type { Condition, Need } from '../job/rule.ts';
import { type Outcome, outcomeOf, type Reads } from './rule-sums.ts';

/** A need that is not met, and what its comparison came to. */
export interface Missed {
  readonly need: Need;
  readonly outcome?: Outcome;
}

export function holds(condition: Condition, reads: Reads, system: System): boolean {
  return condition.some(all => all.every(test => outcomeOf(test, reads, system)?.met === true));
}

/** Whether anything that the needs ask could be told at all; and of those that are not met the one missed by most. */
export function needsOn(
  needs: readonly Need[],
  reads: Reads,
  system: System
): { readonly isCompared: boolean; readonly missed?: Missed } {
  let isCompared = false;
  let missed: Missed | undefined;
  for (const need of needs) {
    if (need.when !== undefined && !holds(need.when, reads, system)) continue;
    const outcome = need.test && outcomeOf(need.test, reads, system);
    if (need.test !== undefined && outcome === undefined) continue;
    isCompared = true;
    if (outcome?.met === true) continue;
    const next = outcome === undefined ? { need } : { need, outcome };
    if (missed === undefined || byHowMuch(next) > byHowMuch(missed)) missed = next;
  }
  return { isCompared, ...(missed === undefined ? {} : { missed }) };
}

export function byHowMuch({ outcome }: Missed): number {
  return outcome?.missing ?? 0;
}
