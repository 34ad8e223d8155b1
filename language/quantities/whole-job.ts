import { type Ground, type Loop, reversedLoop, sharedWithAny, signedAreaOf } from '../geometry/index.ts';
import type { Job } from '../job/job.ts';
import { type AreaResult, outlinesOf, type Pair } from './area-result.ts';
import { jobBuying } from './job-buying.ts';
import { type Memory, recall } from './job-memory.ts';
import { type AreaTotals, type JobInputs, type JobResult, jobStage, type Shared } from './job-stage.ts';
import type { NestedTogether } from './nesting-stage.ts';

/** The job's numbers; its workings name the areas by their place in `order`. */
export interface WholeJob extends JobResult {
  /** Indices of the areas in the order in which the workings count them. */
  readonly order: readonly number[];
  readonly nestedTogether?: NestedTogether;
}

/** The numbers of the whole job out of those of its areas. */
export function* wholeJob(
  job: Job,
  results: readonly AreaResult[],
  pairs: readonly Pair[],
  memory: Memory
): Generator<void, WholeJob> {
  // By key, so that an area moved in the text changes nothing; the pointers are led to its place in the list afterwards.
  const order = results.map((_, index) => index).sort((a, b) => (results[a]!.area.key < results[b]!.area.key ? -1 : 1));
  const rank = new Map(order.map((index, at) => [index, at]));
  const areas: AreaTotals[] = [];
  for (const index of order) {
    const { area, shapes, layers } = results[index]!;
    const shared = yield* takenTwice(index, results, pairs, memory);
    const ranked = (one: Shared): Shared => ({ ...one, with: one.with.map(other => rank.get(other)!) });
    areas.push({
      key: area.key,
      name: area.name,
      netArea: shapes.area.netArea,
      dig: layers.dig,
      softSpots: layers.softSpots,
      layers: layers.layers,
      ...(layers.laying === undefined ? {} : { laying: layers.laying }),
      edging: layers.edging,
      soil: { swell: area.site.soil.swell, density: area.site.soil.density },
      ...(shared.dug === undefined ? {} : { dug: ranked(shared.dug) }),
      ...(shared.paved === undefined ? {} : { paved: ranked(shared.paved) })
    });
  }
  const { buying, ...pieces } = yield* jobBuying(job, results, memory);
  const inputs: JobInputs = { key: job.key, areas, buying, carting: job.carting };
  const result = yield* recall(memory, 'job', [job.key], inputs, () => jobStage(inputs));
  return { ...result, order, ...pieces };
}

/** What of an area's dig deeper ones take up, and what of its paving those do whose key comes first. */
function* takenTwice(
  index: number,
  results: readonly AreaResult[],
  pairs: readonly Pair[],
  memory: Memory
): Generator<void, { readonly dug: Shared | undefined; readonly paved: Shared | undefined }> {
  const mine = results[index]!;
  const others = pairs
    .filter(({ areas }) => areas.includes(index))
    .map(pair => ({ ...pair, other: pair.areas[0] === index ? pair.areas[1] : pair.areas[0] }))
    .sort((a, b) => (results[a.other]!.area.key < results[b.other]!.area.key ? -1 : 1));
  const comesFirst = (other: AreaResult): boolean => other.area.key < mine.area.key;
  const digsDeeper = (other: AreaResult): boolean =>
    other.layers.dig.deepest > mine.layers.dig.deepest ||
    (other.layers.dig.deepest === mine.layers.dig.deepest && comesFirst(other));
  const deeper = others.filter(({ dug, other }) => dug > 0 && digsDeeper(results[other]!));
  const earlier = others.filter(({ paved, other }) => paved > 0 && comesFirst(results[other]!));
  const digOf = ({ area, layers }: AreaResult): Ground => ({ loops: layers.baseLoops, keptOut: outlinesOf(area) });
  const pavingOf = ({ area }: AreaResult): Ground => ({
    loops: [anticlockwise(area.outline)],
    keptOut: outlinesOf(area)
  });
  const shared = function* (
    those: readonly { readonly other: number }[],
    ofOne: number | undefined,
    groundOf: (result: AreaResult) => Ground
  ): Generator<void, Shared | undefined> {
    if (those.length === 0) return undefined;
    const among = those.map(({ other }) => other);
    if (among.length === 1) return { area: ofOne!, with: among };
    const things = [mine, ...among.map(other => results[other]!)];
    const [ground, ...grounds] = things.map(groundOf);
    const inputs = { ground: ground!, grounds };
    const keys = things.map(({ area }) => area.key);
    const area = yield* recall(memory, 'pair', keys, inputs, () => sharedWithAny(ground!, grounds));
    return { area, with: among };
  };
  return {
    dug: yield* shared(deeper, deeper[0]?.dug, digOf),
    paved: yield* shared(earlier, earlier[0]?.paved, pavingOf)
  };
}

function anticlockwise(loop: Loop): Loop {
  return signedAreaOf(loop) < 0 ? reversedLoop(loop) : loop;
}
