import { baseOut, distanceToSide, type Point, pointAlong, type Side } from '../geometry/index.ts';
import { shareAlong } from '../geometry/containment.ts';
import type { Pipe } from '../job/heights.ts';
import type { NamedPoint, Site } from '../job/job.ts';
import { extremesBetween } from '../levels/extremes.ts';
import type { GroundSurface } from '../levels/ground.ts';
import { groundOf } from './area-heights.ts';
import { leaf, measured, subtract } from './arithmetic.ts';
import { tapedFrom } from './taped-from.ts';
import type { Book, Page } from './page.ts';
import { digBottomAt, digRegion, heightsOf, type SiteArea, stretchesIn } from './site-area.ts';
import type { PipeQuantities } from './site-contract.ts';

/** Where a dig and a pipe are nearest to each other: heights in m. */
interface Nearest {
  readonly below: number;
  readonly bottom: number;
  readonly at: Point;
  readonly top: number;
}

/** How deep pipes lie below the digs by the depth that is told of them, which is no proof of it. */
export function pipesOf(
  pipes: readonly Pipe[],
  areas: readonly SiteArea[],
  points: readonly NamedPoint[],
  book: Book
): PipeQuantities[] {
  return pipes.map((pipe, index) => {
    const at = `/pipes/${index}`;
    const page = book.page('pipe', at);
    const nearest = depthNumbers(pipe, areas, at, page);
    return {
      id: pipe.key,
      name: pipe.name,
      ...(pipe.carries === undefined ? {} : { carries: pipe.carries }),
      proven: pipe.proven,
      crossesDig: crossesDig(pipe, areas),
      ...(nearest === undefined ? {} : { nearestAt: [nearest.at.x, nearest.at.y] as const }),
      tapedFrom: pipe.line.flatMap(({ name, at: place }) =>
        tapedFrom(
          points.filter(point => point.name !== name),
          place
        ).map(taped => ({ of: name, ...taped }))
      ),
      ...page.numbers
    };
  });
}

function depthNumbers(pipe: Pipe, areas: readonly SiteArea[], at: string, page: Page<'pipe'>): Nearest | undefined {
  const ground = areas[0] && groundOf(areas[0].area.site);
  if (ground === undefined || pipe.depth === undefined) return undefined;
  const runs = runsOf(pipe, ground, pipe.depth.value);
  const beside = nearestOf(runs.flatMap(run => aboveRun(run, areas, false)));
  const nearest = nearestOf(runs.flatMap(run => aboveRun(run, areas, true)));
  if (nearest === undefined || beside === undefined) return undefined;
  page.repeat('top', nearest.top);
  const top = leaf('height of the pipe', nearest.top, 'm', { pointer: `${at}/top` });
  page.put('belowDig', subtract(measured('bottom of the dig where it is nearest', nearest.bottom, 'm', pipe.key), top));
  page.put(
    'belowDigBesideSoftSpots',
    subtract(
      measured('bottom of the dig without soft spots', beside.bottom, 'm', pipe.key),
      measured('height of the pipe there', beside.top, 'm', pipe.key)
    )
  );
  return nearest;
}

function crossesDig({ line }: Pipe, areas: readonly SiteArea[]): boolean {
  return areas.some(one => {
    const region = digRegion(one);
    return line.slice(1).some((to, index) => stretchesIn({ from: line[index]!.at, to: to.at }, region).length > 0);
  });
}

/**
 * Metres: a soft spot no further from the line of a pipe counts as over it. No pipe lies as straight as it is drawn, and
 * this near to one it is usual to dig by hand alone (common practice).
 */
const BY_HAND = 0.5;

/** A straight run of pipe; `topAt`: its height at a share of the run, m. */
interface Run {
  readonly side: Side;
  readonly topAt: (share: number) => number;
}

/**
 * Runs of a pipe by the depth that is told of it. Whether that depth holds at its ends alone or all along nobody knows:
 * of both readings, straight between the depths at the ends or so deep below the ground everywhere, the higher counts.
 */
function runsOf({ line }: Pipe, ground: GroundSurface, depth: number): Run[] {
  const topBelow = (at: Point): number => ground.heightAt(at) - depth;
  return line.slice(1).map((end, index): Run => {
    const side: Side = { from: line[index]!.at, to: end.at };
    const [from, to] = [topBelow(side.from), topBelow(side.to)];
    return { side, topAt: share => Math.max(from + (to - from) * share, topBelow(pointAlong(side, share))) };
  });
}

/** Height of a pipe where its line passes a place, m above the datum; undefined where its depth is not told. */
export function pipeTopAt(pipe: Pipe, site: Site, place: Point): number | undefined {
  const ground = groundOf(site);
  if (ground === undefined || pipe.depth === undefined) return undefined;
  const runs = runsOf(pipe, ground, pipe.depth.value).map(run => ({ ...run, off: distanceToSide(run.side, place) }));
  const least = Math.min(...runs.map(({ off }) => off));
  const tops = runs.filter(({ off }) => off <= least + AT_LINE).map(run => run.topAt(shareAlong(run.side, place)));
  return tops.length === 0 ? undefined : Math.max(...tops);
}

/** Metres: runs no further off pass a place alike. */
const AT_LINE = 1e-6;

/** Where each dig over a run of pipe comes nearest to it, with soft spots or without. */
function aboveRun({ side, topAt }: Run, areas: readonly SiteArea[], softSpots: boolean): Nearest[] {
  return heightsOf(areas).flatMap(one => {
    const { area, heights } = one;
    const dug = stretchesIn(side, digRegion(one));
    const bottoms = [
      { stretches: dug, deeper: 0 },
      ...(softSpots ? area.softSpots : []).map(({ outline, deeper }) => ({
        stretches: inBoth(
          dug,
          stretchesIn(
            side,
            baseOut(
              outline,
              outline.map(() => BY_HAND)
            ).loops
          )
        ),
        deeper: deeper.value
      }))
    ];
    return bottoms.flatMap(({ stretches, deeper }) =>
      stretches.map(stretch => {
        const bottomAt = (share: number): number => digBottomAt(heights, pointAlong(side, share)) - deeper;
        const { least } = extremesBetween(share => bottomAt(share) - topAt(share), stretch.from, stretch.to);
        return {
          below: least.value,
          bottom: bottomAt(least.at),
          at: pointAlong(side, least.at),
          top: topAt(least.at)
        };
      })
    );
  });
}

interface Shares {
  readonly from: number;
  readonly to: number;
}

function inBoth(some: readonly Shares[], others: readonly Shares[]): Shares[] {
  return some
    .flatMap(one => others.map(other => ({ from: Math.max(one.from, other.from), to: Math.min(one.to, other.to) })))
    .filter(({ from, to }) => to > from);
}

function nearestOf(all: readonly Nearest[]): Nearest | undefined {
  return all.reduce<Nearest | undefined>(
    (least, next) => (least && least.below <= next.below ? least : next),
    undefined
  );
}
