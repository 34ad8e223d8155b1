import { distance, type Point, type Side, sideLength, signedAreaOf } from '../geometry/index.ts';
import type { Edge } from '../job/job.ts';
import { fallFromSide } from '../levels/fall-from-side.ts';
import { type StepAt, stepsAlong } from '../levels/step-along-edge.ts';
import { heightAt, type Surface } from '../levels/surface.ts';
import { areaHeights } from './area-heights.ts';
import type { NumbersOf } from './catalogue.ts';
import type { LayeredArea } from './layers-stage.ts';
import { Book } from './page.ts';

/** Heights of the finish along one side, and the step to what lies beyond it. */
export type EdgeHeights = Pick<NumbersOf<'edge'>, 'finishFrom' | 'finishTo' | 'fallAway' | 'stepUp' | 'stepDown'> & {
  /** Along the side: the neighbour's height less that of the finish, m. */
  readonly steps?: readonly { readonly at: number; readonly step: number }[];
};

export interface EdgeHeightsInputs {
  readonly area: LayeredArea;
  /** The finish of the area that a side meets, where it meets one. */
  readonly beyond: readonly (Surface | undefined)[];
}

/** Heights along the sides of an area; nothing where its finish is not said. */
export function edgeHeightsStage({ area, beyond }: EdgeHeightsInputs): readonly EdgeHeights[] {
  const heights = areaHeights(area);
  if (heights === undefined) return area.edges.map(() => ({}));
  const into = signedAreaOf(area.outline) >= 0 ? 'left' : 'right';
  const book = new Book();
  return area.edges.map((edge, index): EdgeHeights => {
    const side = area.outline[index]!;
    const page = book.page('edge', `/edges/${index}`);
    const fall = fallFromSide(heights.surface, side, into);
    if ('fault' in fall) return {};
    page.repeat('finishFrom', fall.start);
    page.repeat('finishTo', fall.end);
    page.repeat('fallAway', fall.least.value);
    const there = neighbourOf(edge, beyond[index], heights.ground?.heightAt.bind(heights.ground));
    if (there === undefined) return page.numbers as EdgeHeights;
    const here = (at: Point): number => heightAt(heights.surface, at);
    const { places, up, down } = stepsAlong([side], here, there.heightAt, there.breaksOn(side));
    if (up !== undefined) page.repeat('stepUp', up.difference);
    if (down !== undefined) page.repeat('stepDown', -down.difference);
    const steps = places.map(({ at, difference }: StepAt) => ({ at, step: difference }));
    return { ...(page.numbers as EdgeHeights), steps };
  });
}

interface Neighbour {
  readonly heightAt: (at: Point) => number;
  /** Distances along a side at which it may bend. */
  readonly breaksOn: (side: Side) => readonly number[];
}

/** What lies beyond a side: another area's finish, what was measured there, or open ground as it is today. */
function neighbourOf(
  { meets }: Edge,
  other: Surface | undefined,
  ground: ((at: Point) => number) | undefined
): Neighbour | undefined {
  if (other !== undefined) return { heightAt: at => heightAt(other, at), breaksOn: () => [] };
  if (meets?.heights !== undefined && meets.heights.length > 0) {
    const spots = meets.heights;
    return {
      heightAt: at => alongSpots(spots, at),
      breaksOn: side => spots.map(({ at }) => distance(side.from, at)).filter(at => at > 0 && at < sideLength(side))
    };
  }
  return meets?.openGround === true && ground !== undefined ? { heightAt: ground, breaksOn: () => [] } : undefined;
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
