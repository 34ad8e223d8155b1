import {
  baseOut,
  distance,
  type Loop,
  type Point,
  pointAlong,
  type Side,
  sideLength,
  signedAreaOf
} from '../geometry/index.ts';
import { shareAlong } from '../geometry/containment.ts';
import type { Edge } from '../job/job.ts';
import { fallFromSide } from '../levels/fall-from-side.ts';
import { LEVEL_STEP, type StepAt, stepsAlong } from '../levels/step-along-edge.ts';
import { heightAt, type Surface } from '../levels/surface.ts';
import { groundOf } from './area-heights.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LayeredArea } from './layers-stage.ts';
import { Book } from './page.ts';
import { stretchesIn } from './site-area.ts';

/** Heights of the finish along one side, and the step to what lies beyond it. */
export type EdgeHeights = Pick<
  NumbersOf<'edge'>,
  'finishFrom' | 'finishTo' | 'fallAway' | 'fallAwayMost' | 'stepUp' | 'stepDown'
> & {
  /** Along the side, as far as the neighbour's height is known: that less the height of the finish, m. */
  readonly steps?: readonly { readonly at: number; readonly step: number }[];
};

export interface EdgeHeightsInputs {
  readonly area: Pick<LayeredArea, 'outline' | 'edges' | 'finish' | 'site'>;
  /** The area that a side meets, where it meets one whose finish is known. */
  readonly beyond: readonly (AreaBeyond | undefined)[];
}

export interface AreaBeyond {
  readonly surface: Surface;
  readonly outline: Loop;
}

/** Heights along the sides of an area; nothing where its finish is not said. */
export function edgeHeightsStage({ area, beyond }: EdgeHeightsInputs): readonly EdgeHeights[] {
  const surface = area.finish?.surface;
  if (surface === undefined) return area.edges.map(() => ({}));
  const ground = groundOf(area.site);
  const into = signedAreaOf(area.outline) >= 0 ? 'left' : 'right';
  const book = new Book();
  return area.edges.map((edge, index): EdgeHeights => {
    const side = area.outline[index]!;
    const page = book.page('edge', `/edges/${index}`);
    const fall = fallFromSide(surface, side, into);
    if ('fault' in fall) return {};
    page.repeat('finishFrom', fall.start);
    page.repeat('finishTo', fall.end);
    page.repeat('fallAway', fall.least.value);
    if (fall.most.value - fall.least.value > SAME_FALL) page.repeat('fallAwayMost', fall.most.value);
    const there = neighbourOf(edge, beyond[index], ground && (at => ground.heightAt(at)));
    if (there === undefined) return page.numbers as EdgeHeights;
    const here = (at: Point): number => heightAt(surface, at);
    const places = there.knownOn(side).flatMap(known => stepsOn(side, known, here, there));
    if (places.length === 0) return page.numbers as EdgeHeights;
    const differences = places.map(({ step }) => step);
    const [least, most] = [Math.min(...differences), Math.max(...differences)];
    if (most > LEVEL_STEP) page.repeat('stepUp', most);
    if (least < -LEVEL_STEP) page.repeat('stepDown', -least);
    return { ...(page.numbers as EdgeHeights), steps: places };
  });
}

/** Falls that differ by less are one. */
const SAME_FALL = 1e-4;

interface Neighbour {
  readonly heightAt: (at: Point) => number;
  /** Shares of a side at which its height is known. */
  readonly knownOn: (side: Side) => readonly Shares[];
  /** Distances along a side at which it may bend. */
  readonly breaksOn: (side: Side) => readonly number[];
}

interface Shares {
  readonly from: number;
  readonly to: number;
}

/** The steps along what is known of a side; one where that is a single place. */
function stepsOn(
  side: Side,
  { from, to }: Shares,
  here: (at: Point) => number,
  there: Neighbour
): { at: number; step: number }[] {
  const length = sideLength(side);
  const stepAt = (at: number): { at: number; step: number } => {
    const place = pointAlong(side, at / length);
    return { at, step: there.heightAt(place) - here(place) };
  };
  if (!(to > from)) return [stepAt(from * length)];
  const part = { ...side, from: pointAlong(side, from), to: pointAlong(side, to) };
  if (side.arc !== undefined) part.arc = { ...side.arc, turn: side.arc.turn * (to - from) };
  const start = from * length;
  const breaks = there.breaksOn(side).map(at => at - start);
  const inPart = breaks.filter(at => at > 0 && at < (to - from) * length);
  return stepsAlong([part], here, there.heightAt, inPart).places.map(({ at, difference }: StepAt) => ({
    at: start + at,
    step: difference
  }));
}

const ALL_ALONG: readonly Shares[] = [{ from: 0, to: 1 }];

/** Metres: a neighbour no further off lies along a side. */
const BESIDE = 0.002;

/** The stretches of a side along which an area lies; they end at its corners. */
function besideArea(side: Side, outline: Loop): Shares[] {
  const { loops } = baseOut(
    outline,
    outline.map(() => BESIDE)
  );
  const length = sideLength(side);
  const ended = (share: number): number => {
    const at = pointAlong(side, share);
    const corner = outline.find(({ from }) => distance(from, at) <= 3 * BESIDE);
    return corner === undefined ? share : shareAlong(side, corner.from);
  };
  return stretchesIn(side, loops)
    .map(({ from, to }) => ({ from: ended(from), to: ended(to) }))
    .filter(({ from, to }) => (to - from) * length > BESIDE);
}

/** Metres: a single height counts for a side no further off than this. */
const AT_SIDE = 0.3;

/** From the first to the last place of a side beside which a height was taken; never past them. */
function betweenSpots(side: Side, spots: readonly { readonly at: Point }[]): Shares[] {
  const shares = spots.map(({ at }) => shareAlong(side, at));
  const [from, to] = [Math.min(...shares), Math.max(...shares)];
  if (to > from) return [{ from, to }];
  const isNear = spots.some(({ at }) => distance(at, pointAlong(side, from)) <= AT_SIDE);
  return isNear ? [{ from, to }] : [];
}

/** What lies beyond a side: another area's finish, what was measured there, or open ground as it is today. */
function neighbourOf(
  { meets }: Edge,
  other: AreaBeyond | undefined,
  ground: ((at: Point) => number) | undefined
): Neighbour | undefined {
  if (other !== undefined)
    return {
      heightAt: at => heightAt(other.surface, at),
      knownOn: side => besideArea(side, other.outline),
      breaksOn: () => []
    };
  if (meets?.heights !== undefined && meets.heights.length > 0) {
    const spots = meets.heights;
    return {
      heightAt: at => alongSpots(spots, at),
      knownOn: side => betweenSpots(side, spots),
      breaksOn: side => spots.map(({ at }) => shareAlong(side, at) * sideLength(side))
    };
  }
  if (meets?.openGround !== true || ground === undefined) return undefined;
  return { heightAt: ground, knownOn: () => ALL_ALONG, breaksOn: () => [] };
}

/** Between the two spots that the place lies nearest to, straight from the one to the other; beyond them the nearest. */
export function alongSpots(spots: readonly { readonly at: Point; readonly z: number }[], at: Point): number {
  const [first, last] = furthestApart(spots);
  const run = distance(first.at, last.at);
  if (run === 0) return first.z;
  const station = ({ x, y }: Point): number =>
    ((x - first.at.x) * (last.at.x - first.at.x) + (y - first.at.y) * (last.at.y - first.at.y)) / run;
  const inOrder = spots.map(spot => ({ s: station(spot.at), z: spot.z })).sort((a, b) => a.s - b.s);
  const s = station(at);
  const after = inOrder.findIndex(spot => spot.s >= s);
  if (after === 0) return inOrder[0]!.z;
  if (after < 0) return inOrder.at(-1)!.z;
  const [low, high] = [inOrder[after - 1]!, inOrder[after]!];
  return high.s === low.s ? low.z : low.z + ((high.z - low.z) * (s - low.s)) / (high.s - low.s);
}

function furthestApart<T extends { readonly at: Point }>(spots: readonly T[]): [T, T] {
  const first = spots[0]!;
  const far = (from: T): T =>
    spots.reduce((best, spot) => (distance(spot.at, from.at) > distance(best.at, from.at) ? spot : best));
  const end = far(first);
  return [far(end), end];
}
