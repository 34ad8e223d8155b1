import { formOf, loopOnPlan } from '../../drawing/on-plan.ts';
import { tintOf } from '../../drawing/tints.ts';
import { around, boundsOf } from '../../geometry/index.ts';
import type { Area, Key } from '../../job/job.ts';
import { nameIn } from '../../job/key-names.ts';
import type { CutUnit, Placement, WholeRun } from '../../laying/laid.ts';
import type { AreaLaid } from '../../quantities/area-result.ts';
import { sameContent } from '../../session/same-content.ts';
import { roomOfPiece } from '../plan/cut-numbers.ts';
import type { PlanPart, PlanUnit } from '../plan/plan-input.ts';
import { wholeInk } from '../plan/unit-shapes.ts';
import { cutKindKeys } from './cut-kinds.ts';
import { aroundAll, cornersOf, mm, type MmBounds, mmBounds, mmOfStep, turnOf } from './in-millimetres.ts';
import type { LivePath, LiveRows } from './live-plan.ts';

/** Units of an area as they are drawn, and how far each kind reaches. */
export interface LaidShapes {
  readonly wholes: readonly LiveRows[];
  readonly cuts: readonly LivePath[];
  /** By unit's key, what lies of it. */
  readonly reach: ReadonlyMap<Key, MmBounds>;
  /** Of each group of the cut list, in its order. */
  readonly kinds: readonly { readonly key: string; readonly bounds: MmBounds }[];
  /** Figures that the rooms for numbers were looked for with. */
  readonly figures: number;
}

export interface LaidInputs {
  readonly area: Pick<Area, 'key'>;
  readonly parts: readonly Pick<PlanPart, 'key' | 'kind'>[];
  readonly laid: AreaLaid['laid'];
  readonly cuts: AreaLaid['cuts'];
  readonly units: readonly PlanUnit[];
}

/** Cuts drawn in one go, so that typing never waits: looking for room in one takes a part of a millisecond. */
const IN_ONE_GO = 50;

/** Rows by tiles of the ground, each cut by itself; room for a number is looked for anew only where a piece has changed. */
export function* laidShapes(inputs: LaidInputs, before: LaidShapes | undefined): Generator<void, LaidShapes> {
  const { area, parts, laid, cuts: list, units } = inputs;
  const { groups, places } = list.list;
  const keys = cutKindKeys(area.key, groups);
  const reach = new Map<Key, MmBounds>();
  const figures = Math.max(2, String(groups.length).length);
  const known = new Map(before?.figures === figures ? before.cuts.map(cut => [cut.key, cut]) : []);
  const wholes: LiveRows[] = [];
  const cuts: LivePath[] = [];
  const bounds = groups.map((): MmBounds[] => []);
  const taken = new Set<string>();
  let place = 0;
  for (const [index, part] of parts.entries()) {
    const { wholes: runs, cuts: sawn } = laid.parts[index]!.laid;
    for (const unit of units) wholes.push(...rowsOf(area.key, part, unit, runs, reach));
    yield;
    for (const cut of sawn) {
      const group = places[place++]!.group - 1;
      const unit = units.find(({ key }) => key === cut.unit)!;
      for (const path of cutPaths(area.key, part, unit, cut, { thing: keys[group]!, figures, known, taken })) {
        cuts.push(path);
        bounds[group]!.push(boundsOfPath(path));
      }
      if (place % IN_ONE_GO === 0) yield;
    }
  }
  const kinds = keys.map((key, index) => ({ key, bounds: aroundAll(bounds[index]!) }));
  groups.forEach(({ unit }, index) => reachTo(reach, unit, kinds[index]!.bounds));
  return { wholes, cuts, reach, kinds, figures };
}

function reachTo(reach: Map<Key, MmBounds>, unit: Key, bounds: MmBounds): void {
  const before = reach.get(unit);
  reach.set(unit, before === undefined ? bounds : aroundAll([before, bounds]));
}

/** Side of a tile, m: a change at one side of a large area touches few tiles, and a tile holds some dozens of rows. */
const TILE = 4;

/** m: outlines begin at round numbers, and rounding must not decide the tile. */
const OFF_ROUND = 0.0137;

function rowsOf(
  area: Key,
  part: LaidInputs['parts'][number],
  unit: PlanUnit,
  runs: readonly WholeRun[],
  reach: Map<Key, MmBounds>
): LiveRows[] {
  const own = runs.filter(run => run.unit === unit.key);
  if (own.length === 0) return [];
  const tiles = new Map<string, LiveRows['runs'][number][]>();
  const tile = (metres: number): number => Math.floor((metres + OFF_ROUND) / TILE);
  const outline = formOf(unit);
  for (const { first, step, count } of own) {
    const name = `${tile(first.x)},${tile(first.y)}`;
    const held = tiles.get(name) ?? [];
    tiles.set(name, held);
    held.push([mm(first.x), mm(first.y), turnOf(first.direction), mmOfStep(step.x), mmOfStep(step.y), count]);
    const last = { ...first, x: first.x + (count - 1) * step.x, y: first.y + (count - 1) * step.y };
    const [one, other] = [first, last].map(at => boundsOf(loopOnPlan(outline, at)));
    reachTo(reach, unit.key, mmBounds(around(one!, other!)));
  }
  const form = cornersOf(outline);
  return [...tiles].map(([name, held]) => ({
    kind: 'rows',
    key: `${area}/${part.key}/whole/${nameIn(unit.key)}/${name}`,
    content: 'units',
    ink: wholeInk(part),
    ...tintOfUnit(unit),
    thing: unitKey(area, unit.key),
    form,
    runs: held
  }));
}

/** The thing that stands for all units of a kind in an area. */
export function unitKey(area: Key, unit: Key): string {
  return `${area}/unit/${nameIn(unit)}`;
}

function tintOfUnit({ colour }: PlanUnit): { readonly tint?: string } {
  const tint = tintOf(colour);
  return tint === undefined ? {} : { tint };
}

interface Around {
  readonly thing: string;
  readonly figures: number;
  readonly known: ReadonlyMap<string, LivePath>;
  readonly taken: Set<string>;
}

/** One shape for each piece, named by where its unit lies: what is cut elsewhere makes no difference. */
function cutPaths(
  area: Key,
  part: LaidInputs['parts'][number],
  unit: PlanUnit,
  { at, pieces }: CutUnit,
  { thing, figures, known, taken }: Around
): LivePath[] {
  const place = free(`${area}/${part.key}/cut/${nameIn(unit.key)}/${placeName(at)}`, taken);
  return pieces.map((piece, index): LivePath => {
    const key = index === 0 ? place : `${place}/${index + 1}`;
    const loops = [piece.outline, ...piece.holes].map(loop => cornersOf(loopOnPlan(loop, at)));
    const before = known.get(key);
    const room =
      before !== undefined && sameContent(before.loops, loops) ? before.numbered : roomIn(piece, at, figures);
    return {
      kind: 'path',
      key,
      content: 'cuts',
      ink: wholeInk(part) === 'whole' ? 'cut' : 'border-cut',
      ...tintOfUnit(unit),
      thing,
      loops,
      closed: true,
      ...(room === undefined ? {} : { numbered: room })
    };
  });
}

function roomIn(piece: CutUnit['pieces'][number], at: Placement, figures: number): LivePath['numbered'] {
  const room = roomOfPiece(piece, at, '0'.repeat(figures));
  return room && { x: mm(room.at.x), y: mm(room.at.y), size: mm(room.times), turn: turnOf(room.turn) };
}

/** Where a unit lies and how it is turned, to the millimetre and the tenth of a degree; rounded a little off the half. */
function placeName({ x, y, direction }: Placement): string {
  const round = (value: number): number => Math.round(value + OFF_THE_HALF) || 0;
  const turn = ((((direction * 1800) / Math.PI) % 3600) + 3600) % 3600;
  return `${round(x * 1000)},${round(y * 1000)},${round(turn) % 3600}`;
}

const OFF_THE_HALF = 0.183;

/** Two cut units of one kind never lie on one place; should they, the second is told from the first. */
function free(name: string, taken: Set<string>): string {
  let free = name;
  for (let times = 2; taken.has(free); times++) free = `${name}~${times}`;
  taken.add(free);
  return free;
}

function boundsOfPath({ loops }: LivePath): MmBounds {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const loop of loops) {
    for (let at = 0; at < loop.length; at += 3) {
      left = Math.min(left, loop[at]!);
      right = Math.max(right, loop[at]!);
      bottom = Math.min(bottom, loop[at + 1]!);
      top = Math.max(top, loop[at + 1]!);
    }
  }
  return [left, bottom, right, top];
}
