import type { RawFinding } from '../findings/finding.ts';
import { neighbourFaults, unsaidAlong, type Along, type Beside } from '../findings/neighbour-faults.ts';
import { overlapFault } from '../findings/pair-faults.ts';
import type { Area, Job } from '../job/job.ts';
import { type AreaResult, inOrder, outlinesOf, type Pair } from './area-result.ts';
import { type Memory, recall } from './job-memory.ts';
import { type NeighbourInputs, type NeighbourSide, neighbourStage } from './neighbour-stage.ts';
import { neighbours, type PairInputs, pairStage } from './pair-stage.ts';

/** What areas have to do with each other. */
export interface Shares {
  readonly pairs: readonly Pair[];
  readonly findings: readonly RawFinding[];
  /** By its key, what a side of which nothing is said lies along. */
  readonly unsaid: ReadonlyMap<string, Along>;
}

/** Ground that two areas share, and what is wrong between areas that lie near each other. */
export function* sharesOf(job: Job, results: readonly AreaResult[], memory: Memory): Generator<void, Shares> {
  const sides = results.map(({ area, layers }) => ({
    outline: area.outline,
    keptOut: outlinesOf(area),
    digLoops: layers.baseLoops
  }));
  const near = neighbours(sides);
  const pairs: Pair[] = [];
  const findings: RawFinding[] = [];
  const overlapping = new Set<string>();
  for (const [first, second] of near) {
    const [a, b] = byKey(results, first, second);
    const [one, other] = [results[a]!.area, results[b]!.area];
    const inputs: PairInputs = { first: sides[a]!, second: sides[b]! };
    const shared = yield* recall(memory, 'pair', [one.key, other.key], inputs, () => pairStage(inputs));
    if (shared.paved > 0 || shared.dug > 0) pairs.push({ areas: [first, second], ...shared });
    const faults = overlapFault(results[first]!.area, results[second]!.area, shared.paved, job.system);
    if (faults.length > 0) overlapping.add(`${first} ${second}`);
    findings.push(...faults);
    yield;
  }
  // While two areas overlap, their sides cannot lie along each other: the overlap is told, and no more.
  const apart = withSaid(near, results).filter(([first, second]) => !overlapping.has(`${first} ${second}`));
  const beside = yield* besideEachOther(job, results, apart, memory);
  return {
    pairs,
    findings: [...findings, ...beside.flatMap(neighbourFaults)],
    unsaid: new Map(beside.flatMap(unsaidAlong))
  };
}

/** How the sides of areas lie along their neighbours, each pair both ways. */
function* besideEachOther(
  job: Job,
  results: readonly AreaResult[],
  pairs: readonly (readonly [number, number])[],
  memory: Memory
): Generator<void, Beside[]> {
  const keys = new Set(results.map(({ area }) => area.key));
  const known = (key: string): boolean => keys.has(key);
  const beside: Beside[] = [];
  for (const pair of pairs) {
    const [first, second] = byKey(results, ...pair).map(index => results[index]!.area) as [Area, Area];
    const inputs: NeighbourInputs = { first: borderOf(first), second: borderOf(second) };
    const along = yield* recall(memory, 'neighbours', [first.key, second.key], inputs, () => neighbourStage(inputs));
    const { system } = job;
    beside.push(
      { area: first, other: second, sides: along.first, known, system },
      { area: second, other: first, sides: along.second, known, system }
    );
    yield;
  }
  return beside;
}

function borderOf({ outline, keptOut }: Area): NeighbourSide {
  return { outline, keptOut: keptOut.map(shape => shape.outline) };
}

/** Pairs that lie near each other, and those of which one is said to meet the other. */
function withSaid(near: readonly [number, number][], results: readonly AreaResult[]): [number, number][] {
  const indices = new Map(results.map(({ area }, index) => [area.key, index]));
  const pairs = new Map(near.map(pair => [pair.join(' '), pair]));
  results.forEach(({ area }, index) => {
    for (const { meets } of area.edges) {
      const other = meets?.area === undefined ? undefined : indices.get(meets.area);
      if (other === undefined || other === index) continue;
      const pair = inOrder(index, other);
      pairs.set(pair.join(' '), pair);
    }
  });
  return [...pairs.values()];
}

/** By key, so that an area moved in the text changes nothing. */
function byKey(results: readonly AreaResult[], first: number, second: number): [number, number] {
  return results[first]!.area.key < results[second]!.area.key ? [first, second] : [second, first];
}
