import { numbersTooLarge, tooManyUnits } from '../findings/area-faults.ts';
import type { RawFinding } from '../findings/finding.ts';
import { finishNotSaid, groundNotSaid, nothingToDig } from '../findings/layer-faults.ts';
import { neighbourFaults } from '../findings/neighbour-faults.ts';
import { outlineFaults } from '../findings/outline-faults.ts';
import { overlapFault } from '../findings/pair-faults.ts';
import { judgeArea } from '../findings/rules-table.ts';
import { type Ground, type Loop, MOST_UNITS, reversedLoop, sharedWithAny, signedAreaOf } from '../geometry/index.ts';
import type { Area, Job } from '../job/job.ts';
import type { Session, Slot, Stage } from '../session/session.ts';
import { areaQuantities } from './area-quantities.ts';
import type { JobNumbers, Working } from './contract.ts';
import { type AreaTotals, type JobInputs, type JobResult, jobStage, type Shared } from './job-stage.ts';
import { type Laid, layingInputs, layingStage, tooManyFor } from './laying-stage.ts';
import { layersInputs, type LayersNumbers, layersStage } from './layers-stage.ts';
import { type NeighbourInputs, type NeighbourSide, neighbourStage } from './neighbour-stage.ts';
import { outlineInputs, type OutlineNumbers, outlineStage } from './outline-stage.ts';
import { movedTo, withAreasAt } from './page.ts';
import { neighbours, type PairInputs, type PairNumbers, pairStage } from './pair-stage.ts';

/** Two areas, by index, that share ground. */
type Pair = PairNumbers & { readonly areas: readonly [number, number] };

/** All that one area came to. */
interface AreaResult {
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  readonly laid: boolean;
}

interface Shares {
  readonly pairs: readonly Pair[];
  readonly findings: readonly RawFinding[];
}

/**
 * All numbers of a job, from the memory where nothing they are taken from has changed. Pauses at each `yield`, so that
 * the caller can turn to something else or drop the rest. `scope` keeps jobs apart in the memory: the file, if two files
 * can hold jobs of one name.
 */
export function* computeJob(job: Job, session: Session, scope: string = job.key): Generator<void, JobNumbers> {
  const memory = { session, scope, lays: true };
  const { results, missing, pairs, findings } = yield* workedOut(job, memory);
  const whole = yield* wholeJob(job, results, pairs, memory);
  session.forgetOthers(scope, stillThere(job));
  const areas = results.map(({ area, shapes, layers }) => areaQuantities(area, shapes, layers));
  return {
    quantities: {
      id: job.key,
      title: job.title,
      ...(job.currency === undefined ? {} : { currency: job.currency }),
      complete: missing.length === 0,
      missing,
      points: job.points.map(({ key, name, x, y }) => ({ id: key, name, x, y, fixed: true })),
      areas,
      dig: whole.dig,
      totals: whole.totals,
      materials: whole.materials,
      units: whole.units,
      edging: whole.edging
    },
    workings: workingsOf(results, whole),
    findings
  };
}

/** What {@link computeJob} finds, and no more is worked out than that needs: no units are laid. */
export function* judgeJob(job: Job, session: Session, scope: string): Generator<void, readonly RawFinding[]> {
  const { findings } = yield* workedOut(job, { session, scope, lays: false });
  return findings;
}

interface WorkedOut {
  readonly results: readonly AreaResult[];
  readonly missing: readonly string[];
  readonly pairs: readonly Pair[];
  readonly findings: readonly RawFinding[];
}

function* workedOut(job: Job, memory: Memory): Generator<void, WorkedOut> {
  const findings: RawFinding[] = [];
  const results: AreaResult[] = [];
  const missing = job.missing.map(({ key }) => key);
  for (const area of job.areas) {
    const result = yield* areaResult(job, area, memory, findings);
    if (result === undefined) missing.push(area.key);
    else results.push(result);
    if (result?.laid === false) missing.push(`${area.key}/laying`);
    yield;
  }
  const dug = results.map(({ area, layers }) => ({ area, deepest: layers.dig.deepest }));
  findings.push(...groundNotSaid(dug, job.system));
  const shares = yield* sharesOf(job, results, memory);
  for (const result of results) findings.push(...(yield* judged(job, result, memory)));
  return { results, missing, pairs: shares.pairs, findings: [...findings, ...shares.findings] };
}

/** The memory, as one job uses it. */
interface Memory {
  readonly session: Session;
  readonly scope: string;
  /** Units are laid; where only findings are wanted, that they could be laid is enough. */
  readonly lays: boolean;
}

function recall<T>(
  { session, scope }: Memory,
  stage: Stage,
  things: readonly string[],
  inputs: unknown,
  compute: () => Generator<void, T> | T
): Generator<void, T> {
  const slot: Slot = { scope, stage, thing: things.join('\n') };
  return session.recall(slot, inputs, compute);
}

function stillThere(job: Job): (thing: string) => boolean {
  const keys = new Set([job, ...job.areas, ...job.missing].map(({ key }) => key));
  return thing => thing.split('\n').every(key => keys.has(key));
}

function* areaResult(
  job: Job,
  area: Area,
  memory: Memory,
  findings: RawFinding[]
): Generator<void, AreaResult | undefined> {
  const inputs = outlineInputs(area, job.system);
  const outline = yield* recall(memory, 'outline', [area.key], inputs, () => {
    const { findings: faults, measurable } = outlineFaults(inputs);
    return { faults, shapes: measurable ? outlineStage(inputs) : undefined };
  });
  findings.push(...outline.faults);
  const { shapes } = outline;
  if (shapes === undefined) return undefined;
  const laid = yield* laidUnits(area, memory, findings);
  const layered = layersInputs(area, shapes, laid);
  const layers = yield* recall(memory, 'layers', [area.key], layered, () => layersStage(layered));
  if (layers.overflowed) {
    findings.push(numbersTooLarge(area));
    return undefined;
  }
  findings.push(...nothingToDig(area, layers.groundAboveLayers, job.system));
  findings.push(...finishNotSaid(area, layers.dig.deepest, job.system));
  return { area, shapes, layers, laid: laid !== undefined || area.paving === undefined };
}

function* laidUnits(area: Area, memory: Memory, findings: RawFinding[]): Generator<void, Laid | undefined> {
  const inputs = layingInputs(area);
  if (inputs === undefined) return undefined;
  const laid = memory.lays
    ? yield* recall(memory, 'laying', [area.key], inputs, () => layingStage(inputs))
    : tooManyFor(inputs);
  if (laid === undefined || !('tooMany' in laid)) return laid;
  findings.push(tooManyUnits(area, laid.tooMany, MOST_UNITS));
  return undefined;
}

function* sharesOf(job: Job, results: readonly AreaResult[], memory: Memory): Generator<void, Shares> {
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
  return { pairs, findings: [...findings, ...(yield* besideEachOther(job, results, apart, memory))] };
}

/** Whether sides lie along the areas that they are said to meet, and along no others. */
function* besideEachOther(
  job: Job,
  results: readonly AreaResult[],
  pairs: readonly (readonly [number, number])[],
  memory: Memory
): Generator<void, RawFinding[]> {
  const keys = new Set(results.map(({ area }) => area.key));
  const known = (key: string): boolean => keys.has(key);
  const findings: RawFinding[] = [];
  for (const pair of pairs) {
    const [first, second] = byKey(results, ...pair).map(index => results[index]!.area) as [Area, Area];
    const inputs: NeighbourInputs = { first: borderOf(first), second: borderOf(second) };
    const along = yield* recall(memory, 'neighbours', [first.key, second.key], inputs, () => neighbourStage(inputs));
    const { system } = job;
    findings.push(
      ...neighbourFaults({ area: first, other: second, sides: along.first, known, system }),
      ...neighbourFaults({ area: second, other: first, sides: along.second, known, system })
    );
    yield;
  }
  return findings;
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

function* wholeJob(
  job: Job,
  results: readonly AreaResult[],
  pairs: readonly Pair[],
  memory: Memory
): Generator<void, JobResult> {
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
      layers: layers.layers,
      ...(layers.laying === undefined ? {} : { laying: layers.laying }),
      edging: layers.edging,
      soil: { swell: area.site.soil.swell, density: area.site.soil.density },
      ...(shared.dug === undefined ? {} : { dug: ranked(shared.dug) }),
      ...(shared.paved === undefined ? {} : { paved: ranked(shared.paved) })
    });
  }
  const inputs: JobInputs = { key: job.key, areas };
  const result = yield* recall(memory, 'job', [job.key], inputs, () => jobStage(inputs));
  return { ...result, workings: withAreasAt(order, result.workings) };
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

function outlinesOf({ keptOut }: Area): readonly Loop[] {
  return keptOut.map(shape => shape.outline);
}

function anticlockwise(loop: Loop): Loop {
  return signedAreaOf(loop) < 0 ? reversedLoop(loop) : loop;
}

function inOrder(a: number, b: number): [number, number] {
  return a < b ? [a, b] : [b, a];
}

function* judged(job: Job, { area, shapes, layers }: AreaResult, memory: Memory): Generator<void, RawFinding[]> {
  const { outline: _outline, keptOut: _keptOut, start: _start, ...read } = area;
  const inputs = {
    system: job.system,
    countries: job.rules,
    area: read,
    overhangs: layers.overhangs.map(({ overhang }) => overhang),
    grossArea: shapes.area.grossArea,
    depth: layers.dig.deepest
  };
  return yield* recall(memory, 'rules', [area.key], inputs, () => judgeArea(inputs));
}

function workingsOf(results: readonly AreaResult[], whole: JobResult): Record<string, Working> {
  const workings: Record<string, Working> = {};
  results.forEach(({ shapes, layers }, index) => {
    Object.assign(workings, movedTo(`/areas/${index}`, { ...shapes.workings, ...layers.workings }));
  });
  return Object.assign(workings, whole.workings);
}
