// Times as ratios: the median of interleaved runs, printed, never a reason to fail.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { build } from 'esbuild';
import { circleLoop, cornerLoop, rectangleLoop } from '../../language/geometry/index.ts';
import { courseBond } from '../../language/laying/bonds/course-bond.ts';
import { layPattern } from '../../language/laying/bonds/lay-pattern.ts';
import { compareJobs, type Compared } from '../../language/comparing/compare.ts';
import { occurrencesIn } from '../../language/lowering/occurrences.ts';
import type { Job } from '../../language/job/job.ts';
import { drain, type Evaluation, Paving } from '../../language/paving.ts';
import type { SpecFiles } from '../../language/project.ts';
import { computeJob } from '../../language/quantities/compute-job.ts';
import { Session } from '../../language/session/session.ts';
import { comparisonSheet } from '../../language/views/comparison/comparison-sheet.ts';
import { lensesIn } from '../../language/views/lenses.ts';
import { patchBetween } from '../../language/views/live-plan/plan-patch.ts';
import type { LivePlan, PlanPatch } from '../../server/plan-protocol.ts';
import { applyPatch } from '../../extension/panel/plan/apply-patch.ts';
import { prepare } from '../../extension/panel/plan/prepared.ts';
import { sceneOf } from '../../extension/panel/plan/scene.ts';
import { fitted } from '../../extension/panel/plan/view.ts';
import { bondFields, patternOf } from '../laying/random-fields.ts';
import { clippedOneByOne } from './general-clip.ts';

/** The benchmark is run from the project's folder. */
const root = process.cwd();
const RUNS = 9;

/** Areas in a job of about a thousand lines. */
const LONG_JOB = 125;

/** Milliseconds of each contestant, run by run in turn, as medians. */
async function medians(contestants: Readonly<Record<string, () => unknown>>): Promise<Record<string, number>> {
  const times: Record<string, number[]> = {};
  for (let run = 0; run < RUNS; run++) {
    for (const [name, contest] of Object.entries(contestants)) {
      const started = performance.now();
      await contest();
      (times[name] ??= []).push(performance.now() - started);
    }
  }
  return Object.fromEntries(
    Object.entries(times).map(([name, all]) => [name, all.sort((a, b) => a - b)[(RUNS - 1) / 2]!])
  );
}

/** A language without a disk: all texts are set. */
function newPaving(): Paving {
  const files: SpecFiles = {
    resolve: (_, file) => file,
    read: () => Promise.resolve({ problem: 'missing' }),
    show: file => file
  };
  return new Paving(files);
}

function report(what: string, over: number, under: number, aim: string): void {
  console.log(`${what}: ${(over / under).toFixed(2)} (${over.toFixed(0)} ms to ${under.toFixed(0)} ms; ${aim})`);
}

async function checkAgainstParser(folder: string): Promise<void> {
  const parserOnly = path.join(folder, 'parser-only.cjs');
  await build({
    entryPoints: [path.join(root, 'tests/bench/parser-only.ts')],
    outfile: parserOnly,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    logLevel: 'error'
  });
  const run = (...args: string[]): unknown => execFileSync(process.execPath, args, { stdio: 'ignore' });
  for (const sample of ['terrace', 'drive', 'courtyard']) {
    const file = path.join(root, 'samples', `${sample}.paving`);
    const times = await medians({
      check: () => run(path.join(root, 'dist/paving.cjs'), 'check', file),
      parser: () => run(parserOnly, file)
    });
    report(
      `check of ${sample} to building the parser and reading it`,
      times['check']!,
      times['parser']!,
      'at most 1.50'
    );
  }
}

/** An edit in one area of many costs little more than reading the text again. */
async function editOfOneArea(): Promise<void> {
  const texts = [manyAreas(40, 0), manyAreas(40, 1)];
  const warm = newPaving();
  let turn = 0;
  const evaluated = (paving: Paving): void => {
    paving.setText('job.paving', texts[turn++ % 2]!);
    drain(paving.evaluate('job.paving'));
  };
  evaluated(warm);
  const times = await medians({ edit: () => evaluated(warm), whole: () => evaluated(newPaving()) });
  report(
    'an edit in one of 40 areas to working out all of them',
    times['edit']!,
    times['whole']!,
    'the less the better'
  );
}

/** From an edit in a long job to fresh findings and lenses, against reading the same text and finding its names alone. */
async function editOfLongJob(): Promise<void> {
  const texts = [manyAreas(LONG_JOB, 0), manyAreas(LONG_JOB, 1)];
  console.log(`a job of ${texts[0]!.split('\n').length.toLocaleString('en')} lines, ${LONG_JOB} areas:`);
  const warm = newPaving();
  let edits = 0;
  const edit = (): void => {
    warm.setText('job.paving', texts[edits++ % 2]!);
    const evaluation = drain(warm.evaluate('job.paving'))!;
    if (
      evaluation.findings.some(({ severity }) => severity === 'error') ||
      lensesIn(evaluation, 'job.paving').length !== LONG_JOB + 1
    )
      throw new Error('The long job is not as it should be.');
  };
  const reading = newPaving();
  let readings = 0;
  const readAndLink = (): void => {
    reading.setText('job.paving', texts[readings++ % 2]!);
    const { text, project } = reading.look('job.paving')!;
    if (occurrencesIn(text, project).some(({ declared }) => declared === undefined))
      throw new Error('A name leads nowhere.');
  };
  // The person has been typing for a while.
  for (let round = 0; round < 60; round++) [edit, readAndLink].forEach(run => run());
  const times = await medians({ edit, readAndLink });
  report('  an edit to reading and linking alone', times['edit']!, times['readAndLink']!, 'at most 2.00');
  await heapOfManyEdits(warm, edit);
}

/** From an edit in a job to its plan drawn anew, against the same edit to fresh findings and lenses. */
async function editToRedrawn(name: string, folder: string, file: string, edit: EditOfSample): Promise<void> {
  const texts = readdirSync(folder)
    .filter(one => one.endsWith('.paving'))
    .map((one): [string, string] => [one, readFileSync(path.join(folder, one), 'utf8')]);
  const started = (): ((then: (paving: Paving, evaluation: Evaluation) => void) => void) => {
    const paving = newPaving();
    for (const [one, text] of texts) paving.setText(one, text);
    const written = texts.find(([one]) => one === edit.file)![1];
    const changed = written.replace(edit.before, edit.after);
    if (changed === written) throw new Error(`${edit.file} does not read: ${edit.before}`);
    let edits = 0;
    return then => {
      paving.setText(edit.file, edits++ % 2 === 0 ? changed : written);
      then(paving, drain(paving.evaluate(file))!);
    };
  };
  const judged = started();
  const findings = (): void => judged((_, evaluation) => void lensesIn(evaluation, file));
  const planned = started();
  let shown: LivePlan | undefined;
  const redrawn = (): void =>
    planned((paving, evaluation) => {
      void lensesIn(evaluation, file);
      const plan = drain(paving.livePlan(evaluation))!;
      const patch = JSON.stringify(patchBetween(shown ?? plan, plan));
      shown = applyPatch(shown ?? plan, JSON.parse(patch) as PlanPatch);
      const prepared = prepare(shown);
      const view = fitted(prepared.extent, SCREEN, 0);
      if (sceneOf({ prepared, view, size: SCREEN, hidden: new Set(), asBefore: '' }).groups.length === 0)
        throw new Error('Nothing is drawn.');
    });
  for (let round = 0; round < 6; round++) [findings, redrawn].forEach(run => run());
  const times = await medians({ findings, redrawn });
  report(`  ${name}`, times['redrawn']!, times['findings']!, 'the less the better');
}

interface EditOfSample {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

/** Pixels of a panel beside a text. */
const SCREEN = { width: 700, height: 800 };

async function plansRedrawn(): Promise<void> {
  console.log('an edit to its plan drawn anew, to the same edit to findings:');
  const samples = path.join(root, 'samples');
  const wider = { file: 'terrace.paving', before: 'point B at (26 ft 4 in', after: 'point B at (26 ft 6 in' };
  await editToRedrawn('a terrace', samples, 'terrace.paving', wider);
  const farther = { file: 'site.paving', before: 'depth   = 27 m', after: 'depth   = 27.30 m' };
  await editToRedrawn('a square of 23,000 units', path.join(samples, 'square'), 'square.paving', farther);
}

/** What is still held after many edits, garbage collected. */
async function heapOfManyEdits(paving: Paving, edit: () => void): Promise<void> {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const heap = (): string => {
    collect();
    return `${(process.memoryUsage().heapUsed / 2 ** 20).toFixed(1)} MB, ${paving.session.size} results held`;
  };
  for (let edits = 0; edits < 50; edits++) edit();
  await new Promise(resolve => setTimeout(resolve, 0));
  console.log(`  heap after 50 edits: ${heap()}`);
  for (let edits = 50; edits < 500; edits++) edit();
  await new Promise(resolve => setTimeout(resolve, 0));
  console.log(`  heap after 500 edits: ${heap()}`);
}

function manyAreas(count: number, edit: number): string {
  const areas = Array.from({ length: count }, (_, index) => {
    const width = index === 7 ? 5 + edit : 5;
    return `area court-${index} {
  outline rectangle ${width} x 6 m, corner (${index * 10}, 0) m
  traffic foot
  paving block in running-bond, joints 3 mm
  base type-1 150 mm
  edges { all round meets house-wall }
}`;
  });
  return ['job "Many courts" { rules britain }', 'unit block { size 200 x 100 x 60 mm }', ...areas].join('\n\n');
}

/** Five hundred rules over a hundred areas, against the numbers of these areas alone: kept by all, and broken by all. */
async function manyRules(): Promise<void> {
  const areas = manyAreas(100, 0).replace('rules britain', '');
  const jobOf = (least: number): Job => {
    const rules = Array.from({ length: 500 }, (_, index) => ruleAskingFor(index, least + (index % 50)));
    const paving = newPaving();
    paving.setText('job.paving', [areas, ...rules].join('\n'));
    return drain(paving.evaluate('job.paving', 'findings'))!.job!;
  };
  const [kept, broken] = [jobOf(100), jobOf(200)];
  const bare: Job = { ...kept, rules: [] };
  if (kept.rules.length !== 500) throw new Error('The rules are not as they should be.');
  const times = await medians({
    numbers: () => drain(computeJob(bare, new Session())),
    kept: () => drain(computeJob(kept, new Session())),
    broken: () => drain(computeJob(broken, new Session()))
  });
  const numbers = times['numbers']!;
  const what = 'to the numbers of these areas';
  report(`judging 500 rules over 100 areas ${what}`, times['kept']! - numbers, numbers, 'below 1.00');
  report(`the same with every rule broken everywhere ${what}`, times['broken']! - numbers, numbers, 'no aim');
}

/** A hundred jobs, each edited once, compared with their prices between two revisions, against their quantities in both. */
async function manyComparisons(): Promise<void> {
  const count = 100;
  const texts = Array.from(
    { length: count },
    (_, index) => [jobAtRevision(index, 0), jobAtRevision(index, 1)] as const
  );
  const load = (paving: Paving): Paving => {
    for (const [index, [older, newer]] of texts.entries()) {
      paving.setText(`before/${index}.paving`, older);
      paving.setText(`after/${index}.paving`, newer);
    }
    return paving;
  };
  const compared = (paving: Paving, file: string): Compared => {
    const evaluation = drain(paving.evaluate(file))!;
    return { evaluation, look: paving.look(file)!, priced: drain(paving.priced(evaluation))! };
  };
  const compare = (): void => {
    const paving = load(newPaving());
    for (let index = 0; index < count; index++) {
      const [before, after] = ['before', 'after'].map(side => compared(paving, `${side}/${index}.paving`));
      const comparison = compareJobs(before!, after!);
      const sheet = comparisonSheet({ title: 'Court', between: 'one to another', comparison, system: 'metric' });
      if (comparison.edits.length !== 1 || sheet.sections.length < 3)
        throw new Error('The comparison is not as it should be.');
    }
  };
  const quantities = (): void => {
    const paving = load(newPaving());
    for (let index = 0; index < count; index++)
      for (const side of ['before', 'after']) drain(paving.evaluate(`${side}/${index}.paving`));
  };
  [compare, quantities].forEach(run => run());
  const times = await medians({ compare, quantities });
  const what = `comparing ${count} jobs at two revisions to their quantities at both`;
  report(what, times['compare']!, times['quantities']!, 'at most 1.50');
}

function jobAtRevision(index: number, revision: number): string {
  return `job "Court ${index}" { rules britain, currency GBP, labour 24 GBP per hour, margin 18 % }
unit block { size 200 x 100 x 60 mm }
price type-1 { loose for 21 GBP per tonne }
price block { piece for 0.60 GBP }
area court {
  outline rectangle ${4 + (index % 7) + revision} x 6 m
  traffic foot
  paving block in running-bond, joints 3 mm
  base type-1 150 mm
  edges { all round meets lawn, edging spiked-strip }
}
area path {
  outline rectangle 1.2 x ${5 + (index % 5)} m, corner (20, 0) m
  traffic foot
  paving block in stack-bond, joints 3 mm
  base type-1 100 mm
  edges { all round meets lawn, edging spiked-strip }
}`;
}

function ruleAskingFor(index: number, least: number): string {
  return `rule rule-${index} {
  concerns area
  when     traffic is foot or soil is clay
  needs    base at least ${least} mm when perimeter more than ${index % 9} m
  says     "The base of " area " is " missing " too thin: " needed "."
  fix      base to needed
  cites    common-practice
}`;
}

async function layingGrowth(): Promise<void> {
  const laid = (metres: number): unknown =>
    drain(
      layPattern(
        { outer: rectangleLoop(metres, metres, { x: 0, y: 0 }, 0.3), holes: [] },
        courseBond(
          { origin: { x: 0, y: 0 }, direction: 0, mirrored: false },
          { key: 'unit:block', length: 0.2, width: 0.1 },
          { along: 0.003, across: 0.003 },
          0.5
        )
      )
    );
  laid(10);
  const times = await medians({ small: () => laid(15), large: () => laid(33.5) });
  report('laying five times the units', times['large']!, times['small']!, 'about 2.24: the border grows, not the area');
}

/** A field of 100,000 units with every cut shape and joint, against a general library's clip of each unit by itself. */
async function layingAgainstGeneralClip(): Promise<void> {
  const corners = [
    [0, 0],
    [40, 0],
    [40, 50],
    [20, 50],
    [20, 85],
    [0, 85]
  ] as const;
  const region = {
    outer: cornerLoop(corners.map(([x, y]) => ({ x, y }))),
    holes: [
      circleLoop({ x: 10, y: 10 }, 3),
      rectangleLoop(3, 4, { x: 25, y: 20 }, 0.4),
      circleLoop({ x: 10, y: 60 }, 2)
    ]
  };
  const keptOut = region.holes.map((outline, index) => ({ key: `box:${index}`, outline }));
  const around = { outline: region.outer, keptOut, insets: [], borders: [], bands: [] };
  const fields = await bondFields();
  for (const bond of ['running-bond', 'herringbone-90']) {
    const start = { whole: [], equalCuts: false, turned: 0.3 };
    const pattern = patternOf({ ...around, field: { ...fields.get(bond)!, start } });
    const laid = drain(layPattern(region, pattern));
    if ('tooMany' in laid) throw new Error('The field is not as it should be.');
    const units = laid.wholes.reduce((sum, { count }) => sum + count, laid.cuts.length);
    const times = await medians({
      clipped: () => clippedOneByOne(region, pattern),
      laid: () => drain(layPattern(region, pattern))
    });
    const what = `${units.toLocaleString('en')} units in ${bond}, each clipped by a general library, to laying them`;
    report(what, times['clipped']!, times['laid']!, 'at least 10, better 30');
  }
}

const folder = mkdtempSync(path.join(tmpdir(), 'paving-bench-'));
try {
  writeFileSync(path.join(folder, 'package.json'), '{}');
  await checkAgainstParser(folder);
  await editOfOneArea();
  await editOfLongJob();
  await manyRules();
  await manyComparisons();
  await plansRedrawn();
  await layingGrowth();
  await layingAgainstGeneralClip();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
