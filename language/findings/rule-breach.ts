import type { Rule, RuleCase } from '../job/rule.ts';
import type { Thing } from './members/member.ts';
import type { Missed } from './rule-needs.ts';
import type { Reads } from './rule-sums.ts';

/** A rule that is not kept by a thing. */
export interface Breach {
  readonly rule: Rule;
  readonly ruleCase: RuleCase;
  readonly thing: Thing;
  readonly missed: Missed;
}

/** What the thing of a breach is read as, with what its need came to. */
export function readsOf({ thing, missed }: Breach): Reads {
  const { limit, missing } = missed.outcome ?? {};
  const worked =
    limit === undefined || missing === undefined ? {} : { worked: { needed: limit[thing.judged.system], missing } };
  return { value: name => thing.value(name), ...worked };
}
