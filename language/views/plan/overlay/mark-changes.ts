import { boundsOf } from '../../../geometry/bounds.ts';
import { distance, type Loop, middleOf, type Point, type Side } from '../../../geometry/index.ts';
import { isDrawn } from '../area-shapes.ts';
import type { PlanInput, PlanKeptOut } from '../plan-input.ts';
import type { PlanThing, ThingKind } from '../plan-site.ts';
import { isInView, sidesInView } from '../view.ts';
import { type AreaChange, haveSameOutline, liesOn } from './area-changes.ts';
import { type Pair, paired } from './pairs.ts';
import { SAME_PLACE } from './point-changes.ts';
import { fateOfLone, viewOfPlan } from './seen.ts';

/** A box, pit, inset, drain, gate, pipe and the like, free of how a plan draws it. */
export interface Mark {
  readonly key: string;
  readonly kind: string;
  readonly name: string;
  readonly loops: readonly Loop[];
  readonly lines: readonly (readonly Side[])[];
  readonly dots: readonly Point[];
  /** `box shut-off` */
  readonly words: string;
  /** All that the plan tells of it. */
  readonly told: string;
}

export interface MarkChange extends Pair<Mark> {
  readonly key: string;
  readonly words: string;
  readonly calledBefore?: string;
  readonly fate: 'comes' | 'goes' | 'stays' | 'moves' | 'changes' | 'unknown';
  /** It lies as it lay, whatever else is told of it. */
  readonly isWhereItWas: boolean;
  /** Where it moved as a whole, m. */
  readonly by?: Point;
}

/** Lines that only say where something is looked at, and what follows from others: told where they change, not else. */
const ONLY_IF_CHANGED: ReadonlySet<string> = new Set<ThingKind>(['no dig', 'break line', 'route', 'section']);

export function markChanges(
  before: PlanInput | undefined,
  after: PlanInput | undefined,
  areas: readonly AreaChange[]
): MarkChange[] {
  const pairs = paired(marksAs(areas, marksOf(before)), marksOf(after), [
    (old, now) => old.key === now.key && old.kind === now.kind && isAtSamePlace(old, now),
    (old, now) => old.kind === now.kind && old.name === now.name && isAtSamePlace(old, now),
    (old, now) => old.kind === now.kind && old.key === now.key,
    (old, now) => old.kind === now.kind && isAtSamePlace(old, now)
  ]);
  return pairs
    .flatMap(pair => markChange(pair, before, after))
    .filter(({ fate, before: old, after: now }) => isTold(fate) || !ONLY_IF_CHANGED.has((now ?? old)!.kind));
}

/** What is told of marks with areas as they are called now. */
function marksAs(areas: readonly AreaChange[], marks: readonly Mark[]): Mark[] {
  const names = new Map(areas.flatMap(({ calledBefore, name }) => (calledBefore ? [[calledBefore, name]] : [])));
  if (names.size === 0) return [...marks];
  return marks.map(mark => ({ ...mark, told: mark.told.replace(/[^\s,:]+/g, word => names.get(word) ?? word) }));
}

function isTold(fate: MarkChange['fate']): boolean {
  return fate !== 'stays' && fate !== 'unknown';
}

function marksOf(plan: PlanInput | undefined): Mark[] {
  if (plan === undefined) return [];
  const things = (plan.site?.things ?? []).filter(({ kind }) => kind !== 'set-out point');
  const keptOut = plan.areas.flatMap(area => area.keptOut.filter(isDrawn));
  return [...keptOut.map(keptOutMark), ...things.map(thingMark)];
}

function keptOutMark({ key, kind, name, outline, lid }: PlanKeptOut): Mark {
  const words = `${kind} ${name}`;
  const told = lid === undefined ? words : `${words}, ${lid}`;
  return { key, kind, name, loops: [outline], lines: [], dots: [], words, told };
}

/** A box that is buried is still that box. */
function thingMark({ key, kind, name, parts, dots, told }: PlanThing): Mark {
  return {
    key: key.replace(/\/buried$/, ''),
    kind: kind === 'buried box' ? 'box' : kind,
    name,
    loops: parts.flatMap(part => ('loop' in part ? [part.loop] : [])),
    lines: parts.flatMap(part => ('loop' in part ? [] : [part.sides])),
    dots,
    words: wordsOf(kind, name),
    told
  };
}

function wordsOf(kind: ThingKind, name: string): string {
  switch (kind) {
    case 'soft spot':
    case 'break line':
      return kind;
    case 'buried box':
      return `box ${name}`;
    case 'outlet':
      return `outlet of ${name}`;
    case 'no dig':
      return `no dig round ${name}`;
    default:
      return `${kind} ${name}`;
  }
}

function markChange(pair: Pair<Mark>, before: PlanInput | undefined, after: PlanInput | undefined): MarkChange[] {
  const { before: old, after: now } = pair;
  const { key, words } = (now ?? old)!;
  if (old === undefined || now === undefined) {
    const isOld = now === undefined;
    const fate = fateOfLone(placesOf((now ?? old)!), { isOld, other: isOld ? after : before });
    return fate === undefined ? [] : [{ ...pair, key, words, fate, isWhereItWas: false }];
  }
  const calledBefore = old.name === now.name ? {} : { calledBefore: old.words };
  const by = movedBy(old, now);
  const isHere = by === undefined ? isSameInBoth(old, now, before!, after!) : Math.hypot(by.x, by.y) <= SAME_PLACE;
  const isSame = isHere && old.told === now.told;
  const fate = isSame ? 'stays' : by !== undefined && !isHere ? 'moves' : 'changes';
  return [
    { ...pair, key, words, ...calledBefore, fate, isWhereItWas: isHere, ...(fate === 'moves' && by ? { by } : {}) }
  ];
}

export function placesOf({ loops, lines, dots }: Mark): Point[] {
  return [...[...loops, ...lines].flatMap(sides => sides.flatMap(({ from, to }) => [from, to])), ...dots];
}

/** Where all of it keeps its shape. */
function movedBy(old: Mark, now: Mark): Point | undefined {
  const [places, others] = [placesOf(old), placesOf(now)];
  const [from, to] = [places[0], others[0]];
  if (from === undefined || to === undefined || places.length !== others.length) return undefined;
  const by = { x: to.x - from.x, y: to.y - from.y };
  const keeps = places.every(({ x, y }, index) => distance({ x: x + by.x, y: y + by.y }, others[index]!) <= SAME_PLACE);
  return keeps ? by : undefined;
}

function isAtSamePlace(old: Mark, now: Mark): boolean {
  const by = movedBy(old, now);
  if (by !== undefined) return Math.hypot(by.x, by.y) <= SAME_PLACE;
  return old.loops.length === 1 && now.loops.length === 1 && haveSameOutline(old.loops[0]!, now.loops[0]!);
}

/** A line that a plan cuts at its rim ends elsewhere where the areas reach elsewhere: what both plans show counts. */
function isSameInBoth(old: Mark, now: Mark, before: PlanInput, after: PlanInput): boolean {
  const views = [before, after].flatMap(plan => viewOfPlan(plan) ?? []);
  const seen = (sides: readonly Side[]): Side[] =>
    views.reduce<readonly Side[]>((left, view) => sidesInView(left, view), sides) as Side[];
  const [was, is] = [old, now].map(({ lines }) => seen(lines.flat()));
  const dots = (mark: Mark): string =>
    mark.dots
      .filter(dot => views.every(view => isInView(dot, view)))
      .map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`)
      .join();
  return liesOn(was!, is!) && liesOn(is!, was!) && areSameLoops(old.loops, now.loops) && dots(old) === dots(now);
}

function areSameLoops(old: readonly Loop[], now: readonly Loop[]): boolean {
  return old.length === now.length && old.every((loop, index) => haveSameOutline(loop, now[index]!));
}

/** The middle of what is drawn of it. */
export function middleOfMark({ loops, lines, dots }: Mark): Point {
  if (loops[0] !== undefined && loops[0].length > 0) return middleOf(loops[0]);
  const sides = lines.flat();
  if (sides.length === 0) return dots[0] ?? { x: 0, y: 0 };
  const { left, right, bottom, top } = boundsOf(sides);
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
}
