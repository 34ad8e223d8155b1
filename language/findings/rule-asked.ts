import type { Need, Rule, RuleCase, RuleLimit, RuleSum } from '../job/rule.ts';
import { type Length, TIE } from './limits.ts';
import type { Thing } from './members/member.ts';
import { holds, needsOn } from './rule-needs.ts';
import { type Reads, RuleFailure } from './rule-sums.ts';

/** What another rule asks of a quantity beyond what is needed by the one that is broken. */
export interface MoreAsked {
  readonly by: Rule;
  readonly length: Length;
}

/** Needs of one rule that ask for at least so much of a quantity. */
interface Asking {
  readonly rule: Rule;
  readonly ruleCase: RuleCase;
  readonly needs: readonly Need[];
}

/** Whether a rule is told of a thing, and no other instead. */
export type IsHeard = (rule: Rule, thing: Thing) => boolean;

/** What all rules that are heard ask of a quantity: a mended base must not be too thin for another rule. */
export class Asked {
  private readonly rules: readonly Rule[];
  private readonly isHeard: IsHeard;
  /** By kind of thing and quantity. */
  private askings: ReadonlyMap<string, readonly Asking[]> | undefined;
  /** What was found to be asked of a thing: many rules may be broken by one value. */
  private readonly found = new Map<string, MoreAsked>();

  constructor(rules: readonly Rule[], isHeard: IsHeard) {
    this.rules = rules;
    this.isHeard = isHeard;
  }

  /** The most that is asked of a quantity of a thing, where that is more than a length. */
  beyond(length: Length, of: string, thing: Thing): MoreAsked | undefined {
    const { system } = thing.judged;
    this.askings ??= byQuantity(this.rules);
    const askings = this.askings.get(`${thing.is} ${of}`) ?? [];
    const name = `${of} of ${thing.key}`;
    const known = this.found.get(name);
    if (known !== undefined && length[system] < known.length[system] - TIE) return known;
    let most: MoreAsked | undefined;
    // Each round meets one more rule.
    for (let round = 0; round <= askings.length; round++) {
      const reads: Reads = { value: each => (each === of ? (most?.length ?? length)[system] : thing.value(each)) };
      const asked = askings.flatMap(({ rule, ruleCase, needs }): MoreAsked[] => {
        const least = this.isHeard(rule, thing) ? leastAsked(ruleCase, needs, thing, reads) : undefined;
        return least === undefined ? [] : [{ by: rule, length: least }];
      });
      const next = asked.sort((one, other) => other.length[system] - one.length[system])[0];
      if (next === undefined) break;
      most = next;
    }
    if (most !== undefined) this.found.set(name, most);
    return most;
  }
}

function byQuantity(rules: readonly Rule[]): ReadonlyMap<string, readonly Asking[]> {
  const askings = new Map<string, Asking[]>();
  for (const rule of rules)
    for (const ruleCase of rule.cases)
      for (const [of, needs] of leastNeeds(ruleCase)) {
        const name = `${ruleCase.concerns} ${of}`;
        askings.set(name, [...(askings.get(name) ?? []), { rule, ruleCase, needs }]);
      }
  return askings;
}

/** The needs of a case that ask for at least so much, by the quantity. */
function leastNeeds({ needs }: RuleCase): ReadonlyMap<string, readonly Need[]> {
  const byName = new Map<string, Need[]>();
  for (const need of needs) {
    const { test } = need;
    if (test?.is !== 'compared' || test.sign !== 'at least' || test.left.is !== 'quantity') continue;
    const { name } = test.left;
    byName.set(name, [...(byName.get(name) ?? []), need]);
  }
  return byName;
}

/** The least that is asked and not reached; of a rule that can't be worked out nothing. */
function leastAsked(ruleCase: RuleCase, needs: readonly Need[], thing: Thing, reads: Reads): Length | undefined {
  const { system } = thing.judged;
  try {
    if (!ruleCase.when.every(each => holds(each, reads, system))) return undefined;
    const { missed } = needsOn(needs, reads, system);
    const test = missed?.need.test;
    const limit = missed?.outcome?.limit;
    return limit === undefined || test?.is !== 'compared'
      ? undefined
      : { ...limit, written: writtenLimits(test.limit) };
  } catch (error) {
    if (error instanceof RuleFailure) return undefined;
    throw error;
  }
}

/** A limit as the rule has it, in the measures in which it is written there. */
export function writtenLimits({ imperial, metric }: RuleLimit): NonNullable<Length['written']> {
  const written = (sum: RuleSum): string | undefined =>
    sum.is === 'number' && sum.written !== '' ? sum.written : undefined;
  const [inches, millimetres] = [written(imperial), written(metric)];
  return {
    ...(inches === undefined ? {} : { imperial: inches }),
    ...(millimetres === undefined ? {} : { metric: millimetres })
  };
}
