import { formOf, loopOnPlan } from '../../drawing/on-plan.ts';
import { around, boundsOf } from '../../geometry/index.ts';
import type { Area, Key } from '../../job/job.ts';
import { nameIn } from '../../job/key-names.ts';
import type { WholeRun } from '../../laying/laid.ts';
import type { AreaLaid } from '../../quantities/area-result.ts';
import type { PlanPart, PlanUnit } from '../plan/plan-input.ts';
import { wholeInk } from '../plan/unit-shapes.ts';
import { cutKindKeys } from './cut-kinds.ts';
import { boundsOfCut, cutShapes, type Sawn } from './cut-shapes.ts';
import { aroundAll, cornersOf, mm, type MmBounds, mmBounds, mmOfStep, turnOf } from './in-millimetres.ts';
import type { LivePath, LiveRows } from './live-plan.ts';
import { partsInTiles, tileOf } from './tiles.ts';
import { tintOfUnit } from './unit-tint.ts';

/** Units of an area as they are drawn, and how far each kind reaches. */
export interface LaidShapes {
  readonly wholes: readonly LiveRows[];
  readonly cuts: readonly (LivePath | LiveRows)[];
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

/** Rows parted by tiles of the ground, and cuts; room for a number is looked for anew only where a piece has changed. */
export function* laidShapes(inputs: LaidInputs, before: LaidShapes | undefined): Generator<void, LaidShapes> {
  const { area, parts, laid, cuts: list, units } = inputs;
  const { groups, places } = list.list;
  const keys = cutKindKeys(area.key, groups);
  const reach = new Map<Key, MmBounds>();
  const figures = Math.max(2, String(groups.length).length);
  const known = new Map(before?.figures === figures ? before.cuts.map(cut => [cut.key, cut]) : []);
  const wholes: LiveRows[] = [];
  const cuts: (LivePath | LiveRows)[] = [];
  const bounds = groups.map((): MmBounds[] => []);
  const taken = new Set<string>();
  let place = 0;
  for (const [index, part] of parts.entries()) {
    const { wholes: runs, cuts: sawn } = laid.parts[index]!.laid;
    for (const unit of units) wholes.push(...rowsOf(area.key, part, unit, runs, reach));
    yield;
    const own = sawn.map((cut, order): Sawn => {
      const group = places[place + order]!.group - 1;
      return { cut, thing: keys[group]!, unit: units.find(({ key }) => key === cut.unit)! };
    });
    own.forEach(({ cut }, order) => bounds[places[place + order]!.group - 1]!.push(boundsOfCut(cut)));
    place += sawn.length;
    yield;
    cuts.push(...(yield* cutShapes(own, { area: area.key, part, figures, known, taken })));
  }
  const kinds = keys.map((key, index) => ({ key, bounds: aroundAll(bounds[index]!) }));
  groups.forEach(({ unit }, index) => reachTo(reach, unit, kinds[index]!.bounds));
  return { wholes, cuts, reach, kinds, figures };
}

function reachTo(reach: Map<Key, MmBounds>, unit: Key, bounds: MmBounds): void {
  const before = reach.get(unit);
  reach.set(unit, before === undefined ? bounds : aroundAll([before, bounds]));
}

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
  const outline = formOf(unit);
  for (const { first, step, count } of own) {
    for (const part of partsInTiles(first, step, count)) {
      const begin = { x: first.x + part.from * step.x, y: first.y + part.from * step.y };
      const name = tileOf(begin);
      const held = tiles.get(name) ?? [];
      tiles.set(name, held);
      const way = part.count === 1 ? ([0, 0] as const) : ([mmOfStep(step.x), mmOfStep(step.y)] as const);
      held.push([mm(begin.x), mm(begin.y), turnOf(first.direction), ...way, part.count]);
    }
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
