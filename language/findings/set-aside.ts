import type { Job, Key } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import type { Accept } from '../job/rule.ts';
import type { Acceptance, AcceptedFinding, Finding, RawFix } from './finding.ts';
import { placed, placeOfKey, type Where } from './placed.ts';

/** What is found, once what someone answers for is taken out of it. */
export interface Sorted {
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

export interface Sorting {
  readonly job: Job;
  /** Keys of what has no numbers, in which rules may find nothing for that alone. */
  readonly missing: readonly Key[];
  readonly where: Where;
  /** Where the job stands. */
  readonly file: string;
  /** `2027-06-30`; before any day, '', nothing has passed. */
  readonly today: string;
}

/** Sorts out what is set aside; past its day a finding returns, and what nothing is found for is told itself. */
export function setAside(found: readonly Finding[], sorting: Sorting): Sorted {
  const { accepts } = sorting.job;
  if (accepts.length === 0) return { findings: found, accepted: [] };
  const byRule = grouped(accepts, ({ rule }) => rule);
  const acceptOf = new Map<Finding, Accept>();
  for (const finding of found) {
    const accept = byRule.get(finding.id)?.find(each => isOf(finding, each));
    if (accept !== undefined) acceptOf.set(finding, accept);
  }
  const matches = grouped([...acceptOf.keys()], finding => acceptOf.get(finding)!);
  const accepted: AcceptedFinding[] = [];
  const findings: Finding[] = [];
  for (const finding of found) {
    const accept = acceptOf.get(finding);
    if (accept === undefined) findings.push(finding);
    else if (accept.until === undefined || accept.until >= sorting.today)
      accepted.push({ ...finding, accepted: acceptanceOf(accept, sorting) });
    else findings.push(returned(finding, accept, matches.get(accept)!.length === 1, sorting));
  }
  const open = grouped(
    findings.filter(finding => !acceptOf.has(finding)),
    ({ id }) => id
  );
  const rules = new Set(sorting.job.rules.map(({ name }) => name));
  const missed = accepts.flatMap(accept => {
    if (matches.has(accept)) return [];
    if (!rules.has(accept.rule)) return [notOfJob(accept, sorting)];
    return nothingFound(accept, open.get(accept.rule) ?? [], sorting) ?? [];
  });
  return { findings: [...findings, ...missed], accepted };
}

/** On the thing, or on something in it. */
function isOf({ family, target }: Finding, accept: Accept): boolean {
  return family === 'rule' && isWithin(target, accept.target);
}

function isWithin(key: Key, thing: Key): boolean {
  return key === thing || key.startsWith(`${thing}/`);
}

function acceptanceOf(accept: Accept, { where, file }: Sorting): Acceptance {
  const { key, rule, thing, reason, until, agreedWith } = accept;
  return {
    rule,
    thing,
    reason,
    ...(until === undefined ? {} : { until }),
    ...(agreedWith === undefined ? {} : { agreedWith }),
    ...placeOfKey(key, where.places, file)
  };
}

/** What mends the only thing that was set aside takes out the words that set it aside as well. */
function returned(finding: Finding, { key, until }: Accept, isOnly: boolean, { where, file }: Sorting): Finding {
  const passed = ` (set aside until ${until!}, which has passed)`;
  const out = where.places.get(`${key}/out`);
  const fixes = finding.fixes.map(fix =>
    isOnly && out !== undefined ? { ...fix, edits: [...fix.edits, { place: out, text: '' }] } : fix
  );
  return {
    ...finding,
    message: finding.message.replace(/([.!?]?)$/, `${passed}$1`),
    related: [
      ...finding.related,
      { ...placeOfKey(key, where.places, file), message: `Set aside here until ${until!}.` }
    ],
    fixes
  };
}

function notOfJob(accept: Accept, sorting: Sorting): Finding {
  const message = `The rule ${accept.rule} is not among the rules of this job, so there is nothing to set aside.`;
  return unmatched(accept, 'rule', message, [takingOut(accept)], sorting);
}

/** `open`: what the rule finds on other things. */
function nothingFound(accept: Accept, open: readonly Finding[], sorting: Sorting): Finding | undefined {
  const { key, rule, target, thing } = accept;
  // Rules about anything but an area look into areas.
  if (sorting.missing.some(each => !target.startsWith('area:') || isWithin(each, target))) return undefined;
  const others = [...new Set(open.map(finding => nameIn(finding.target)))].slice(0, MOST_NAMED);
  const elsewhere = others.length === 0 ? '' : ` It does on ${others.join(', ')}.`;
  const moved = others.map((name): RawFix => ({
    title: `Write \`${name}\``,
    edits: [{ over: `${key}/thing`, text: name }]
  }));
  const message = `The rule ${rule} finds nothing on ${thing} now, so there is nothing to set aside.${elsewhere}`;
  return unmatched(accept, 'thing', message, [...moved, takingOut(accept)], sorting);
}

function takingOut({ key }: Accept): RawFix {
  return { title: 'Take it out', edits: [{ over: `${key}/out`, text: '' }] };
}

function unmatched(
  { key }: Accept,
  at: 'rule' | 'thing',
  message: string,
  fixes: readonly RawFix[],
  { where, file }: Sorting
): Finding {
  return placed({ id: 'accept-unmatched', message, target: key, at: `${key}/${at}`, fixes }, where, file);
}

function grouped<T, K>(all: readonly T[], by: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const one of all) {
    const group = groups.get(by(one)) ?? [];
    groups.set(by(one), group);
    group.push(one);
  }
  return groups;
}

/** A longer list is read by nobody. */
const MOST_NAMED = 3;
