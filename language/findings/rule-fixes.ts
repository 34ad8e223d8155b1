import type { Rule, RuleCase, RuleLimit, RuleSum } from '../job/rule.ts';
import type { RawEdit, RawFix } from './finding.ts';
import { holds, missedOf } from './judge.ts';
import { type Length, sameInBoth } from './limits.ts';
import { memberOf } from './members/members.ts';
import type { Thing } from './members/member.ts';
import { type Breach, readsWith } from './rule-messages.ts';
import { RuleFailure, type Reads, sumOf } from './rule-sums.ts';

/** What another rule asks of a quantity beyond what is needed by the one that is broken. */
export interface MoreAsked {
  readonly by: Rule;
  readonly length: Length;
}

/**
 * What would make the things of a breach keep the rule, and every other rule about the same quantity; `more` where another
 * rule asks more.
 */
export function fixesOf(
  group: readonly Breach[],
  rules: readonly Rule[]
): { readonly fixes: RawFix[]; readonly more?: MoreAsked } {
  const [{ ruleCase, thing }] = group as [Breach];
  let more: MoreAsked | undefined;
  const fixes = ruleCase.fixes.flatMap(({ of, to, safe }) => {
    const member = memberOf(thing.is, of);
    if (member?.write === undefined) return [];
    const write = (value: Length | string): RawFix[] =>
      together(group.map(each => member.write!(each.thing as never, value))).map(fix => ({ ...fix, safe }));
    if (to.is === 'choice') return to.words.flatMap(word => write(word));
    if (member.measure === 'words') {
      const words = to.is === 'quantity' ? thing.value(to.name) : [];
      return Array.isArray(words) ? (words as readonly string[]).flatMap(word => write(word)) : [];
    }
    const length = lengthOf(to, group[0]!);
    if (length === undefined) return [];
    more = moreAsked(length, of, thing, rules);
    return write(more?.length ?? length);
  });
  return { fixes, ...(more === undefined ? {} : { more }) };
}

/** The same change at several sides is one. */
function together(all: readonly (readonly RawFix[])[]): RawFix[] {
  const [first = [], ...others] = all;
  return first.map(({ title, edits }, at) => {
    const more = others.flatMap(fixes => fixes[at]?.edits ?? []);
    const each = new Map([...edits, ...more].map((edit): [string, RawEdit] => [JSON.stringify(edit), edit]));
    return { title, edits: [...each.values()] };
  });
}

/** What a fix writes: the limit of the need in both systems, or a sum. */
function lengthOf(to: RuleSum, { thing, missed }: Breach): Length | undefined {
  const { test } = missed.need;
  const { limit } = missed.outcome ?? {};
  if (to.is === 'worked' && to.name === 'needed' && limit !== undefined && test?.is === 'compared')
    return { ...limit, written: writtenLimits(test.limit) };
  const value = sumOf(to, readsWith(thing, missed));
  return value === undefined ? undefined : sameInBoth(value);
}

function writtenLimits({ imperial, metric }: RuleLimit): NonNullable<Length['written']> {
  const written = (sum: RuleSum): string | undefined =>
    sum.is === 'number' && sum.written !== '' ? sum.written : undefined;
  const [inches, millimetres] = [written(imperial), written(metric)];
  return {
    ...(inches === undefined ? {} : { imperial: inches }),
    ...(millimetres === undefined ? {} : { metric: millimetres })
  };
}

/** The most that other rules about this quantity of the thing ask: a mended base must not be too thin for another rule. */
function moreAsked(length: Length, of: string, thing: Thing, rules: readonly Rule[]): MoreAsked | undefined {
  const { system } = thing.judged;
  let most: MoreAsked | undefined;
  // Each round meets one more rule.
  for (let round = 0; round <= rules.length; round++) {
    const reads: Reads = { value: name => (name === of ? (most?.length ?? length)[system] : thing.value(name)) };
    const heard = rules.filter(rule => !isSilent(rule, rules, thing, reads));
    const asked = heard.flatMap(rule =>
      rule.cases.flatMap((ruleCase): MoreAsked[] => {
        const least = leastAsked(ruleCase, of, thing, reads);
        return least === undefined ? [] : [{ by: rule, length: least }];
      })
    );
    const next = asked.sort((one, other) => other.length[system] - one.length[system])[0];
    if (next === undefined) return most;
    most = next;
  }
  return most;
}

/** Another rule is heard instead. */
function isSilent({ yieldsTo }: Rule, rules: readonly Rule[], thing: Thing, reads: Reads): boolean {
  return rules.some(
    ({ name, cases }) => yieldsTo.includes(name) && cases.some(ruleCase => applies(ruleCase, thing, reads))
  );
}

/** One that can't be worked out applies to nothing. */
function applies({ concerns, when }: RuleCase, thing: Thing, reads: Reads): boolean {
  if (concerns !== thing.is) return false;
  try {
    return when.every(each => holds(each, reads, thing.judged.system));
  } catch (error) {
    if (error instanceof RuleFailure) return false;
    throw error;
  }
}

/** The least that a rule asks of a quantity and that is not reached; of a rule that can't be worked out nothing. */
function leastAsked(ruleCase: RuleCase, of: string, thing: Thing, reads: Reads): Length | undefined {
  const { system } = thing.judged;
  if (!applies(ruleCase, thing, reads)) return undefined;
  const about = ruleCase.needs.filter(
    ({ test }) =>
      test?.is === 'compared' && test.sign === 'at least' && test.left.is === 'quantity' && test.left.name === of
  );
  if (about.length === 0) return undefined;
  try {
    const missed = missedOf(about, reads, system);
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
