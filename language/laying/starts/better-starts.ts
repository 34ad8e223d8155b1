import type { Point } from '../../geometry/index.ts';
import type { AreaToLay } from '../area-to-lay.ts';
import { type Cutting, cuttingOf } from './cutting.ts';
import { byCutting, isClearlyBetter } from './fewer-cuts.ts';
import { freeWays } from './free-ways.ts';
import { layArea, setOutArea } from '../lay-area.ts';
import { changedStart, changesIn, type StartChange } from './start-change.ts';
import { startJoints } from './start-joints.ts';
import { startPlaces } from './start-places.ts';

/** What a better start is looked for by, in metres. */
export interface StartSearch {
  /** What a shift is measured in, and the width of a joint: a promise is kept only by what can be measured. */
  readonly shiftStep: number;
  readonly jointStep: number;
  /** The courses may run another way: under wheels the way they run is no matter of cuts. */
  readonly mayTurn: boolean;
  /** The joints may be opened or closed within their limits. */
  readonly mayJoint: boolean;
}

/** Another way to begin, and what it leaves to cut. */
export interface BetterStart {
  readonly change: StartChange;
  readonly cutting: Cutting;
}

export interface BetterStarts {
  readonly now: Cutting;
  /** The best first: of moving alone, of other joints, of turned courses, each clearly better than what changes less. */
  readonly better: readonly BetterStart[];
  /** Ways of laying that were tried: a counter of work. */
  readonly tried: number;
}

/** Ways of laying that are tried in an area: all that come into question in a patio, in steps one waits for. */
export const MOST_TRIED = 200;

/** Units clipped in all of them together: of a large area fewer ways are tried. */
const MOST_CLIPPED = 50_000;

/** Even of the largest area. */
const LEAST_TRIED = 12;

/** Shifts across that are looked at with every shift along. */
const BEST_ACROSS = 3;

/**
 * Looks for a start that leaves less to cut. Whole units along sides, equal cuts and joint lines carried on stay as said;
 * the first unit is moved to where units begin or end at the lines the field ends at, joints are opened or closed within
 * their limits, the courses are turned by a quarter where no side is named for them. Undefined where the area can't be
 * laid. Yields about once a course.
 */
export function* betterStarts(area: AreaToLay, search: StartSearch): Generator<void, BetterStarts | undefined> {
  const laid = yield* layArea(area);
  if (!('parts' in laid)) return undefined;
  const now = cuttingOf(laid, area);
  const clipped = laid.parts.reduce((sum, part) => sum + part.laid.clipped, 0);
  const most = Math.max(LEAST_TRIED, Math.min(MOST_TRIED, Math.floor(MOST_CLIPPED / (1 + clipped))));
  const trials = new Trials(area, search, now, most);
  if (now.cutUnits > 0) for (const base of yield* bases(area, search)) yield* lookFrom(trials, base);
  return { now, better: chosen(trials.all, now), tried: trials.count };
}

/** The courses as they run and turned, each with the joints as they are and as they fit. */
function* bases(area: AreaToLay, { jointStep, mayTurn, mayJoint }: StartSearch): Generator<void, StartChange[]> {
  const set = yield* setOutArea(area);
  if ('part' in set) return [];
  const free = freeWays(area, set.setOut.frame);
  const turns: StartChange[] = free.turn && mayTurn ? [{}, { turned: Math.PI / 2 }] : [{}];
  const joints: StartChange[] = [];
  if (free.joint && mayJoint)
    for (const turn of turns) {
      const widths = yield* startJoints(unshifted(area, turn), jointStep);
      joints.push(...widths.map(joint => ({ ...turn, joint })));
    }
  return [...turns, ...joints];
}

function unshifted(area: AreaToLay, base: StartChange): AreaToLay {
  return changedStart(area, { ...base, shifted: { x: 0, y: 0 } });
}

/** Tries the shifts from one base: across first, then along with the best of them, then across once more. */
function* lookFrom(trials: Trials, base: StartChange): Generator<void, void> {
  const { area, search } = trials;
  const from = unshifted(area, base);
  const set = yield* setOutArea(from);
  if ('part' in set || set.setOut.pattern === undefined) return;
  const { pattern } = set.setOut;
  const free = freeWays(area, set.setOut.frame);
  const said = area.field.start.shifted ?? { x: 0, y: 0 };
  const places = (way: 'along' | 'across'): number[] => {
    const first = way === 'along' ? said.x : said.y;
    const others = free[way] ? startPlaces(set.ground.regions, pattern, way, search.shiftStep) : [];
    return [...new Set([first, ...(free[way] ? [0] : []), ...others])];
  };
  const [along, across] = [places('along'), places('across')];
  const before = trials.all.length;
  for (const y of across) yield* trials.lay(base, { x: said.x, y });
  const best = trials.bestSince(before).slice(0, BEST_ACROSS);
  for (const { y } of best.map(({ change }) => change.shifted ?? said)) {
    for (const x of along) yield* trials.lay(base, { x, y });
    if (free.along && area.field.bond.way === 'courses') yield* trials.lay({ ...base, equalCuts: true }, { x: 0, y });
  }
  const [first] = trials.bestSince(before);
  if (first === undefined) return;
  const { shifted, equalCuts } = first.change;
  const again = equalCuts === undefined ? base : { ...base, equalCuts };
  for (const y of across) yield* trials.lay(again, { x: (shifted ?? said).x, y });
}

/** Ways of laying tried so far, each once. */
class Trials {
  readonly all: BetterStart[] = [];
  readonly area: AreaToLay;
  readonly search: StartSearch;
  private readonly now: Cutting;
  private readonly most: number;
  private readonly done = new Set<string>();

  constructor(area: AreaToLay, search: StartSearch, now: Cutting, most: number) {
    this.area = area;
    this.search = search;
    this.now = now;
    this.most = most;
  }

  get count(): number {
    return this.done.size;
  }

  *lay(base: StartChange, shifted: Point): Generator<void, void> {
    const said = this.area.field.start.shifted ?? { x: 0, y: 0 };
    const isSame = said.x === shifted.x && said.y === shifted.y;
    const change = isSame ? base : { ...base, shifted };
    const name = JSON.stringify(change);
    if (this.done.has(name) || this.done.size >= this.most) return;
    this.done.add(name);
    if (Object.keys(change).length === 0) {
      this.all.push({ change, cutting: this.now });
      return;
    }
    const area = changedStart(this.area, change);
    const laid = yield* layArea(area);
    if (!('parts' in laid)) return;
    this.all.push({ change, cutting: cuttingOf(laid, area) });
  }

  /** Those tried since there were so many, the best first. */
  bestSince(before: number): BetterStart[] {
    return this.all.slice(before).sort(byLiking);
  }
}

/** As liked; where nothing else tells them apart equal cuts, then the plainest change. */
function byLiking(one: BetterStart, other: BetterStart): number {
  const cutting = byCutting(one.cutting, other.cutting);
  if (cutting !== 0) return cutting;
  const isCut = one.cutting.cutUnits > 0;
  const equal = isCut ? Number(other.change.equalCuts ?? false) - Number(one.change.equalCuts ?? false) : 0;
  return equal === 0 ? changesIn(one.change) - changesIn(other.change) : equal;
}

/** The best of each kind of change, where it is clearly better than now and than what changes less. */
function chosen(all: readonly BetterStart[], now: Cutting): BetterStart[] {
  const better: BetterStart[] = [];
  for (const isOfKind of KINDS) {
    const [best] = all.filter(({ change }) => isOfKind(change)).sort(byLiking);
    const plainer = [now, ...better.map(({ cutting }) => cutting)];
    if (best !== undefined && plainer.every(one => isClearlyBetter(best.cutting, one))) better.push(best);
  }
  return better.sort(byLiking);
}

const KINDS: readonly ((change: StartChange) => boolean)[] = [
  ({ turned, joint }) => turned === undefined && joint === undefined,
  ({ turned, joint }) => turned === undefined && joint !== undefined,
  ({ turned }) => turned !== undefined
];
