import type { Key } from '../job/job.ts';
import { Causes } from './causes.ts';
import type { Compared } from './compared.ts';
import type { Comparison, NumberChange } from './contract.ts';
import { type Edit, editsBetween } from './edits.ts';
import { findingChanges } from './finding-changes.ts';
import { jobNumbers } from './job-numbers.ts';
import { keyNow, type NewNames, SAME_NAMES } from './new-names.ts';
import { numberChanges } from './number-changes.ts';
import { placesOf, placeWithin } from './places.ts';
import { daysOf, moneyChanges, taskChanges } from './priced-changes.ts';
import { renamedBetween } from './renamed.ts';
import type { Side } from './under-way/built.ts';
import { underWay } from './under-way/under-way.ts';
import { writtenStatements, type WrittenStatement } from './written-statements.ts';

export type { Compared } from './compared.ts';

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
