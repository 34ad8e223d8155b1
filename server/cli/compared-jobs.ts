import { compareJobs, type Compared } from '../../language/comparing/compare.ts';
import type { Comparison } from '../../language/comparing/contract.ts';
import { isShipped } from '../../language/lowering/project.ts';
import { drain, type Evaluation, type Look, Paving } from '../../language/paving.ts';
import { BothSides, fileOf, type Side, SIDES } from './both-sides.ts';
import type { BothFiles, OtherNames } from './compared-files.ts';
import { Progress } from './progress.ts';
import { pairRenamed, type TitledText } from './renamed-files.ts';
import { evaluatedInFull, pricedInFull } from './settled.ts';
import { unreadable } from './unreadable.ts';
import { hasJob, shownAs, type WithJob } from './with-job.ts';

/** One text of a job, worked out. */
export interface JobText extends Compared {
  readonly evaluation: WithJob;
}

/** A job that has both texts. */
export interface JobCompared {
  readonly before: JobText;
  readonly after: JobText;
  readonly comparison: Comparison;
}

/** A job that one side alone has. */
export interface LoneJob {
  readonly side: Side;
  readonly text: JobText;
}

export interface JobsCompared {
  /** In the order of their files; what is new or gone stands among them. */
  readonly jobs: readonly JobFound[];
  /** Sides of which a file that was asked for holds no statement at all. */
  readonly empty: ReadonlySet<Side>;
  readonly complaints: readonly string[];
}

/** A job whose texts, and all that they use, are the same to the letter: nothing of it is worked out. */
export interface UnchangedJob {
  /** Its findings alone. */
  readonly unchanged: Evaluation & Required<Pick<Evaluation, 'job'>>;
}

export type JobFound = JobCompared | LoneJob | UnchangedJob;

/** Works out and compares the jobs of both sides; one that cannot be read, or makes this program fail, never stops the others. */
export async function comparedJobs(
  { before, after, isOneJob, otherNames }: BothFiles,
  asOf: string
): Promise<JobsCompared> {
  const files = new BothSides({ before: before.files, after: after.files });
  const specs = (side: Side, all: readonly string[]): Specs => {
    const known = all.map(spec => fileOf(side, spec));
    return new Map(known.map(file => [isOneJob ? 'one job' : files.show(file), file]));
  };
  const comparing = new Comparing(new Paving(files, () => asOf), (side, file) =>
    isOneJob ? files.show(file) : `${files.show(file)} in ${side === 'before' ? before.name : after.name}`
  );
  return comparing.run(specs('before', before.specs), specs('after', after.specs), otherNames);
}

/** By the path that each is shown by, which pairs them. */
type Specs = ReadonlyMap<string, string>;

class Comparing {
  readonly #paving: Paving;
  readonly #name: (side: Side, file: string) => string;
  readonly #found: JobFound[] = [];
  readonly #lone: Readonly<Record<Side, JobText[]>> = { before: [], after: [] };
  readonly #empty = new Set<Side>();
  readonly #complaints: string[] = [];

  /** `name`: how a file of a side is named to a reader. */
  constructor(paving: Paving, name: (side: Side, file: string) => string) {
    this.#paving = paving;
    this.#name = name;
  }

  async run(before: Specs, after: Specs, otherNames: OtherNames | undefined): Promise<JobsCompared> {
    const paths = [...new Set([...before.keys(), ...after.keys()])].sort();
    const progress = new Progress(paths.length);
    for (const [index, show] of paths.entries()) {
      progress.at(index);
      await this.#compare({ before: before.get(show), after: after.get(show) });
    }
    if (otherNames !== undefined) await this.#addOtherName(otherNames);
    this.#pairLone();
    progress.end();
    this.#found.sort((left, right) => (fileShown(left) < fileShown(right) ? -1 : 1));
    return { jobs: this.#found, empty: this.#empty, complaints: this.#complaints };
  }

  async #compare(known: Readonly<Record<Side, string | undefined>>): Promise<void> {
    try {
      for (const side of SIDES) if (!(await this.#load(side, known[side]))) return;
      const { before, after } = known;
      if (before !== undefined && after !== undefined && this.#isUnchanged(before, after)) return this.#keep(after);
      const [older, newer] = [await this.#workedOut(before), await this.#workedOut(after)];
      if (older !== undefined && newer !== undefined) this.#pair(older, newer);
      else if (older !== undefined) this.#lone.before.push(older);
      else if (newer !== undefined) this.#lone.after.push(newer);
    } catch {
      const show = SIDES.flatMap(side => (known[side] === undefined ? [] : [this.#name(side, known[side])])).join(
        ' or '
      );
      this.#complainOfFailure(show);
    }
  }

  #complainOfFailure(show: string): void {
    this.#complaints.push(
      `${show} made this program fail; the other files are not touched by it. Please report it with the file.`
    );
  }

  /** False, and said, where a file is there and cannot be read: then it is neither new nor gone. */
  async #load(side: Side, file: string | undefined): Promise<boolean> {
    if (file === undefined) return true;
    await this.#paving.load(file);
    const problem = this.#paving.problemOf(file);
    if (problem !== undefined) this.#complaints.push(unreadable(this.#name(side, file), problem));
    else if (holdsNothing(this.#paving.look(file)!)) this.#empty.add(side);
    return problem === undefined;
  }

  #isUnchanged(before: string, after: string): boolean {
    const [older, newer] = [textsOf(this.#paving.look(before)!), textsOf(this.#paving.look(after)!)];
    return older.size === newer.size && [...older].every(([file, text]) => newer.has(file) && newer.get(file) === text);
  }

  #keep(file: string): void {
    const { job, ...evaluation } = drain(this.#paving.evaluate(file, 'findings'))!;
    if (job !== undefined) this.#found.push({ unchanged: { ...evaluation, job } });
  }

  async #workedOut(file: string | undefined): Promise<JobText | undefined> {
    if (file === undefined) return undefined;
    const evaluation = await evaluatedInFull(this.#paving, file);
    if (evaluation === undefined || !hasJob(evaluation)) return undefined;
    const priced = await pricedInFull(this.#paving, evaluation);
    return { evaluation, look: this.#paving.look(file)!, ...(priced === undefined ? {} : { priced }) };
  }

  #pair(before: JobText, after: JobText): void {
    this.#found.push({ before, after, comparison: compareJobs(before, after) });
  }

  /** Of the files that the one asked for may be under another name, the one that it is; the others are not told. */
  async #addOtherName({ side, specs }: OtherNames): Promise<void> {
    const asked = this.#lone[side === 'before' ? 'after' : 'before'];
    if (asked.length === 0) return;
    const titled: TitledText[] = [];
    for (const spec of specs) titled.push(...(await this.#titled(fileOf(side, spec))));
    const { pairs } = side === 'before' ? pairRenamed(titled, asked) : pairRenamed(asked, titled);
    for (const pair of pairs) {
      const file = pair[side === 'before' ? 0 : 1].evaluation.file;
      try {
        const text = await this.#workedOut(file);
        if (text !== undefined) this.#lone[side].push(text);
      } catch {
        this.#complainOfFailure(this.#name(side, file));
      }
    }
  }

  /** None of a file that was not asked for and cannot be read, or has no job. */
  async #titled(file: string): Promise<TitledText[]> {
    try {
      await this.#paving.load(file);
      if (this.#paving.problemOf(file) !== undefined) return [];
      const { job, ...evaluation } = drain(this.#paving.evaluate(file, 'findings'))!;
      return job === undefined ? [] : [{ evaluation: { ...evaluation, job } }];
    } catch {
      return [];
    }
  }

  #pairLone(): void {
    const { pairs, before, after } = pairRenamed(this.#lone.before, this.#lone.after);
    for (const [older, newer] of pairs) this.#pair(older, newer);
    for (const text of before) this.#found.push({ side: 'before', text });
    for (const text of after) this.#found.push({ side: 'after', text });
  }
}

/** Comments count for nothing. */
function holdsNothing({ text: { parsed } }: Look): boolean {
  return parsed.tokens.length === 0 && parsed.faults.length === 0;
}

/** The texts that a file is read from, by the paths that they are shown by. */
function textsOf({ project }: Look): Map<string, string> {
  return new Map(
    project.texts.filter(text => !isShipped(project, text)).map(({ file, parsed }) => [file, parsed.text])
  );
}

export function fileShown(job: JobFound): string {
  return shownAs('unchanged' in job ? job.unchanged : ('after' in job ? job.after : job.text).evaluation);
}
