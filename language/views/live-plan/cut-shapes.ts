import { loopOnPlan } from '../../drawing/on-plan.ts';
import { around, boundsOf } from '../../geometry/index.ts';
import type { Key } from '../../job/job.ts';
import type { CutUnit, Placement } from '../../laying/laid.ts';
import { sameContent } from '../../session/same-content.ts';
import { roomOfPiece } from '../plan/cut-numbers.ts';
import type { PlanPart, PlanUnit } from '../plan/plan-input.ts';
import { wholeInk } from '../plan/unit-shapes.ts';
import { digest } from './cut-kinds.ts';
import { cornersOf, mm, type MmBounds, mmBounds, mmOfStep, turnOf } from './in-millimetres.ts';
import type { LivePath, LiveRows } from './live-plan.ts';
import { tileOf } from './tiles.ts';
import { tintOfUnit } from './unit-tint.ts';

/** A cut unit with the thing that stands for its kind. */
export interface Sawn {
  readonly cut: CutUnit;
  readonly thing: string;
  readonly unit: PlanUnit;
}

export interface CutsOfPart {
  readonly area: Key;
  readonly part: Pick<PlanPart, 'key' | 'kind'>;
  /** Figures of the largest number. */
  readonly figures: number;
  /** Shapes as they were, by key. */
  readonly known: ReadonlyMap<string, LivePath | LiveRows>;
  /** Keys that are taken. */
  readonly taken: Set<string>;
}

/** Shapes drawn in one go, so that typing never waits: looking for room in one takes a part of a millisecond. */
const IN_ONE_GO = 50;

/**
 * Cuts of one part: those that are alike in rows, as along a straight side, each other by itself. A shape is named by where
 * it lies: what is cut elsewhere makes no difference.
 */
export function* cutShapes(cuts: readonly Sawn[], of: CutsOfPart): Generator<void, (LivePath | LiveRows)[]> {
  const alike = new Map<string, Sawn[]>();
  for (const one of cuts) {
    const form = formOfCut(one);
    const held = alike.get(form);
    if (held === undefined) alike.set(form, [one]);
    else held.push(one);
  }
  const shapes: (LivePath | LiveRows)[] = [];
  for (const [form, sawn] of alike) {
    const before = shapes.length;
    if (sawn.length > 1 && isPlain(sawn[0]!.cut)) shapes.push(...rowsOfCuts(form, sawn, of));
    else for (const one of sawn) shapes.push(...pathsOfCut(one, of));
    if (Math.floor(shapes.length / IN_ONE_GO) > Math.floor(before / IN_ONE_GO)) yield;
  }
  return shapes;
}

/** Kind, turn and outline of what is laid of a unit. */
function formOfCut({ cut: { at, pieces }, thing }: Sawn): string {
  const loops = pieces.flatMap(({ outline, holes }) => [outline, ...holes]);
  return `${thing} ${turnOf(at.direction)} ${loops.map(loop => cornersOf(loop).join()).join(';')}`;
}

/** One outline is all of it. */
function isPlain({ pieces }: CutUnit): boolean {
  return pieces.length === 1 && pieces[0]!.holes.length === 0;
}

function rowsOfCuts(form: string, sawn: readonly Sawn[], of: CutsOfPart): LiveRows[] {
  const [{ cut, thing, unit }] = sawn as readonly [Sawn, ...Sawn[]];
  const { direction } = cut.at;
  const name = `${thing}/${digest(`${of.part.key} ${form}`)}`;
  const tiles = new Map<string, LiveRows['runs'][number][]>();
  for (const { first, step, count } of straightRuns(sawn.map(one => one.cut.at))) {
    const held = tiles.get(tileOf(first)) ?? [];
    tiles.set(tileOf(first), held);
    held.push([mm(first.x), mm(first.y), turnOf(direction), mmOfStep(step.x), mmOfStep(step.y), count]);
  }
  const numbered = roomInFrame(
    cut,
    [...tiles.keys()].map(tile => `${name}/${tile}`),
    of
  );
  return [...tiles].map(([tile, runs]) => ({
    kind: 'rows',
    key: free(`${name}/${tile}`, of.taken),
    ...lookOf(of.part, unit),
    thing,
    form: cornersOf(cut.pieces[0]!.outline),
    runs,
    ...(numbered === undefined ? {} : { numbered })
  }));
}

/** m: frames that lie in one line at one distance to this are one run. */
const IN_LINE = 2e-5;

interface Run {
  readonly first: Placement;
  readonly step: { readonly x: number; readonly y: number };
  readonly count: number;
}

/** Frames of one direction in runs of equal steps, looked for along the units and across them; the fewer runs count. */
function straightRuns(frames: readonly Placement[]): Run[] {
  const { direction } = frames[0]!;
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  const placed = frames.map(at => ({ at, along: at.x * cosine + at.y * sine, across: at.y * cosine - at.x * sine }));
  const sorted = (first: 'along' | 'across', then: 'along' | 'across'): Placement[] =>
    [...placed].sort((a, b) => roughly(a[first]) - roughly(b[first]) || a[then] - b[then]).map(({ at }) => at);
  const [rows, columns] = [runsIn(sorted('across', 'along')), runsIn(sorted('along', 'across'))];
  return rows.length <= columns.length ? rows : columns;
}

/** To the millimetre, off the half, so that rounding parts no line. */
function roughly(metres: number): number {
  return Math.round(metres * 1000 + OFF_THE_HALF);
}

const OFF_THE_HALF = 0.183;

function runsIn(frames: readonly Placement[]): Run[] {
  const runs: Run[] = [];
  for (let index = 0; index < frames.length;) {
    const first = frames[index]!;
    const second = frames[index + 1];
    let count = 1;
    const step = second === undefined ? { x: 0, y: 0 } : { x: second.x - first.x, y: second.y - first.y };
    while (isInLine(frames[index + count], first, step, count)) count++;
    runs.push({ first, step: count === 1 ? { x: 0, y: 0 } : step, count });
    index += count;
  }
  return runs;
}

function isInLine(at: Placement | undefined, first: Placement, step: Run['step'], times: number): boolean {
  if (at === undefined) return false;
  return Math.hypot(at.x - first.x - times * step.x, at.y - first.y - times * step.y) <= IN_LINE;
}

/** Of the numbers of cuts in rows: found once, in a frame at nought. The keys of its shapes tell the form. */
function roomInFrame(
  { at, pieces }: CutUnit,
  keys: readonly string[],
  { figures, known }: CutsOfPart
): LivePath['numbered'] {
  const before = keys.find(key => known.has(key));
  if (before !== undefined) return known.get(before)!.numbered;
  const room = roomOfPiece(pieces[0]!, { x: 0, y: 0, direction: at.direction }, '0'.repeat(figures));
  if (room === undefined) return undefined;
  const [cosine, sine] = [Math.cos(at.direction), Math.sin(at.direction)];
  return {
    x: mm(room.at.x * cosine + room.at.y * sine),
    y: mm(room.at.y * cosine - room.at.x * sine),
    size: mm(room.times),
    turn: turnOf(room.turn - at.direction)
  };
}

/** One shape for each piece. */
function pathsOfCut({ cut: { at, pieces }, thing, unit }: Sawn, of: CutsOfPart): LivePath[] {
  const place = free(`${of.area}/cut/${placeName(at)}`, of.taken);
  return pieces.map((piece, index): LivePath => {
    const key = index === 0 ? place : `${place}/${index + 1}`;
    const loops = [piece.outline, ...piece.holes].map(loop => cornersOf(loopOnPlan(loop, at)));
    const before = of.known.get(key);
    const isSame = before?.kind === 'path' && sameContent(before.loops, loops);
    const room = isSame ? before.numbered : roomOnPlan(piece, at, of.figures);
    return {
      kind: 'path',
      key,
      ...lookOf(of.part, unit),
      thing,
      loops,
      closed: true,
      ...(room === undefined ? {} : { numbered: room })
    };
  });
}

function lookOf(part: CutsOfPart['part'], unit: PlanUnit): Pick<LivePath, 'content' | 'ink' | 'tint'> {
  return { content: 'cuts', ink: wholeInk(part) === 'whole' ? 'cut' : 'border-cut', ...tintOfUnit(unit) };
}

function roomOnPlan(piece: CutUnit['pieces'][number], at: Placement, figures: number): LivePath['numbered'] {
  const room = roomOfPiece(piece, at, '0'.repeat(figures));
  return room && { x: mm(room.at.x), y: mm(room.at.y), size: mm(room.times), turn: turnOf(room.turn) };
}

/** Where a unit lies and how it is turned, to the millimetre and the tenth of a degree; rounded a little off the half. */
function placeName({ x, y, direction }: Placement): string {
  const tenths = Math.round(((direction * 1800) / Math.PI + OFF_THE_HALF) % 3600);
  return [roughly(x), roughly(y), (tenths + 3600) % 3600].map(value => value || 0).join();
}

/** Two cut units never lie on one place; should they, the second is told from the first. */
function free(name: string, taken: Set<string>): string {
  let free = name;
  for (let times = 2; taken.has(free); times++) free = `${name}~${times}`;
  taken.add(free);
  return free;
}

export function boundsOfCut({ at, pieces }: CutUnit): MmBounds {
  return mmBounds(pieces.map(({ outline }) => boundsOf(loopOnPlan(outline, at))).reduce(around));
}
