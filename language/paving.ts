import type { IntegerSolver } from './buying/integer-solver.ts';
import { isKnownName } from './lowering/other-names.ts';
import { exampleFindings } from './examples.ts';
import { placed } from './findings/placed.ts';
import type { AcceptedFinding, Finding, Place, RawFinding } from './findings/finding.ts';
import { priceBelowNought, takesOff } from './findings/price-below-nought.ts';
import { pricesMissing, pricesWithoutDay } from './findings/prices-missing.ts';
import { pricesPast } from './findings/prices-past.ts';
import { setAside } from './findings/set-aside.ts';
import { toldOnce } from './findings/told-once.ts';
import type { Job, Key } from './job/job.ts';
import { lower, type Lowered } from './lowering/lower.ts';
import type { SpecText } from './lowering/names.ts';
import type { Project } from './lowering/project.ts';
import type { Use } from './lowering/uses.ts';
import type { WrittenAmounts } from './lowering/written-amounts.ts';
import { MOST_VARIANTS } from './lowering/variants.ts';
import { pathFrom } from './path-from.ts';
import { errorOfText, type JobFigures, type ShownFigures } from './job-figures.ts';
import { type PricedJob, pricedJob, scopeOfPrice } from './priced-job.ts';
import { gather, type Gathered, type ReadProblem, type SpecFiles, type UseProblem } from './project.ts';
import { computeJob, judgeJob } from './quantities/compute-job.ts';
import type { JobNumbers } from './quantities/contract.ts';
import type { Schedule } from './schedule/contract.ts';
import { doneOutOfTurn } from './schedule/done-out-of-turn.ts';
import { scheduleOfJob } from './schedule/schedule-of-job.ts';
import { drain, Session } from './session/session.ts';
import { nearest } from './syntax/nearest.ts';
import { createParse, type Parse } from './syntax/parse.ts';
import { ShippedTexts } from './shipped-texts.ts';
import type { LivePlan } from './views/live-plan/live-plan.ts';
import { livePlanOf, type WhyNot } from './views/live-plan/live-plan-of.ts';
import { asWritten, readVariants, type ReadVariant, type VariantEvaluation, variantFaults } from './variants.ts';
import { Texts } from './texts.ts';

/** What one file comes to, with everything that it uses. */
export interface Evaluation {
  readonly file: string;
  /** Absent for a library, a file without `job`. */
  readonly job?: Job;
  readonly numbers?: JobNumbers;
  /** By file as in `texts`, then by place. */
  readonly findings: readonly Finding[];
  /** Findings that someone answers for: shown only where they are asked for. */
  readonly accepted: readonly AcceptedFinding[];
  readonly places: ReadonlyMap<Key, Place>;
  /** What every quantity in the texts comes to, where it stands. */
  readonly amounts: WrittenAmounts;
  /** The file itself first, then all it uses; `file` as shown. */
  readonly texts: readonly { readonly file: string; readonly text: string }[];
  /** Look-ups of names, a count of work. */
  readonly lookUps: number;
}

/** A file as it stands, with all it uses, as read: for what an editor asks of a text. */
export interface Look {
  readonly text: SpecText;
  readonly project: Project;
}

/** What a caller needs: findings alone, or numbers as well. */
export type Need = 'findings' | 'numbers';

/** A text that is read in the place of a file's own. */
interface Instead {
  readonly file: string;
  readonly spec: SpecText;
}

/**
 * The language as a whole, for the command line and the editor alike: keeps the texts, leads each file through parsing,
 * lowering, numbers and findings, and remembers what did not change.
 */
export class Paving {
  readonly session = new Session();
  private readonly files: SpecFiles;
  private readonly today: () => string;
  /** Reads a text that stands in no file, to see what a change would come to. */
  readonly parse: Parse = createParse(isKnownName);
  private readonly texts: Texts;
  private readonly shippedTexts = new ShippedTexts(this.parse, false);
  private tries = 0;
  private variantsParsed = 0;
  private solver: IntegerSolver | undefined;

  /** `today` tells the day, `2027-06-30`, after which nothing is set aside any more; without it no day passes. */
  constructor(files: SpecFiles, today = (): string => '') {
    this.files = files;
    this.today = today;
    this.texts = new Texts(files, this.parse);
  }

  /** From now on orders that items share are searched with it: for who waits for them, so not for an editor. */
  lendSolver(solver: IntegerSolver): void {
    this.solver = solver;
  }

  /** The text of a file as it stands in an editor; it counts instead of the file's own. */
  setText(file: string, text: string): void {
    this.texts.set(file, text);
  }

  /** Drops a file's text, so that it is read again when it is next wanted. */
  forget(file: string): void {
    this.texts.drop(file);
    for (const scope of [file, scopeOfTries(file)]) {
      this.session.forget(scope);
      this.session.forget(scopeOfExamples(scope));
      this.session.forget(scopeOfReadVariants(scope));
    }
    this.session.forget(scopeOfPrice(file));
    this.session.forget(scopeOfPlan(file));
    this.forgetVariants(file, 0);
  }

  /** Lets go of files that none of `mains` leads to. */
  forgetUnreached(mains: readonly string[]): void {
    this.texts.dropUnreached(mains);
  }

  /** Whether the file, or why it can't be read, is at hand. */
  knows(file: string): boolean {
    return this.texts.knows(file);
  }

  /** Files in a folder, at any depth, that are at hand, or why they can't be read. */
  knownBelow(folder: string): string[] {
    return this.texts.below(folder);
  }

  /** Why a file could not be read; undefined when it was, or was never wanted. */
  problemOf(file: string): ReadProblem | undefined {
    return this.texts.problemOf(file);
  }

  /** Reads a file and all it uses, as far as they are not at hand. */
  load(file: string): Promise<void> {
    return this.texts.load(file);
  }

  /** The files that a loaded file leads to through `use`; itself first. */
  filesOf(file: string): string[] {
    return [...this.texts.reachedFrom(file)];
  }

  /** The same as of when each file was last looked into: typing is told to those who use a file, and costs nothing. */
  lastFilesOf(file: string): string[] {
    return [...this.texts.lastReachedFrom(file)];
  }

  /**
   * Works out a loaded file, in steps; undefined when it could not be read (see `problemOf`). Where findings alone are
   * needed, numbers are left out; the findings are the same.
   */
  *evaluate(file: string, need: Need = 'numbers'): Generator<void, Evaluation | undefined> {
    const gathered = this.gathered(file);
    return gathered && (yield* this.workedOut(file, gathered, need, file));
  }

  /**
   * What a loaded file would come to, without numbers, if one of its files read otherwise. The file stays as it is; what
   * was worked out is remembered for the next try.
   */
  *tryOut(file: string, changed: string, text: string): Generator<void, Evaluation | undefined> {
    this.tries++;
    const spec = { file: this.files.show(changed), parsed: this.parse(text) };
    yield;
    const gathered = this.gathered(file, { instead: { file: changed, spec } });
    return gathered && (yield* this.workedOut(file, gathered, 'findings', scopeOfTries(file)));
  }

  /**
   * What a loaded file comes to as each of its sound variants has it, with its price; the file itself stays as it is. None
   * where it could not be read.
   */
  *variants(file: string): Generator<void, VariantEvaluation[]> {
    const gathered = this.gathered(file);
    if (gathered === undefined) return [];
    const projects = yield* this.readVariants(gathered.project, file);
    const found: VariantEvaluation[] = [];
    for (const [index, variant] of projects.entries()) {
      const scope = scopeOfVariant(file, index);
      const instead = { project: variant.project, findings: [] };
      const evaluation = yield* this.workedOut(file, instead, 'numbers', scope);
      const priced = yield* this.pricedIn(scope, evaluation);
      const { key, name } = variant;
      const findings = asWritten(evaluation.findings, variant);
      const accepted = asWritten(evaluation.accepted, variant);
      found.push({ key, name, evaluation, findings, accepted, ...(priced === undefined ? {} : { priced }) });
    }
    this.forgetVariants(file, projects.length);
    return found;
  }

  /** Cost, price and days of the whole job that a file came to; undefined of a library. */
  priced(evaluation: Evaluation): Generator<void, PricedJob | undefined> {
    return this.pricedIn(evaluation.file, evaluation);
  }

  /** Tasks and days of what is left of the job that a file came to; undefined of a library. */
  *scheduled({ file, job, numbers }: Evaluation): Generator<void, Schedule | undefined> {
    return job && numbers && (yield* scheduleOfJob(job, numbers.quantities, this.session, file));
  }

  /**
   * What the job of a file needs, costs and takes, for who is still writing it: while the text has errors, what it was
   * before them, if that was ever asked for. Undefined of a library.
   */
  *figures(evaluation: Evaluation): Generator<void, ShownFigures | undefined> {
    const { file, job, numbers, findings } = evaluation;
    if (job === undefined || numbers === undefined) return undefined;
    const error = errorOfText(findings);
    const isSound = error === undefined && numbers.quantities.complete;
    const before = isSound ? undefined : (this.session.lastGood(file, job.key) as JobFigures | undefined);
    const figures = before ?? {
      quantities: numbers.quantities,
      left: (yield* this.scheduled(evaluation))!,
      priced: (yield* this.priced(evaluation))!
    };
    if (!isSound) return { figures, broken: { isBefore: before !== undefined, ...(error && { error }) } };
    this.session.keepLastGood(file, job.key, figures);
    return { figures };
  }

  /**
   * The plan of the job that a file came to, for a screen; while a part of its text is broken that part as it was before, if
   * it was ever asked for. `whyNot` tells why a thing can't be dragged. Undefined of a library.
   */
  livePlan(evaluation: Evaluation, whyNot?: WhyNot): Generator<void, LivePlan | undefined> {
    return livePlanOf(evaluation, { session: this.session, scope: scopeOfPlan(evaluation.file) }, whyNot);
  }

  private *pricedIn(scope: string, { job, numbers }: Evaluation): Generator<void, PricedJob | undefined> {
    if (job === undefined || numbers === undefined) return undefined;
    return yield* pricedJob(job, numbers, this.session, scope, this.solver);
  }

  private *readVariants(project: Project, scope: string): Generator<void, readonly ReadVariant[]> {
    const parse: Parse = text => {
      this.variantsParsed++;
      return this.parse(text);
    };
    return yield* readVariants(project, { parse, session: this.session, scope: scopeOfReadVariants(scope) });
  }

  /** Lets go of what the variants from one on came to. */
  private forgetVariants(file: string, from: number): void {
    for (let index = from; index < MOST_VARIANTS; index++) {
      const scope = scopeOfVariant(file, index);
      for (const each of [scope, scopeOfExamples(scope), scopeOfPrice(scope), scopeOfReadVariants(scope)])
        this.session.forget(each);
    }
  }

  private *workedOut(
    file: string,
    { project, findings }: Gathered,
    need: Need,
    scope: string
  ): Generator<void, Evaluation> {
    yield;
    const lowered = yield* this.lowered(project, scope);
    yield;
    const isCounted = lowered.job !== undefined && (need === 'numbers' || takesOff(lowered.job));
    const counted = isCounted ? yield* computeJob(lowered.job!, this.session, scope, this.solver) : undefined;
    const numbers = need === 'numbers' ? counted : undefined;
    const judged = counted
      ? { findings: counted.findings, missing: counted.quantities.missing }
      : lowered.job && (yield* judgeJob(lowered.job, this.session, scope));
    const order = project.texts.map(text => text.file);
    const main = project.main.file;
    const today = this.today();
    const { job } = lowered;
    const besides =
      job === undefined
        ? []
        : [
            ...pricesMissing(job),
            ...pricesWithoutDay(job),
            ...pricesPast(job, today),
            ...(yield* this.belowNought(job, counted, scope)),
            ...doneOutOfTurn(job)
          ];
    const variants = variantFaults(yield* this.readVariants(project, scope), lowered.findings);
    const found = [...(judged?.findings ?? []), ...besides].map(raw => placed(raw, lowered, main));
    const sorted =
      lowered.job && judged
        ? setAside(found, {
            job: lowered.job,
            missing: judged.missing,
            where: lowered,
            file: main,
            today
          })
        : { findings: found, accepted: [] };
    return {
      file,
      ...(lowered.job === undefined ? {} : { job: lowered.job }),
      ...(numbers === undefined ? {} : { numbers }),
      findings: inOrder([...findings, ...lowered.findings, ...variants, ...sorted.findings], order),
      accepted: inOrder(sorted.accepted, order),
      places: lowered.places,
      amounts: lowered.amounts,
      texts: project.texts.map(text => ({ file: text.file, text: text.parsed.text })),
      lookUps: lowered.lookUps
    };
  }

  /** The price is worked out here only where something is taken off it. */
  private *belowNought(job: Job, numbers: JobNumbers | undefined, scope: string): Generator<void, RawFinding[]> {
    if (numbers === undefined || !takesOff(job)) return [];
    const { costs } = yield* pricedJob(job, numbers, this.session, scope, this.solver);
    return costs === undefined ? [] : priceBelowNought(job, costs.price, costs.currency);
  }

  /** With what the examples of its rules come to. */
  private *lowered(project: Project, scope: string): Generator<void, Lowered> {
    const lowered = lower(project);
    const { parse, session } = this;
    const tried = { parse, session, scope: scopeOfExamples(scope) };
    const examples = yield* exampleFindings(lowered.examples, project, tried);
    return { ...lowered, findings: [...lowered.findings, ...examples] };
  }

  /** A loaded file as it stands now, with all it uses; undefined when it could not be read. */
  look(file: string): Look | undefined {
    return this.lookWith(file, this.shippedTexts);
  }

  /** The same with the examples of the rules that ship, for their pages. */
  lookAtExamples(file: string): Look | undefined {
    return this.lookWith(file, new ShippedTexts(this.parse, true));
  }

  private lookWith(file: string, texts: ShippedTexts): Look | undefined {
    const gathered = this.gathered(file, { allRulebooksOf: texts });
    return gathered && { text: gathered.project.main, project: gathered.project };
  }

  /** How often a text was parsed so far, to be worked out or tried out. */
  get parses(): number {
    return this.texts.parses + this.tries + this.variantsParsed;
  }

  /** How many texts are at hand. */
  get textsHeld(): number {
    return this.texts.size;
  }

  private gathered(
    file: string,
    { instead, allRulebooksOf }: { readonly instead?: Instead; readonly allRulebooksOf?: ShippedTexts } = {}
  ): Gathered | undefined {
    const main = instead?.file === file ? instead.spec : this.texts.specOf(file);
    if (main === undefined) return undefined;
    const ids = new Map<SpecText, string>([[main, file]]);
    const texts = allRulebooksOf ?? this.shippedTexts;
    const shipped = {
      shipped: texts.shipped,
      rulebookOf: (name: string) => texts.rulebookOf(name),
      ...(allRulebooksOf === undefined ? {} : { all: texts.allRulebooks })
    };
    return gather(main, shipped, (from, use) => {
      const used = this.used(ids.get(from)!, use);
      const found = 'file' in used && used.file === instead?.file ? instead : used;
      if ('id' in found) return found;
      ids.set(found.spec, found.file);
      return found.spec;
    });
  }

  private used(from: string, use: Use): { readonly file: string; readonly spec: SpecText } | UseProblem {
    const file = this.files.resolve(from, use.path);
    if (file === undefined) return { id: 'use-outside', message: USE_PROBLEMS.outside(use.path) };
    const spec = this.texts.specOf(file);
    const problem = this.texts.problemOf(file) ?? 'missing';
    // An editor tells of changes in job specs alone.
    if (problem !== 'folder' && !/\.paving$/i.test(use.path)) {
      const message = `The file ${use.path} is no job spec: only files that end in .paving can be used.`;
      return { id: 'use-unreadable', message, ...this.near(from, use) };
    }
    if (spec !== undefined) return { file, spec };
    const ids: Partial<Record<ReadProblem, string>> = {
      missing: 'use-missing',
      unsaved: 'use-missing',
      outside: 'use-outside'
    };
    return { id: ids[problem] ?? 'use-unreadable', message: USE_PROBLEMS[problem](use.path), ...this.near(from, use) };
  }

  /** A file at hand whose path is nearly the one that was written, and that could be used here. */
  private near(from: string, use: Use): { readonly near?: string } {
    const own = withSlashes(this.files.show(from));
    const used = this.texts.reachedFrom(from);
    const paths = this.texts.readable
      .filter(file => !used.has(file) && !this.texts.reachedFrom(file).has(from))
      .map(file => pathFrom(own, withSlashes(this.files.show(file))))
      .filter(path => this.files.resolve(from, path) !== undefined);
    const near = paths.find(path => path === `${use.path}.paving`) ?? nearest(use.path, paths);
    return near === undefined ? {} : { near };
  }
}

/** Tries are remembered apart: they never push out what the file itself comes to. */
function scopeOfTries(file: string): string {
  return `tried ${file}`;
}

/** By their order: a variant that is called otherwise is worked out where it was. */
function scopeOfVariant(file: string, index: number): string {
  return `variant ${index} of ${file}`;
}

function scopeOfReadVariants(scope: string): string {
  return `variants read of ${scope}`;
}

/** What is drawn is remembered apart from what it is drawn from. */
function scopeOfPlan(file: string): string {
  return `plan of ${file}`;
}

/** Examples are no part of the job: they stay while its rules come and go. */
function scopeOfExamples(scope: string): string {
  return `examples of ${scope}`;
}

export { drain };

function withSlashes(shown: string): string {
  return shown.replaceAll('\\', '/');
}

const USE_PROBLEMS: Readonly<Record<ReadProblem, (path: string) => string>> = {
  missing: path => `There is no file ${path}. The path counts from this file.`,
  forbidden: path => `The file ${path} may not be read: you have no right to it.`,
  folder: path => `The path ${path} is a folder. Name a file in it.`,
  binary: path => `The file ${path} is no text.`,
  unsaved: path => `Save this file first: the path ${path} counts from the place where it is saved.`,
  encoding: path => `The file ${path} is no UTF-8 text. Save it as UTF-8.`,
  'too-large': path => `The file ${path} is too large to be a job spec.`,
  outside: path => `The file ${path} lies outside this folder; only files inside it can be used. Copy it in.`
};

function inOrder<T extends Finding>(findings: readonly T[], files: readonly string[]): T[] {
  const rank = new Map(files.map((file, index) => [file, index]));
  return toldOnce(findings).sort(
    (left, right) =>
      (rank.get(left.file) ?? files.length) - (rank.get(right.file) ?? files.length) ||
      left.line - right.line ||
      left.column - right.column
  );
}
