import type { IntegerSolver } from '../buying/integer-solver.ts';
import { orderOfJob } from '../buying/order-of-job.ts';
import { numbersTooLarge } from '../findings/area-faults.ts';
import type { RawFinding } from '../findings/finding.ts';
import { finishNotSaid, groundNotSaid, nothingToDig } from '../findings/layer-faults.ts';
import { withEdgeFixes } from '../findings/edge-fixes.ts';
import { edgingFaults, notLaid, startFaults } from '../findings/laying-faults.ts';
import { outlineFaults } from '../findings/outline-faults.ts';
import {
  gatesOverNothing,
  groundFaults,
  groundNotMeasured,
  measuredNowhere,
  softSpotsOutside
} from '../findings/site-faults.ts';
import { judgeArea, judgeSite, type Judgement } from '../findings/judge.ts';
import type { Judged } from '../findings/members/member.ts';
import { memberOf } from '../findings/members/members.ts';
import type { Area, Job } from '../job/job.ts';
import type { Rule } from '../job/rule.ts';
import type { Session } from '../session/session.ts';
import { areaQuantities } from './area-quantities.ts';
import type { AreaLaid, AreaResult, Pair } from './area-result.ts';
import { sharesOf } from './beside.ts';
import type { AreaQuantities, JobNumbers, Working } from './contract.ts';
import { type Memory, recall } from './job-memory.ts';
import { areaToLay } from './area-to-lay.ts';
import { cutsStage } from './cuts-stage.ts';
import { type LaidTotals, layingStage, withCuts } from './laying-stage.ts';
import { nestingStage } from './nesting-stage.ts';
import { kindOfUnit, unitsOf } from './units-of-area.ts';
import { type AreaBeyond, edgeHeightsStage } from './edge-heights-stage.ts';
import { doorsOf, siteToJudge } from './judged-site.ts';
import { layersInputs, layersStage } from './layers-stage.ts';
import { type LevelsInputs, type LevelsNumbers, levelsStage } from './levels-stage.ts';
import { outlineInputs, outlineStage } from './outline-stage.ts';
import { movedTo, withAreasAt } from './page.ts';
import type { SiteQuantities } from './site-contract.ts';
import { type Site, type SiteAsked, siteOf } from './site-of-job.ts';
import { wholeJob, type WholeJob } from './whole-job.ts';

/**
 * All numbers of a job, from the memory where nothing they are taken from has changed. Pauses at each `yield`, so that
 * the caller can turn to something else or drop the rest. `scope` keeps jobs apart in the memory: the file, if two files
 * can hold jobs of one name; `logScope` keeps apart what hangs on the log. A solver is lent where the caller waits for
 * the cheapest order; an editor does not.
 */
export function* computeJob(
  job: Job,
  session: Session,
  scope: string = job.key,
  solver?: IntegerSolver,
  logScope: string = scope
): Generator<void, JobNumbers> {
  const memory = { session, scope, logScope, nests: true };
  const worked = yield* workedOut(job, EVERYTHING, memory);
  const { missing, pairs, findings, site } = worked;
  const whole = worked.whole ?? (yield* wholeJob(job, worked.results, pairs, memory));
  const order = yield* orderOfJob(job, worked.results, whole, memory, solver);
  const results: AreaResult[] = [];
  for (const result of worked.results) results.push({ ...result, levels: yield* levelsOf(job, result, memory) });
  session.forgetOthers(scope, stillThere(job));
  const areas = results.map(areaQuantities);
  for (const area of areas) session.keepLastGood(scope, area.id, area);
  const lastGood = missing.flatMap(key => (session.lastGood(scope, key) as AreaQuantities | undefined) ?? []);
  let workings: Record<string, Working> | undefined;
  return {
    quantities: {
      id: job.key,
      title: job.title,
      ...(job.currency === undefined ? {} : { currency: job.currency }),
      rulebooks: job.rulebooks.map(({ id, edition }) => ({ id, ...(edition === undefined ? {} : { edition }) })),
      complete: missing.length === 0,
      missing,
      points: job.points.map(({ key, name, x, y, fixed }) => ({ id: key, name, x, y, fixed })),
      areas,
      dig: whole.dig,
      totals: whole.totals,
      materials: whole.materials,
      units: whole.units,
      edging: whole.edging,
      ...site.quantities,
      ...order.quantities
    },
    // An editor asks for one or two of them, after an edit for none.
    get workings() {
      workings ??= Object.assign(workingsOf(results, whole, site), order.workings());
      return workings;
    },
    findings,
    lastGood,
    laid: results.map(({ area, laid }) => ({ area, ...(laid === undefined ? {} : { laid }) })),
    ...(whole.nestedTogether === undefined ? {} : { nestedTogether: whole.nestedTogether })
  };
}

/** What {@link computeJob} finds, and no more is worked out than that needs: mostly no cut pieces are nested. */
export function* judgeJob(job: Job, session: Session, scope: string): Generator<void, JudgedJob> {
  const asked = askedByRules(job);
  const nests = asked.units || looksAt(job.rules, 'nested');
  const { findings, missing } = yield* workedOut(job, asked, { session, scope, nests });
  return { findings, missing };
}

/** What takes time and no finding may hang on. */
interface Asked extends SiteAsked {
  /** How many units are to be bought, which hangs on how the cut pieces of all areas come out of them. */
  readonly units: boolean;
}

const EVERYTHING: Asked = { water: true, routes: true, units: true };

function askedByRules({ rules, drains, routes, log }: Job): Asked {
  const concerns = new Set(rules.flatMap(rule => rule.cases.map(({ concerns: kind }) => kind)));
  return {
    water: looksAt(rules, 'drained') || (drains.length > 0 && concerns.has('drain')),
    routes: routes.length > 0 && concerns.has('route'),
    units: concerns.has('delivery') && log.some(entry => entry.kind === 'delivered' && entry.measure === '')
  };
}

interface JudgedJob {
  readonly findings: readonly RawFinding[];
  /** Keys of what has no numbers. */
  readonly missing: readonly string[];
}

function looksAt(rules: readonly Rule[], what: 'nested' | 'drained'): boolean {
  return rules.some(({ cases }) =>
    cases.some(({ concerns, reads }) => reads.some(name => memberOf(concerns, name)?.[what] === true))
  );
}

interface WorkedOut extends JudgedJob {
  readonly results: readonly AreaResult[];
  readonly pairs: readonly Pair[];
  readonly site: Site;
  /** Where it was asked for. */
  readonly whole?: WholeJob;
}

function* workedOut(job: Job, asked: Asked, memory: Memory): Generator<void, WorkedOut> {
  const findings: RawFinding[] = [];
  const results: AreaResult[] = [];
  const missing = job.missing.map(({ key }) => key);
  const areas = new Map(job.areas.map(area => [area.key, area]));
  for (const now of job.areas) {
    const area = memory.session.asBefore(memory.scope, now.key, now);
    const result = yield* areaResult(job, area, areas, memory, findings);
    if (result === undefined) missing.push(area.key);
    else results.push(result);
    if (result?.isLaid === false) missing.push(`${area.key}/laying`);
    yield;
  }
  const dug = results.map(({ area, layers }) => ({ area, deepest: layers.dig.deepest }));
  findings.push(...groundNotSaid(dug, job.system), ...groundFaults(job));
  const digs = results.map(({ area, layers }) => ({ area, beyond: layers.beyond }));
  findings.push(...groundNotMeasured(digs, job.system));
  const shares = yield* sharesOf(job, results, memory);
  const whole = asked.units ? yield* wholeJob(job, results, shares.pairs, memory) : undefined;
  const site = yield* siteOf(job, results, asked, whole?.units ?? [], memory);
  const known = results.map(({ area }) => area);
  // What lies in no area may lie in one that has an error.
  if (missing.every(key => key.endsWith('/laying')))
    findings.push(...measuredNowhere(job, known), ...gatesOverNothing(site.quantities.gates ?? [], job, known));
  const seen = seenByRules(site.quantities, askedByRules(job));
  const rules = rulesAsBefore(job, memory);
  for (const result of results)
    findings.push(...(yield* judged(job, rules, result, seen, memory, result === results[0])));
  findings.push(...(yield* judgedSite(job, rules, seen, memory)));
  const told = findings.map(finding => withEdgeFixes(finding, job.areas, shares.unsaid));
  return {
    results,
    missing,
    pairs: shares.pairs,
    site,
    findings: [...told, ...shares.findings],
    ...(whole === undefined ? {} : { whole })
  };
}

/** What no rule looks at is left out, so that it makes no difference to what was judged before. */
function seenByRules({ water, drains, routes, ...others }: SiteQuantities, asked: Asked): SiteQuantities {
  return {
    ...others,
    ...(asked.water && water !== undefined ? { water } : {}),
    ...(asked.water && drains !== undefined ? { drains } : {}),
    ...(asked.routes && routes !== undefined ? { routes } : {})
  };
}

/** Heights at the places of an area that a sheet shows: no finding looks at them. */
function* levelsOf(job: Job, { area, layers }: AreaResult, memory: Memory): Generator<void, LevelsNumbers> {
  const { traffic: _traffic, start: _start, ...layered } = area;
  const inputs: LevelsInputs = {
    area: layered,
    names: area.edges.map(({ name }) => name),
    // By name: where in the text they stand changes nothing.
    points: job.points.map(({ name, x, y }) => ({ name, x, y })).sort((a, b) => (a.name < b.name ? -1 : 1)),
    sheet: job.levelSheet,
    overhangs: layers.overhangs.map(({ overhang }) => overhang)
  };
  return yield* recall(memory, 'levels', [area.key], inputs, () => levelsStage(inputs));
}

function stillThere(job: Job): (thing: string) => boolean {
  const keys = new Set([job, ...job.areas, ...job.missing, ...job.rules].map(({ key }) => key));
  return thing => thing.split('\n').every(key => keys.has(key));
}

function* areaResult(
  job: Job,
  area: Area,
  areas: ReadonlyMap<string, Area>,
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
  const { laid, known } = yield* laidAndCut(job, area, areas, memory, findings);
  const totals = laid && withCuts(laid.totals, laid.cuts.units, laid.nested);
  const layered = layersInputs(area, shapes, totals, job.buying);
  const layers = yield* recall(memory, 'layers', [area.key], layered, () => layersStage(layered));
  if (layers.overflowed) {
    findings.push(numbersTooLarge(area));
    return undefined;
  }
  findings.push(...nothingToDig(area, layers.groundAboveLayers, job.system));
  findings.push(...finishNotSaid(area, layers.dig.deepest, job));
  findings.push(...softSpotsOutside(area, layers));
  const beyond = area.edges.map(({ meets }) => beyondSide(areas.get(meets?.area ?? '')));
  const { outline: shape, edges: sides, finish, site } = area;
  const edges = { area: { outline: shape, edges: sides, site, ...(finish === undefined ? {} : { finish }) }, beyond };
  const edgeHeights = yield* recall(memory, 'edges', [area.key], edges, () => edgeHeightsStage(edges));
  return { area, shapes, layers, edgeHeights, ...(laid === undefined ? {} : { laid }), isLaid: known };
}

function beyondSide(area: Area | undefined): AreaBeyond | undefined {
  const surface = area?.finish?.surface;
  return surface && { surface, outline: area!.outline };
}

/** What is laid in an area and how it is cut, where its units could be laid. */
interface LaidAndCut {
  readonly laid?: AreaLaid & { readonly totals: LaidTotals };
  readonly known: boolean;
}

function* laidAndCut(
  job: Job,
  area: Area,
  areas: ReadonlyMap<string, Area>,
  memory: Memory,
  findings: RawFinding[]
): Generator<void, LaidAndCut> {
  const inputs = areaToLay(area, areas);
  if (inputs === undefined) return { known: true };
  const laid = yield* recall(memory, 'laying', [area.key], inputs, () => layingStage(inputs));
  if (!('totals' in laid)) {
    findings.push(notLaid(area, laid, job.system));
    return { known: false };
  }
  findings.push(...startFaults(area, inputs, laid.area, job.system), ...edgingFaults(area, laid.area, job.system));
  const cutsInputs = { laid: laid.area, shapes: unitsOf(area).map(kindOfUnit) };
  const cuts = yield* recall(memory, 'cuts', [area.key], cutsInputs, () => cutsStage(cutsInputs));
  const { sawCut } = job.buying;
  const nestingInputs = { lists: [cuts.list], shapes: cutsInputs.shapes, sawCut: sawCut.value };
  const nested = memory.nests
    ? yield* recall(memory, 'nesting', [area.key], nestingInputs, () => nestingStage(nestingInputs))
    : undefined;
  const { area: parts, totals } = laid;
  return { known: true, laid: { laid: parts, totals, cuts, ...(nested === undefined ? {} : { nested }) } };
}

function* judged(
  job: Job,
  rules: readonly Rule[],
  { area, shapes, layers, edgeHeights }: AreaResult,
  { water: waters }: SiteQuantities,
  memory: Memory,
  isFirst: boolean
): Generator<void, readonly RawFinding[]> {
  const { system, usualStone } = job;
  const water = waters?.find(each => each.area === area.key);
  const judgedArea: Judged = {
    system,
    usualStone,
    site: area.site,
    area,
    shapes,
    layers,
    edgeHeights,
    ...(water === undefined ? {} : { water }),
    doors: doorsOf(job)
  };
  const inputs = { judgedArea, rules, isFirst };
  const judgement = yield* recall(memory, 'rules', [area.key], inputs, (before: Judgement | undefined) => {
    const result = judgeArea(judgedArea, rules, isFirst, before);
    memory.session.count('judgements', result.judged);
    return result;
  });
  return judgement.findings;
}

function* judgedSite(
  job: Job,
  rules: readonly Rule[],
  quantities: SiteQuantities,
  memory: Memory
): Generator<void, readonly RawFinding[]> {
  const site = siteToJudge(job, quantities);
  const judgement = yield* recall(memory, 'site-rules', [job.key], { site, rules }, (before: Judgement | undefined) => {
    const result = judgeSite(site, rules, before);
    memory.session.count('judgements', result.judged);
    return result;
  });
  return judgement.findings;
}

/** Rules as they were before, where nothing in them has changed: what they came to is then known at a glance. */
function rulesAsBefore({ rules }: Job, { session, scope }: Memory): readonly Rule[] {
  return rules.map(rule => session.asBefore(scope, rule.key, rule));
}

function workingsOf(results: readonly AreaResult[], whole: WholeJob, site: Site): Record<string, Working> {
  const workings: Record<string, Working> = { ...site.workings };
  results.forEach(({ shapes, layers, levels }, index) => {
    const all = { ...shapes.workings, ...layers.workings, ...levels?.workings };
    Object.assign(workings, movedTo(`/areas/${index}`, all));
  });
  return Object.assign(workings, withAreasAt(whole.order, whole.workings()));
}
