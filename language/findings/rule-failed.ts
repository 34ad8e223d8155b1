import type { Rule } from '../job/rule.ts';
import type { RawFinding } from './finding.ts';

/** A rule that came to nothing is told where it stands, never where the job does. */
export function ruleFailed({ key, name }: Rule, why: string): RawFinding {
  return {
    id: 'rule-failed',
    message: `The rule ${name} ${why}: it was not judged. All other rules were.`,
    target: key
  };
}
