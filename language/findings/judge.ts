import type { Condition, Need, Rule, RuleCase } from '../job/rule.ts';
import type { Key, System } from '../job/job.ts';
import type { RawFinding } from './finding.ts';
import { memberOf } from './members/members.ts';
import type { Judged, Thing, Value } from './members/member.ts';
import { ruleFailed, whyFailed } from './rule-failed.ts';
import { breachesTold, type Breach } from './rule-messages.ts';
import { type Outcome, outcomeOf, type Reads } from './rule-sums.ts';
import { thingsOf } from './rule-things.ts';

/** What one case of a rule came to on one thing, and the values that it was taken from. */
interface Verdict {
  readonly rule: Rule;
  readonly read: readonly Value[];
  /** All its conditions hold. */
  readonly applies: boolean;
  /** The need that is missed by most. */
  readonly missed?: Missed;
  readonly failure?: string;
}

export interface Missed {
  readonly need: Need;
  readonly outcome?: Outcome;
}

/** What the rules came to in an area: held, so that only those are judged again whose values have changed. */
export interface Judgement {
  readonly findings: readonly RawFinding[];
  readonly verdicts: ReadonlyMap<string, Verdict>;
  /** How many verdicts were worked out for it: the others were known. */
  readonly judged: number;
}

/** What rules find in an area. Rules about the site are judged with the first area of a job. */
export function judgeArea(
  judged: Judged,
  rules: readonly Rule[],
  isFirst: boolean,
  before: Judgement | undefined
): Judgement {
  const verdicts = new Map<string, Verdict>();
  const breaches: Breach[] = [];
  const applying = new Map<string, Set<Key>>();
  const failures = new Map<Rule, string>();
  let count = 0;
  for (const rule of rules) {
    rule.cases.forEach((ruleCase, index) => {
      for (const thing of thingsOf(ruleCase.concerns, judged, isFirst)) {
        const id = `${rule.key}\n${index}\n${thing.key}`;
        const read = ruleCase.reads.map(name => valueOf(thing, name));
        const known = before?.verdicts.get(id);
        const isKnown = known?.rule === rule && read.every((value, at) => isSame(value, known.read[at]));
        const verdict = isKnown ? known : verdictOf(rule, ruleCase, thing, read);
        if (!isKnown) count++;
        verdicts.set(id, verdict);
        if (verdict.failure !== undefined) failures.set(rule, verdict.failure);
        if (!verdict.applies) continue;
        applying.set(rule.name, (applying.get(rule.name) ?? new Set()).add(thing.key));
        if (verdict.missed !== undefined) breaches.push({ rule, ruleCase, thing, missed: verdict.missed });
      }
    });
  }
  const heard = mostMissed(breaches).filter(
    ({ rule, thing }) => !rule.yieldsTo.some(other => applying.get(other)?.has(thing.key) === true)
  );
  const failed = [...failures].map(([rule, why]) => ruleFailed(rule, why));
  return { findings: [...breachesTold(heard, rules), ...failed], verdicts, judged: count };
}

/** A rule tells of a thing once: by what is missed by most. */
function mostMissed(breaches: readonly Breach[]): Breach[] {
  const most = new Map<string, Breach>();
  for (const breach of breaches) {
    const name = `${breach.rule.key}\n${breach.thing.key}`;
    const other = most.get(name);
    if (other === undefined || byHowMuch(breach.missed) > byHowMuch(other.missed)) most.set(name, breach);
  }
  return [...most.values()];
}

/** A rule that can't be worked out holds up no other. */
function verdictOf(rule: Rule, ruleCase: RuleCase, thing: Thing, read: readonly Value[]): Verdict {
  try {
    const reads = readsOf(thing);
    const { system } = thing.judged;
    const applies = ruleCase.when.every(condition => holds(condition, reads, system));
    const missed = applies ? missedOf(ruleCase.needs, reads, system) : undefined;
    return { rule, read, applies, ...(missed === undefined ? {} : { missed }) };
  } catch (error) {
    return { rule, read, applies: false, failure: whyFailed(error) };
  }
}

/** Values of a thing, worked out when they are asked for. */
export function readsOf(thing: Thing): Reads {
  return { value: name => valueOf(thing, name) };
}

function valueOf(thing: Thing, name: string): Value {
  return memberOf(thing.is, name)?.read(thing as never);
}

export function holds(condition: Condition, reads: Reads, system: System): boolean {
  return condition.some(all => all.every(test => outcomeOf(test, reads, system)?.met === true));
}

/** Of the needs that are not met, the one that is missed by most. */
export function missedOf(needs: readonly Need[], reads: Reads, system: System): Missed | undefined {
  const missed = needs.flatMap((need): Missed[] => {
    if (need.when !== undefined && !holds(need.when, reads, system)) return [];
    if (need.test === undefined) return [{ need }];
    const outcome = outcomeOf(need.test, reads, system);
    return outcome === undefined || outcome.met ? [] : [{ need, outcome }];
  });
  return missed.reduce<Missed | undefined>(
    (most, next) => (most === undefined || byHowMuch(next) > byHowMuch(most) ? next : most),
    undefined
  );
}

function byHowMuch({ outcome }: Missed): number {
  return outcome?.missing ?? 0;
}

function isSame(one: Value, other: Value): boolean {
  if (one === other) return true;
  if (!Array.isArray(one) || !Array.isArray(other)) return false;
  return one.length === other.length && one.every((word, at) => word === other[at]);
}
