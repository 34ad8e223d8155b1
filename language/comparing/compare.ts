import { isAccepted, type AcceptedFinding, type Finding, type Place } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import { decimalText } from '../money/money.ts';
import type { Evaluation, Look } from '../paving.ts';
import type { PricedJob } from '../priced-job.ts';
import { Causes } from './causes.ts';
import type { ChangePlaces, Comparison, FindingChange, MoneyChange, NumberChange, TaskChange } from './contract.ts';
import { type Edit, editsBetween } from './edits.ts';
import { type JobNumber, jobNumbers } from './job-numbers.ts';
import { keyNow, nameOf, type NewNames, SAME_NAMES } from './new-names.ts';
import { renamedBetween } from './renamed.ts';
import type { Side } from './under-way/built.ts';
import { underWay } from './under-way/under-way.ts';
import { writtenStatements, type WrittenStatement } from './written-statements.ts';

/** One text of a job, worked out. */
export interface Compared {
  readonly evaluation: Evaluation;
  readonly look: Look;
  readonly priced?: PricedJob;
}

/** Lengths and the like that agree to so much of themselves are one: sums in another order end in another digit. */
const SAME = 1e-9;

/** What differs between two texts of one job, by meaning: edits first, then only what follows from them. */
export function compareJobs(older: Compared, newer: Compared): Comparison {
  const read = ({ look, evaluation }: Compared, names: NewNames): WrittenStatement[] =>
    writtenStatements(look, evaluation.amounts, names);
  const statements = read(newer, SAME_NAMES);
  const renamed = renamedBetween(read(older, SAME_NAMES), statements);
  const names: NewNames = new Map(renamed.map(({ kind, before, after }) => [`${kind}:${before}`, after]));
  const olderStatements = read(older, names);
  const edits = editsBetween(olderStatements, statements);
  const [before, after] = [
    causesOf(older, olderStatements, edits, ({ old }) => old),
    causesOf(newer, statements, edits, edit => edit.new)
  ];
  const both = (one: (causes: Causes) => ReadonlySet<Edit>): Edit[] => {
    return inOrder(edits, [...one(after), ...one(before)]);
  };
  const jobWide = edits.filter(isJobWide);
  const numbers = numberChanges(older, newer, names, ({ before: old, after: now }) => {
    const own = both(causes => {
      const number = causes === before ? old : now;
      return number === undefined ? new Set() : causes.ofNumber(number.pointer, number.thing);
    });
    if (own.length > 0) return own;
    // No working leads to an edit: any of those that everything may hang on, else any at all.
    return jobWide.length > 0 ? jobWide : edits;
  });
  const broken = [...brokenIn('before', older), ...brokenIn('after', newer)];
  const isSound = broken.every(({ isComplete }) => isComplete);
  const unknown = [...missingIn(older).map(key => keyNow(names, key)), ...missingIn(newer)];
  return {
    edits,
    renamed,
    numbers: isSound ? numbers : numbers.filter(number => isOfSoundAreas(number, unknown)),
    findings: findingChanges(older, newer, names, ({ target }) => {
      const own = both(causes => causes.ofKey(target));
      // What is said about the thing stayed: then its numbers moved.
      return own.length > 0
        ? own
        : inOrder(
            edits,
            numbers.filter(number => isOf(number, target)).flatMap(({ causes }) => causes)
          );
    }).filter(
      ({ kind, finding }) =>
        finding.severity === 'error' || kind === 'set aside' || isSound || isOfSound(finding.target, unknown)
    ),
    money: isSound ? moneyChanges(older, newer) : [],
    tasks: isSound ? taskChanges(older, newer, names) : [],
    ...(isSound ? daysOf(older, newer) : {}),
    ...(isSound && numbers.length > 0 ? underWayOf(older, newer, names) : {}),
    broken
  };
}

function missingIn({ evaluation: { numbers } }: Compared): readonly Key[] {
  return numbers?.quantities.missing ?? [];
}

/** Totals of what has no numbers are of something else, and an area without them is not gone. */
function isOfSoundAreas({ id }: NumberChange, unknown: readonly Key[]): boolean {
  return id.startsWith('areas/') && !unknown.some(area => id.startsWith(`areas/${area}/`));
}

/** Nothing is told as cleared or new that is only not judged: of areas alone it is known whether they were. */
function isOfSound(target: Key, unknown: readonly Key[]): boolean {
  return target
    .split('+')
    .every(one => one.startsWith('area:') && !unknown.some(area => one === area || one.startsWith(`${area}/`)));
}

function brokenIn(side: 'before' | 'after', { evaluation: { findings, numbers } }: Compared): Comparison['broken'] {
  const errors = findings.filter(({ severity }) => severity === 'error');
  const [first] = errors;
  const isComplete = numbers?.quantities.complete === true;
  return isComplete && first === undefined
    ? []
    : [{ side, errors: errors.length, ...(first && { first }), isComplete }];
}

function underWayOf(older: Compared, newer: Compared, names: NewNames): Pick<Comparison, 'underWay'> {
  const side = ({ evaluation: { job, numbers } }: Compared): Side | undefined =>
    job && numbers && { job, quantities: numbers.quantities };
  const [was, is] = [side(older), side(newer)];
  if (was === undefined || is === undefined || newer.priced === undefined) return {};
  const found = underWay({
    older: was,
    newer: is,
    schedule: newer.priced.schedule,
    prices: {
      ...(older.priced?.costs && { before: older.priced.costs }),
      ...(newer.priced.costs && { after: newer.priced.costs })
    },
    keyNow: key => keyNow(names, key),
    placesOf: key => {
      const there = older.evaluation.job!.areas.find(area => keyNow(names, area.key) === key)?.key;
      const before = there === undefined ? undefined : placeWithin(older.evaluation.places, there);
      return placesOf(before, newer.evaluation.places.get(key));
    }
  });
  return found === undefined ? {} : { underWay: found };
}

/** Of what no other statement names, such as the site, heights taken and the words of the job, all things may hang on. */
function isJobWide({ old, new: now }: Edit): boolean {
  let statement = (now ?? old)!;
  while (statement.within !== undefined) statement = statement.within;
  return statement.declares === undefined;
}

function isOf({ before, after }: NumberChange, target: Key): boolean {
  return (after ?? before)?.thing === target;
}

function inOrder(edits: readonly Edit[], found: readonly Edit[]): Edit[] {
  const all = new Set(found);
  return edits.filter(edit => all.has(edit));
}

function causesOf(
  { evaluation: { numbers, places } }: Compared,
  statements: readonly WrittenStatement[],
  edits: readonly Edit[],
  statementOf: (edit: Edit) => WrittenStatement | undefined
): Causes {
  return new Causes({
    statements,
    workings: numbers?.workings ?? {},
    numbers: numbers === undefined ? [] : jobNumbers(numbers.quantities, SAME_NAMES),
    placeOf: key => placeWithin(places, key),
    edits: edits.flatMap(edit => {
      const statement = statementOf(edit);
      return statement === undefined ? [] : [{ edit, statement }];
    })
  });
}

/** The place of a key, or of the nearest thing that holds it. */
function placeWithin(places: Evaluation['places'], key: Key): ReturnType<Evaluation['places']['get']> {
  for (let at = key; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const place = places.get(at);
    if (place !== undefined || !at.includes('/')) return place;
  }
}

// ---- numbers ----

function numberChanges(
  older: Compared,
  newer: Compared,
  names: NewNames,
  causesOfChange: (change: Pick<NumberChange, 'before' | 'after'>) => readonly Edit[]
): NumberChange[] {
  const numbersOf = ({ evaluation: { numbers } }: Compared, as: NewNames): Map<string, JobNumber> =>
    new Map((numbers === undefined ? [] : jobNumbers(numbers.quantities, as)).map(number => [number.id, number]));
  const [before, after] = [numbersOf(older, names), numbersOf(newer, SAME_NAMES)];
  const ids = [...after.keys(), ...[...before.keys()].filter(id => !after.has(id))];
  return ids.flatMap(id => {
    const [old, now] = [before.get(id), after.get(id)];
    if (old !== undefined && now !== undefined && isSame(old, now)) return [];
    const change = { id, ...(old && { before: old }), ...(now && { after: now }) };
    const places = placesOf(placeOfNumber(older, old), placeOfNumber(newer, now));
    return [{ ...change, causes: causesOfChange(change), places }];
  });
}

function placeOfNumber({ evaluation }: Compared, number: JobNumber | undefined): Place | undefined {
  const thing = number?.thing ?? evaluation.job?.key;
  return number === undefined || thing === undefined ? undefined : placeWithin(evaluation.places, thing);
}

function placesOf(before: Place | undefined, after: Place | undefined): ChangePlaces {
  return { ...(before && { before }), ...(after && { after }) };
}

function isSame({ value: one, measure }: JobNumber, { value: other, measure: otherMeasure }: JobNumber): boolean {
  return measure === otherMeasure && isAlike(one, other);
}

function isAlike(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(one), Math.abs(other));
}

// ---- findings ----

function findingChanges(
  older: Compared,
  newer: Compared,
  names: NewNames,
  causesOfFinding: (finding: Finding) => readonly Edit[]
): FindingChange[] {
  const idOf = ({ id, target }: Finding): string => `${id} ${target}`;
  const idNow = ({ id, target }: Finding): string => `${id} ${keyNow(names, target)}`;
  const count = (findings: readonly Finding[], name: (finding: Finding) => string): Map<string, Finding[]> => {
    const found = new Map<string, Finding[]>();
    for (const finding of findings) found.set(name(finding), [...(found.get(name(finding)) ?? []), finding]);
    return found;
  };
  const [was, is] = [older.evaluation, newer.evaluation];
  const open = count(is.findings, idOf);
  const before = count(was.findings, finding => idNow(finding));
  const aside = count(is.accepted, idOf);
  const asideBefore = count(was.accepted, finding => idNow(finding));
  const change = (kind: FindingChange['kind'], finding: Finding): FindingChange => ({
    kind,
    finding,
    ...(isAccepted(finding) ? { acceptance: (finding as AcceptedFinding).accepted } : {}),
    causes: causesOfFinding(finding),
    places: kind === 'cleared' ? { before: finding } : { after: finding }
  });
  const appeared = over(open, before).map(finding =>
    change(asideBefore.has(idOf(finding)) ? 'no longer set aside' : 'appeared', finding)
  );
  const setAside = over(aside, asideBefore).map(finding =>
    change(before.has(idOf(finding)) && !open.has(idOf(finding)) ? 'set aside' : 'appeared', finding)
  );
  const cleared = over(before, open)
    .filter(finding => !aside.has(idNow(finding)))
    .map(finding => change('cleared', finding));
  const clearedAside = over(asideBefore, aside)
    .filter(finding => !open.has(idNow(finding)))
    .map(finding => change('cleared', finding));
  return [...appeared, ...setAside, ...cleared, ...clearedAside];
}

/** What there is more of than before. */
function over(
  now: ReadonlyMap<string, readonly Finding[]>,
  before: ReadonlyMap<string, readonly Finding[]>
): readonly Finding[] {
  return [...now].flatMap(([name, findings]) => findings.slice(before.get(name)?.length ?? 0));
}

// ---- money and days ----

function moneyChanges({ priced: older }: Compared, { priced: newer }: Compared): MoneyChange[] {
  const [before, after] = [older?.costs, newer?.costs];
  const currency = (after ?? before)?.currency;
  if (currency === undefined) return [];
  const rows = [
    ['costs', 'Costs', before?.costs, after?.costs],
    ['price', 'Price without tax', before?.price, after?.price],
    ['tax', 'Tax', before?.tax, after?.tax],
    ['to-pay', 'To pay', before?.total, after?.total]
  ] as const;
  return rows.flatMap(([id, label, old, now]) =>
    old === now
      ? []
      : [
          {
            id,
            label,
            currency,
            ...(old === undefined ? {} : { before: decimalText(old) }),
            ...(now === undefined ? {} : { after: decimalText(now) })
          }
        ]
  );
}

/** Laying is a task of its own for each area and bond: `laying/terrace/running-bond`. */
function taskNow(id: string, names: NewNames): string {
  const [word, area, bond] = id.split('/');
  if (word !== 'laying' || area === undefined || bond === undefined) return id;
  return [word, nameOf(names, { kind: 'area', name: area }), nameOf(names, { kind: 'bond', name: bond })].join('/');
}

function taskChanges({ priced: older }: Compared, { priced: newer }: Compared, names: NewNames): TaskChange[] {
  const before = new Map((older?.schedule.tasks ?? []).map(task => [taskNow(task.id, names), task]));
  const after = new Map((newer?.schedule.tasks ?? []).map(task => [task.id, task]));
  const ids = [...after.keys(), ...[...before.keys()].filter(id => !after.has(id))];
  return ids.flatMap((id): TaskChange[] => {
    const [old, now] = [before.get(id), after.get(id)];
    const [was, is] = [old?.hours, now?.hours];
    const isKept = old !== undefined && now !== undefined;
    if (isKept && (was === is || (was !== undefined && is !== undefined && isAlike(was, is)))) return [];
    const title = (now ?? old)!.title.replace(/:.*$/, '');
    return [{ id, title, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) }];
  });
}

function daysOf({ priced: older }: Compared, { priced: newer }: Compared): Pick<Comparison, 'days'> {
  const [before, after] = [older?.days, newer?.days];
  return before === undefined || after === undefined || before === after ? {} : { days: { before, after } };
}
