import { inside, type Loop, type Point } from '../../geometry/index.ts';
import type { Area, Job, KeptOut } from '../../job/job.ts';
import { type AreaHeights, areaHeights, groundOf, type HeightsThere } from '../../quantities/area-heights.ts';
import type { AreaQuantities } from '../../quantities/contract.ts';
import type { GroundSurface } from '../../levels/ground.ts';
import { baseOut } from '../../geometry/index.ts';
import { finishStations } from './finish-stations.ts';
import { type CutLine, crossings, placeAt } from './section-line.ts';
import { type SideMet, standsUp } from './sides-met.ts';

/** An area as a section needs it. */
export interface CutArea {
  readonly area: Area;
  readonly heights: AreaHeights;
  /** Out to the edge of the base. */
  readonly base: readonly Loop[];
}

/** A stretch of the line over which nothing begins or ends. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Paved here. */
  readonly paved?: CutArea;
  /** Its base and dig reach here. */
  readonly dug?: CutArea;
  readonly box?: KeptOut;
  readonly heights?: readonly [HeightsThere, HeightsThere];
  readonly ground?: readonly [number, number];
  readonly isSoft: boolean;
  /** Past a side that meets no open ground: no topsoil is drawn there. */
  readonly isClosed?: true;
}

export function cutAreas({ areas }: Job, quantities: readonly AreaQuantities[]): CutArea[] {
  return areas.flatMap(area => {
    const heights = areaHeights(area);
    if (heights === undefined || area.outline.length === 0) return [];
    const edges = quantities.find(({ id }) => id === area.key)?.edges;
    const past = area.outline.map((_, index) => edges?.[index]?.overhang ?? 0);
    return [{ area, heights, base: baseOut(area.outline, past).loops }];
  });
}

/** Where the ground bends and a surface twists, the line is looked at so often. */
const LOOKS = 160;

/** m: no stretch is shorter. */
const SHORTEST = 1e-5;

export function stretchesOf(line: CutLine, areas: readonly CutArea[], job: Job): Stretch[] {
  const end = line.length + line.past;
  const whole = end + line.past;
  const loops = areas.flatMap(({ area, base }) => [
    area.outline,
    ...base,
    ...area.keptOut.map(({ outline }) => outline),
    ...area.softSpots.map(({ outline }) => outline)
  ]);
  const met = loops.flatMap(loop => crossings(line, loop).map(({ at }) => at));
  const looks = Array.from({ length: LOOKS + 1 }, (_, index) => -line.past + (whole * index) / LOOKS);
  const all = [...looks, ...met, ...line.parts.map(({ start }) => start), end].sort((a, b) => a - b);
  const ground = job.areas.map(({ site }) => groundOf(site)).find(one => one !== undefined);
  const between = (wished: readonly number[]): Stretch[] => {
    const stations = wished.filter((at, index) => index === 0 || at - wished[index - 1]! > SHORTEST);
    return stations.slice(1).map((to, index) => stretchBetween(line, stations[index]!, to, areas, ground));
  };
  const stretches = between(all);
  const bends = finishStations(line, stretches);
  return bends.length === 0 ? stretches : between([...all, ...bends].sort((a, b) => a - b));
}

function stretchBetween(
  line: CutLine,
  from: number,
  to: number,
  areas: readonly CutArea[],
  siteGround: GroundSurface | undefined
): Stretch {
  const middle = placeAt(line, (from + to) / 2);
  // A hair within, so that what begins or ends here counts on its own side.
  const hair = (to - from) * 1e-4;
  const ends = [placeAt(line, from + hair), placeAt(line, to - hair)] as const;
  const paved = areas.find(({ area }) => inside(area.outline, middle));
  const dug = paved ?? areas.find(({ base }) => base.some(loop => inside(loop, middle)));
  const box = paved?.area.keptOut.find(({ outline }) => inside(outline, middle));
  const ground = dug === undefined ? siteGround : (dug.heights.ground ?? siteGround);
  const at = (place: Point): HeightsThere => dug!.heights.at(place);
  return {
    from,
    to,
    ...(paved === undefined ? {} : { paved }),
    ...(dug === undefined ? {} : { dug, heights: [at(ends[0]), at(ends[1])] as const }),
    ...(box === undefined ? {} : { box }),
    ...(ground === undefined ? {} : { ground: [ground.heightAt(ends[0]), ground.heightAt(ends[1])] as const }),
    isSoft: dug?.area.softSpots.some(({ outline }) => inside(outline, middle)) ?? false
  };
}

/** Stretches that follow each other and agree in something: runs of those for which there is something. */
export function runsOf<Same>(
  stretches: readonly Stretch[],
  sameOf: (stretch: Stretch) => Same | undefined
): { same: Same; run: Stretch[] }[] {
  const runs: { same: Same; run: Stretch[] }[] = [];
  let before: Same | undefined;
  for (const stretch of stretches) {
    const same = sameOf(stretch);
    if (same !== undefined && same === before) runs.at(-1)!.run.push(stretch);
    else if (same !== undefined) runs.push({ same, run: [stretch] });
    before = same;
  }
  return runs;
}

/** m: sides within it of where the dig ends are what it ends at. */
const AT_END = 0.01;

/** Past sides that meet no open ground there is no topsoil; behind what stands up nothing is known of the ground. */
export function withoutOpenGround(stretches: readonly Stretch[], sides: readonly SideMet[]): Stretch[] {
  const closed = new Map<Stretch, Stretch>();
  for (const { run } of runsOf(stretches, ({ dug }) => (dug === undefined ? 'undug' : undefined))) {
    const [start, end] = [run[0]!.from, run.at(-1)!.to];
    const ends = sides.filter(({ at, outwards }) => Math.abs(at - (outwards > 0 ? start : end)) <= AT_END);
    if (!ends.some(({ edge: { meets } }) => meets.area === undefined && !meets.openGround)) continue;
    const isWalled = ends.some(({ edge }) => standsUp(edge));
    for (const stretch of run) {
      const { ground, ...rest } = stretch;
      closed.set(stretch, { ...rest, ...(isWalled || ground === undefined ? {} : { ground }), isClosed: true });
    }
  }
  return stretches.map(stretch => closed.get(stretch) ?? stretch);
}
