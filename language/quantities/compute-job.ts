import { numbersTooLarge, tooManyUnits } from '../findings/area-faults.ts';
import type { RawFinding } from '../findings/finding.ts';
import { finishNotSaid, groundNotSaid, nothingToDig } from '../findings/layer-faults.ts';
import { neighbourFaults } from '../findings/neighbour-faults.ts';
import { outlineFaults } from '../findings/outline-faults.ts';
import { overlapFault } from '../findings/pair-faults.ts';
import { judgeArea } from '../findings/rules-table.ts';
import { MOST_UNITS } from '../geometry/index.ts';
import type { Area, Job } from '../job/job.ts';
import type { Session, Slot, Stage } from '../session/session.ts';
import { areaQuantities } from './area-quantities.ts';
import type { JobNumbers, Working } from './contract.ts';
import { type JobInputs, type JobResult, jobStage } from './job-stage.ts';
import { type Laid, layingInputs, layingStage, tooManyFor } from './laying-stage.ts';
import { layersInputs, type LayersNumbers, layersStage } from './layers-stage.ts';
import { neighbourStage } from './neighbour-stage.ts';
import { outlineInputs, type OutlineNumbers, outlineStage } from './outline-stage.ts';
import { movedTo, withAreasAt } from './page.ts';
import { neighbours, type PairInputs, pairStage } from './pair-stage.ts';


/** All that one area came to. */
interface AreaResult {
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  readonly laid: boolean;
}

interface Shares {
  readonly pairs: JobInputs['pairs'];
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
      totals: whole.totals
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
  readonly pairs: JobInputs['pairs'];
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
    keptOut: area.keptOut.map(shape => shape.outline),
    digLoops: layers.baseLoops
  }));
  const pairs: JobInputs['pairs'][number][] = [];
  const findings: RawFinding[] = [];
  for (const [first, second] of neighbours(sides)) {
    // By key, so that an area moved in the text changes nothing.
    const [a, b] = results[first]!.area.key < results[second]!.area.key ? [first, second] : [second, first];
    const [one, other] = [results[a]!.area, results[b]!.area];
    const inputs: PairInputs = { first: sides[a]!, second: sides[b]! };
    const shared = yield* recall(memory, 'pair', [one.key, other.key], inputs, () => pairStage(inputs));
    if (shared.paved > 0 || shared.dug > 0) pairs.push({ areas: [first, second], ...shared });
    findings.push(...overlapFault(results[first]!.area, results[second]!.area, shared.paved, job.system));
    yield;
  }
  return { pairs, findings };
}

function* wholeJob(
  job: Job,
  results: readonly AreaResult[],
  pairs: JobInputs['pairs'],
  memory: Memory
): Generator<void, JobResult> {
  const areas = results.map(({ area, shapes, layers }) => ({
    key: area.key,
    name: area.name,
    netArea: shapes.area.netArea,
    dig: layers.dig,
    soil: { swell: area.site.soil.swell, density: area.site.soil.density }
  }));
  // By key, so that an area moved in the text changes nothing; the pointers are led to its place in the list afterwards.
  const order = areas.map((_, index) => index).sort((a, b) => (areas[a]!.key < areas[b]!.key ? -1 : 1));
  const rank = new Map(order.map((index, at) => [index, at]));
  const ranked = pairs.map(pair => ({ ...pair, areas: inOrder(rank.get(pair.areas[0])!, rank.get(pair.areas[1])!) }));
  const inputs: JobInputs = {
    key: job.key,
    areas: order.map(index => areas[index]!),
    pairs: ranked.sort((a, b) => a.areas[0] - b.areas[0] || a.areas[1] - b.areas[1])
  };
  const result = yield* recall(memory, 'job', [job.key], inputs, () => jobStage(inputs));
  return { ...result, workings: withAreasAt(order, result.workings) };
}

function inOrder(a: number, b: number): [number, number] {
  return a < b ? [a, b] : [b, a];
}

function* judged(job: Job, { area, layers }: AreaResult, memory: Memory): Generator<void, RawFinding[]> {
  const { outline: _outline, keptOut: _keptOut, start: _start, ...read } = area;
  const inputs = {
    system: job.system,
    countries: job.rules,
    area: read,
    overhangs: layers.overhangs.map(({ overhang }) => overhang),
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
