import type { RuleSum } from '../job/rule.ts';
import type { RawEdit, RawFix } from './finding.ts';
import { type Length, sameInBoth } from './limits.ts';
import { memberOf } from './members/members.ts';
import { type Asked, type MoreAsked, writtenLimits } from './rule-asked.ts';
import { type Breach, readsOf } from './rule-breach.ts';
import { sumOf } from './rule-sums.ts';

/**
 * What would make the things of a breach keep the rule, and every other rule about the same quantity; `more` where another
 * rule asks more.
 */
export function fixesOf(
  group: readonly Breach[],
  asked: Asked
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
    more = asked.beyond(length, of, thing);
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
function lengthOf(to: RuleSum, breach: Breach): Length | undefined {
  const { missed } = breach;
  const { test } = missed.need;
  const { limit } = missed.outcome ?? {};
  if (to.is === 'worked' && to.name === 'needed' && limit !== undefined && test?.is === 'compared')
    return { ...limit, written: writtenLimits(test.limit) };
  const value = sumOf(to, readsOf(breach));
  return value === undefined ? undefined : sameInBoth(value);
}
