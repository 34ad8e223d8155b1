import type { Rule, SaysPart } from '../job/rule.ts';
import type { Key, System } from '../job/job.ts';
import { type Print, printAs, printFine } from '../measures/print.ts';
import { listed } from './listed.ts';
import type { FindingValue, RawFinding } from './finding.ts';
import { memberOf } from './members/members.ts';
import type { AreaThing, Thing } from './members/member.ts';
import { printLimit } from './limits.ts';
import type { Asked, MoreAsked } from './rule-asked.ts';
import { type Breach, readsOf } from './rule-breach.ts';
import { fixesOf } from './rule-fixes.ts';
import type { Missed } from './rule-needs.ts';
import { type Reads, sumOf } from './rule-sums.ts';
import { ruleFailed, whyFailed } from './rule-failed.ts';
import { sidesInWords } from './sides.ts';

/** Breaches as findings; sides of which a rule says the same are told together. */
export function breachesTold(breaches: readonly Breach[], asked: Asked): RawFinding[] {
  const groups = new Map<string, Breach[]>();
  for (const breach of breaches) {
    const { rule, ruleCase, thing } = breach;
    const likeness = [rule.key, rule.cases.indexOf(ruleCase), thing.is === 'side' ? saidOfSide(breach) : thing.key];
    const name = likeness.join('\n');
    groups.set(name, [...(groups.get(name) ?? []), breach]);
  }
  return [...groups.values()].map(group => {
    try {
      return told(group, asked);
    } catch (error) {
      return ruleFailed(group[0]!.rule, whyFailed(error));
    }
  });
}

/** What tells a side from others of which the same is said; all of one rule that can't be told are alike. */
function saidOfSide(breach: Breach): string {
  try {
    return said([breach], '');
  } catch {
    return '';
  }
}

function told(group: readonly Breach[], asked: Asked): RawFinding {
  const [breach] = group as [Breach];
  const { rule, ruleCase } = breach;
  const sides = sidesInWords(group.flatMap(each => (each.thing.is === 'side' ? [each.thing.edge] : [])));
  const { fixes, more } = fixesOf(group, asked);
  return {
    id: rule.name,
    message: withMore(said(group, sides), rule, more, breach.thing.judged.system),
    rule: rule.key,
    ...placeOf(breach),
    values: valuesOf(breach),
    fixes,
    severity: ruleCase.severity,
    source: ruleCase.source
  };
}

/** A fix that writes more than its rule needs says which rule asks for it. */
function withMore(message: string, rule: Rule, more: MoreAsked | undefined, system: System): string {
  if (more === undefined || more.by.name === rule.name) return message;
  return `${message.replace(/\.$/, '')}; ${more.by.name} asks ${grouped(printLimit(more.length, system))}.`;
}

/** Where a finding stands: at the value that misses a need, else at the thing. */
function placeOf({ ruleCase, thing, missed }: Breach): { target: Key; at?: Key } {
  const at = subjectKey(missed, thing);
  if (!isInArea(thing)) return { target: thing.key, at: at ?? thing.at ?? thing.key };
  const { area } = thing.judged;
  if (thing.is === 'unit' || thing.is === 'material') {
    if (!ruleCase.readsArea) return { target: thing.key, ...(at === undefined ? {} : { at }) };
    return { target: area.key, at: at ?? (thing.is === 'unit' ? area.paving!.key : thing.key) };
  }
  const target = thing.is === 'side' ? area.key : thing.key;
  // A layer may be the same as another area's: what is told of it in its area stands there.
  return { target, at: thing.is === 'layer' && ruleCase.readsArea ? thing.key : (at ?? thing.key) };
}

function isInArea(thing: Thing): thing is Thing & AreaThing {
  return 'area' in thing.judged;
}

function subjectKey({ need: { test } }: Missed, thing: Thing): Key | undefined {
  if (test === undefined) return undefined;
  const name = test.is !== 'compared' ? test.of : test.left.is === 'quantity' ? test.left.name : undefined;
  return name === undefined ? undefined : memberOf(thing.is, name)?.at?.(thing as never);
}

function said(group: readonly Breach[], sides: string): string {
  const [breach] = group as [Breach];
  const { thing, missed } = breach;
  const reads = readsOf(breach);
  const message = missed.need.says.map(part => printed(part, reads, thing, missed, sides)).join('');
  return message.charAt(0).toUpperCase() + message.slice(1);
}

function printed(part: SaysPart, reads: Reads, thing: Thing, missed: Missed, sides: string): string {
  if ('text' in part) return part.text;
  if ('words' in part) {
    if (part.words === 'side' && thing.is === 'side') return sides;
    const value = reads.value(part.words);
    return Array.isArray(value) ? listed(value as readonly string[]) : '';
  }
  const { system } = thing.judged;
  if (part.value.is === 'worked' && part.value.name === 'needed') return neededInWords(missed, part.print, system);
  const value = sumOf(part.value, reads);
  return value === undefined ? 'not said' : printNumber(value, part.print, system);
}

/** A limit that is a plain number is told as it was published. */
function neededInWords({ need: { test }, outcome }: Missed, print: Print, system: System): string {
  const limit = test?.is === 'compared' ? test.limit[system] : undefined;
  if (limit?.is === 'number' && limit.written !== '') return grouped(limit.written);
  return printNumber(outcome?.limit?.[system] ?? Number.NaN, print, system);
}

/** Thousands apart from 10,000 on. */
function grouped(limit: string): string {
  return limit.replace(/^\d{5,}/, digits => Number(digits).toLocaleString('en'));
}

function printNumber(value: number, print: Print, system: System): string {
  switch (print) {
    case 'fine':
      return printFine(value, system);
    case 'number':
      return String(Number(value.toFixed(6)));
    default:
      return printAs(print, value, system);
  }
}

/** What the rule looked at, by its names. */
function valuesOf({ ruleCase, thing, missed }: Breach): FindingValue[] {
  const values = ruleCase.reads.flatMap((name): FindingValue[] => {
    const member = memberOf(thing.is, name)!;
    const value = thing.value(name);
    if (value === undefined) return [];
    if (typeof value === 'number') return [{ name, value, measure: member.measure }];
    return value.length === 0 ? [] : [{ name, value: value.join(', '), measure: '' }];
  });
  const { test } = missed.need;
  const limit = missed.outcome?.limit?.[thing.judged.system];
  if (test?.is !== 'compared' || limit === undefined) return values;
  const measure = test.left.is === 'quantity' ? memberOf(thing.is, test.left.name)!.measure : '';
  return [...values, { name: 'needed', value: limit, measure }];
}
