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
  /** `2026-06-30`; before any day, '', nothing has passed. */
  readonly today: string;
}

/** Sorts out what is set aside; past its day a finding returns, and what nothing is found for is told itself. */
export function setAside(found: readonly Finding[], sorting: Sorting): Sorted {
  const { accepts } = sorting.job;
  if (accepts.length === 0) return { findings: found, accepted: [] };
  const matches = new Map<Accept, Finding[]>(accepts.map(accept => [accept, []]));
  const acceptOf = new Map<Finding, Accept>();
  for (const finding of found) {
    const accept = accepts.find(each => isOf(finding, each));
    if (accept === undefined) continue;
    matches.get(accept)!.push(finding);
    acceptOf.set(finding, accept);
  }
  const accepted: AcceptedFinding[] = [];
  const findings: Finding[] = [];
  for (const finding of found) {
    const accept = acceptOf.get(finding);
    if (accept === undefined) findings.push(finding);
    else if (accept.until === undefined || accept.until >= sorting.today)
      accepted.push({ ...finding, accepted: acceptanceOf(accept, sorting) });
    else findings.push(returned(finding, accept, matches.get(accept)!.length === 1, sorting));
  }
  const open = findings.filter(finding => !acceptOf.has(finding));
  const unmatched = accepts.flatMap(accept =>
    matches.get(accept)!.length > 0 ? [] : (unmatchedFinding(accept, open, sorting) ?? [])
  );
  return { findings: [...findings, ...unmatched], accepted };
}

/** On the thing, or on something in it. */
function isOf({ family, id, target }: Finding, accept: Accept): boolean {
  return family === 'rule' && id === accept.rule && isWithin(target, accept.target);
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

function unmatchedFinding(accept: Accept, open: readonly Finding[], sorting: Sorting): Finding | undefined {
  const { key, rule, target, thing } = accept;
  const { job, missing, where, file } = sorting;
  const takingOut: RawFix = { title: 'Take it out', edits: [{ over: `${key}/out`, text: '' }] };
  if (!job.rules.some(({ name }) => name === rule)) {
    const message = `The rule ${rule} is not among the rules of this job, so there is nothing to set aside.`;
    return placed({ id: 'accept-unmatched', message, target: key, at: `${key}/rule`, fixes: [takingOut] }, where, file);
  }
  // Rules about anything but an area look into areas.
  if (missing.some(each => !target.startsWith('area:') || isWithin(each, target))) return undefined;
  const others = [...new Set(open.filter(({ id }) => id === rule).map(finding => nameIn(finding.target)))];
  const elsewhere = others.length === 0 ? '' : ` It does on ${others.slice(0, MOST_NAMED).join(', ')}.`;
  const message = `The rule ${rule} finds nothing on ${thing} now, so there is nothing to set aside.${elsewhere}`;
  const moved = others.slice(0, MOST_NAMED).map((name): RawFix => ({
    title: `Write \`${name}\``,
    edits: [{ over: `${key}/thing`, text: name }]
  }));
  const fixes = [...moved, takingOut];
  return placed({ id: 'accept-unmatched', message, target: key, at: `${key}/thing`, fixes }, where, file);
}

/** A longer list is read by nobody. */
const MOST_NAMED = 3;
