import { applyChanges } from '../../language/editing/apply-changes.ts';
import type { Finding, Fix, TextChange } from '../../language/findings/finding.ts';
import type { Evaluation } from '../../language/paving.ts';

/** Their fixes bring rules into force, or let them judge: what these find then is no fault of the fix. */
const LET_RULES_JUDGE = ['traffic-not-said', 'rules-not-named', 'job-missing', 'winters-not-said'];

/** How a finish lies to the ground and to what is beside it: notes, topsoil, steps. */
const OF_LEVELS = ['finish-off-ground', 'ground-not-measured', 'base-on-topsoil', 'step-where-people-walk'];

/** What mends one finding lets another be judged for the first time, or anew: true, and no fault of the fix. */
interface LedTo {
  readonly fixed: readonly string[];
  readonly tells: readonly string[];
  readonly when?: (before: Evaluation) => boolean;
}

const LED_TO: readonly LedTo[] = [
  // Where there was no base there was no dig: only now does it matter how high anything lies.
  { fixed: ['base-too-thin'], tells: ['ground-not-said', 'finish-not-said'] },
  // Where heights or points are told anew, how they lie to the ground beside is told anew as well.
  {
    fixed: ['ground-not-said', 'base-on-topsoil', 'finish-too-high', 'too-many-tapes', 'never-used'],
    tells: OF_LEVELS
  },
  // Only where a finish lies can be told how it lies to what is there: neighbours, lids, gates.
  {
    fixed: ['finish-not-said'],
    tells: [...OF_LEVELS, 'finish-level', 'lip-where-flush', 'box-lid-changes', 'gate-too-low']
  },
  // What a side meets says whether water may run there, and how far the base and its dig go out.
  { fixed: ['edge-not-said'], tells: [...OF_LEVELS, 'water-runs-to-house', 'low-place-without-drain'] },
  // What a fix brings in has to be bought as well, and may have no price yet.
  { fixed: ['edge-not-said', 'open-edge-without-edging'], tells: ['price-missing'] },
  // A base that runs further out is dug further out: under what was not measured, or beside.
  { fixed: ['base-not-past-edging', 'open-edge-without-edging'], tells: ['ground-not-measured', 'dig-deep'] },
  { fixed: ['base-too-thin', 'base-thinner-than-usual'], tells: ['ground-not-measured'] },
  // An edging that says itself how far the base runs past it stays as it is where a base is made thicker.
  {
    fixed: ['base-too-thin', 'base-thinner-than-usual', 'base-on-topsoil'],
    tells: ['base-not-past-edging'],
    when: hasEdgingWithBasePast
  },
  // Another bond or joint lays the units elsewhere: other pieces are cut, and a bond may not close, or have no courses.
  {
    fixed: [
      'joint-outside-limits',
      'clay-joint-under-wheels',
      'stack-bond-under-wheels',
      'bond-for-people-under-wheels',
      'running-bond-under-turning-wheels',
      'running-bond-under-trucks'
    ],
    tells: [
      'piece-too-small-under-wheels',
      'slivers',
      'slivers-too-narrow-to-cut',
      'bond-does-not-close',
      'start-does-not-fit'
    ]
  }
];

/** What was built and bought is held against the design as the fix has it now. */
const OF_THE_RECORD = ['base-off-design', 'bed-off-design', 'finish-off-design', 'delivery-off'];

/** A unit that is mended has another size: still too many of them are no new fault. */
const COUNTS = 'too-many-units';

/** A brace too many is told of the statement before it: of another one where that becomes a comment. */
const OF_WHAT_STANDS_BEFORE = 'brace-closes-nothing';

/** A dig is as deep whether the ground is said to lie where it was taken to lie or not. */
const WHERE_GROUND_IS_TAKEN = ' (ground taken level with the finish)';

/** A finding, on whatever line it stands and whatever its message proposes: what it measures is part of it. */
function told({ id, target, message }: Finding): string {
  const [first] = message
    .replace(WHERE_GROUND_IS_TAKEN, '')
    .replace(/\bline \d+/g, 'line #')
    .split(/(?<=[.?]) /);
  if (id === OF_WHAT_STANDS_BEFORE) return id;
  return `${id} ${target} ${id === COUNTS ? first!.replace(/about [\d,]+/, 'about #') : first!}`;
}

/** Everything that is wrong with what a fix makes of a text. */
export function badlyFixed(finding: Finding, fix: Fix, before: Evaluation, after: Evaluation): string[] {
  const what = `${finding.id}, ${fix.title}`;
  const still = count(after.findings, finding) >= count(before.findings, finding) ? [`${what}: stays`] : [];
  const others = after.findings.filter(
    other =>
      count(after.findings, other) > count(before.findings, other) &&
      !wasHidden(other, finding, before) &&
      !isUnusedNow(other, finding) &&
      !isMendedAlong(other, before)
  );
  const isMeant = ({ id, family }: Finding): boolean =>
    (LET_RULES_JUDGE.includes(finding.id) && family === 'rule') ||
    (!fix.safe && OF_THE_RECORD.includes(id)) ||
    LED_TO.some(
      ({ fixed: mended, tells, when }) => mended.includes(finding.id) && tells.includes(id) && (when?.(before) ?? true)
    );
  const allowed = others.filter(other => !isMeant(other));
  const isSame = numbersOf(before) === numbersOf(after);
  return [
    ...still,
    ...allowed.map(other => `${what}: adds ${other.id}: ${other.message}`),
    ...(fix.safe && !isSame ? [`${what}: is safe, but changes numbers`] : []),
    ...overlapsIn(fix.edits).map(edit => `${what}: overlaps at ${edit}`)
  ];
}

function hasEdgingWithBasePast({ job }: Evaluation): boolean {
  return job?.areas.some(({ edges }) => edges.some(({ edging }) => edging?.basePast !== undefined)) === true;
}

function count(findings: readonly Finding[], finding: Finding): number {
  return findings.filter(other => told(other) === told(finding)).length;
}

/** What an error had kept from being read or judged. */
function wasHidden(other: Finding, mended: Finding, { findings, numbers }: Evaluation): boolean {
  // What a rule measured was not hidden: it is told again with other figures.
  const isTheSame = other.family === 'rule' && other.id === mended.id && other.target === mended.target;
  if (mended.severity !== 'error' || isTheSame) return false;
  const thing = (key: string): string => key.replace(/\/.*$/, '');
  const faulty = findings.filter(({ severity }) => severity === 'error').map(({ target }) => target);
  const broken = [...faulty, ...(numbers?.quantities.missing ?? [])].map(thing);
  // Boxes and pits are judged with their area.
  const isJudged = other.severity !== 'error' || /^(?:box|pit):/.test(other.target);
  // Two areas are held against each other once both have their shapes.
  const isOfBroken = other.target.split('+').some(part => broken.includes(thing(part)));
  return isOfBroken || (isJudged && numbers?.quantities.complete !== true);
}

/** A thing whose name was overwritten may be used nowhere now: that is told, and true. */
function isUnusedNow({ id }: Finding, mended: Finding): boolean {
  return id === 'never-used' && mended.id !== 'never-used';
}

/** What was set aside is mended along with it: that nothing is left to set aside is told, and true. */
function isMendedAlong({ id, target }: Finding, { accepted }: Evaluation): boolean {
  return id === 'accept-unmatched' && accepted.some(({ id: rule }) => target.startsWith(`accept:${rule} `));
}

export function numbersOf({ numbers }: Evaluation): string {
  return JSON.stringify(numbers?.quantities ?? null);
}

function overlapsIn(edits: readonly TextChange[]): string[] {
  const inOrder = [...edits].sort(({ place: a }, { place: b }) => a.line - b.line || a.column - b.column);
  return inOrder.slice(1).flatMap(({ place }, at) => {
    const before = inOrder[at]!.place;
    const isApart = before.file !== place.file || isAfter(place, before);
    return isApart ? [] : [`${place.line}:${place.column}`];
  });
}

function isAfter(place: TextChange['place'], before: TextChange['place']): boolean {
  return place.line > before.endLine || (place.line === before.endLine && place.column >= before.endColumn);
}

/** The texts that a fix changes, by the file as shown. */
export function fixed({ texts }: Evaluation, { edits }: Fix): Map<string, string> {
  const files = [...new Set(edits.map(({ place }) => place.file))];
  return new Map(
    files.map(file => {
      const { text } = texts.find(other => other.file === file)!;
      const own = edits.filter(({ place }) => place.file === file);
      return [file, applyChanges(text, own)];
    })
  );
}
