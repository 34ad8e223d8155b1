import type { Rule, RuleCase } from '../job/rule.ts';
import type { Key, System } from '../job/job.ts';
import type { RawFinding } from './finding.ts';
import type { SiteToJudge } from '../quantities/judged-site.ts';
import type { Judged, Thing, Value } from './members/member.ts';
import { ruleFailed, whyFailed } from './rule-failed.ts';
import { Asked, type IsHeard } from './rule-asked.ts';
import type { Breach } from './rule-breach.ts';
import { breachesTold } from './rule-messages.ts';
import { byHowMuch, holds, type Missed, needsOn } from './rule-needs.ts';
import { Things, thingsOfArea, thingsOfJob } from './rule-things.ts';

/** What one case of a rule came to on one thing, and the values that it was taken from. */
interface Verdict {
  readonly thing: Key;
  readonly read: readonly Value[];
  /** All its conditions hold, and something was compared. */
  readonly applies: boolean;
  /** The need that is missed by most. */
  readonly missed?: Missed;
  readonly failure?: string;
}

/** What the rules came to in an area, or in all that a job holds besides: held, so that only those are judged again whose values have changed. */
export interface Judgement {
  readonly findings: readonly RawFinding[];
  /** By how much a need is missed hangs on the measures of the job. */
  readonly system: System;
  /** By rule: case by case, thing by thing. */
  readonly verdicts: ReadonlyMap<Rule, readonly Verdict[]>;
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
  return judge(new Things(concern => thingsOfArea(concern, judged, isFirst)), judged.system, rules, before);
}

/** What rules find in what a job holds besides its areas. */
export function judgeSite(site: SiteToJudge, rules: readonly Rule[], before: Judgement | undefined): Judgement {
  return judge(new Things(concern => thingsOfJob(concern, site)), site.system, rules, before);
}

function judge(things: Things, system: System, rules: readonly Rule[], before: Judgement | undefined): Judgement {
  const yieldedTo = new Set(rules.flatMap(rule => rule.yieldsTo));
  const verdicts = new Map<Rule, readonly Verdict[]>();
  const breaches: Breach[] = [];
  const applying = new Map<string, Set<Key>>();
  const failures = new Map<Rule, string>();
  let count = 0;
  for (const rule of rules) {
    const known = before?.system === system ? before.verdicts.get(rule) : undefined;
    const own: Verdict[] = [];
    for (const ruleCase of rule.cases) {
      for (const thing of things.of(ruleCase.concerns)) {
        const verdict = verdictOf(ruleCase, thing, known?.[own.length]);
        if (verdict !== known?.[own.length]) count++;
        own.push(verdict);
        if (verdict.failure !== undefined) failures.set(rule, verdict.failure);
        if (!verdict.applies) continue;
        if (yieldedTo.has(rule.name)) applying.set(rule.name, (applying.get(rule.name) ?? new Set()).add(thing.key));
        if (verdict.missed !== undefined) breaches.push({ rule, ruleCase, thing, missed: verdict.missed });
      }
    }
    verdicts.set(rule, own);
  }
  const isHeard: IsHeard = ({ yieldsTo }, { key }) => !yieldsTo.some(other => applying.get(other)?.has(key) === true);
  const heard = mostMissed(breaches).filter(({ rule, thing }) => isHeard(rule, thing));
  const failed = [...failures].map(([rule, why]) => ruleFailed(rule, why));
  return { findings: [...breachesTold(heard, new Asked(rules, isHeard)), ...failed], system, verdicts, judged: count };
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

/** The verdict that is known, where nothing has changed that it was taken from. A rule that can't be worked out holds up no other. */
function verdictOf(ruleCase: RuleCase, thing: Thing, known: Verdict | undefined): Verdict {
  const read = ruleCase.reads.map(name => thing.value(name));
  if (known?.thing === thing.key && read.every((value, at) => isSame(value, known.read[at]))) return known;
  try {
    const { system } = thing.judged;
    if (!ruleCase.when.every(condition => holds(condition, thing, system)))
      return { thing: thing.key, read, applies: false };
    const { isCompared, missed } = needsOn(ruleCase.needs, thing, system);
    return { thing: thing.key, read, applies: isCompared, ...(missed === undefined ? {} : { missed }) };
  } catch (error) {
    return { thing: thing.key, read, applies: false, failure: whyFailed(error) };
  }
}

function isSame(one: Value, other: Value): boolean {
  if (one === other) return true;
  if (!Array.isArray(one) || !Array.isArray(other)) return false;
  return one.length === other.length && one.every((word, at) => word === other[at]);
}
