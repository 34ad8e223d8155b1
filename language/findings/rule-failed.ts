import type { Rule } from '../job/rule.ts';
import type { RawFinding } from './finding.ts';
import { RuleFailure } from './rule-sums.ts';

/** A rule that came to nothing is told where it stands, never where the job does. */
export function ruleFailed({ key, name }: Rule, why: string): RawFinding {
  return {
    id: 'rule-failed',
    message: `The rule ${name} ${why}: it was not judged. All other rules were.`,
    target: key
  };
}

/** What went wrong, in words that follow the rule's name. */
export function whyFailed(error: unknown): string {
  return error instanceof RuleFailure ? error.message : 'can’t be worked out, and this program can’t say why';
}
