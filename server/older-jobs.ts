import type { Compared } from '../language/comparing/compare.ts';
import { Paving } from '../language/paving.ts';
import type { SpecFiles } from '../language/project.ts';
import { abandoned } from './feature.ts';
import { isProblem, type History, type Problem } from './history.ts';
import { inSlices, type Run } from './runs.ts';
import { today } from './today.ts';

/** HEAD, and what is compared with besides. */
const MOST_COMMITS = 3;

/** A job spec at a commit, as it is found from a folder of the working copy. */
export interface OlderSpec {
  readonly folder: string;
  readonly commit: string;
  /** From the top of the repository. */
  readonly path: string;
}

/** The job specs of one commit, each job worked out once. */
interface Commit {
  readonly paving: Paving;
  readonly files: SpecFiles;
  readonly run: Pick<Run, 'cancelled'>;
  readonly jobs: Map<string, Promise<Compared | undefined>>;
  readonly ready: Map<string, Compared | undefined>;
}

/**
 * Jobs as they stood at commits. A commit never changes: its files are read once and its jobs worked out once, in steps
 * between what else is asked; a few commits are kept.
 */
export class OlderJobs {
  private readonly history: History;
  private readonly reads = new Map<string, Promise<Commit | Problem>>();
  private readonly commits = new Map<string, Commit>();

  constructor(history: History) {
    this.history = history;
  }

  /** Undefined where the commit has no such job spec. */
  async jobAt({ folder, commit, path }: OlderSpec): Promise<Compared | Problem | undefined> {
    const found = await this.read(folder, commit);
    if (isProblem(found)) return found;
    let job = found.jobs.get(path);
    if (job === undefined) {
      job = workedOut(found, path);
      found.jobs.set(path, job);
    }
    return job;
  }

  /** The same, if it is worked out by now. */
  readyAt({ commit, path }: OlderSpec): { readonly job: Compared | undefined } | undefined {
    const found = this.commits.get(commit);
    return found?.ready.has(path) === true ? { job: found.ready.get(path) } : undefined;
  }

  async textAt({ folder, commit, path }: OlderSpec): Promise<string | Problem | undefined> {
    const found = await this.read(folder, commit);
    if (isProblem(found)) return found;
    const read = await found.files.read(path);
    return 'text' in read ? read.text : undefined;
  }

  /** Lets go of a commit, and of what is being worked out of it. */
  drop(commit: string): void {
    const found = this.commits.get(commit);
    if (found !== undefined) found.run.cancelled = true;
    this.commits.delete(commit);
    this.reads.delete(commit);
  }

  /** How many commits are kept, for tests. */
  get size(): number {
    return this.reads.size;
  }

  private read(folder: string, commit: string): Promise<Commit | Problem> {
    const read = this.reads.get(commit) ?? this.readAnew(folder, commit);
    read.catch(() => this.reads.delete(commit));
    // The one asked for longest ago goes first.
    this.reads.delete(commit);
    this.reads.set(commit, read);
    for (const oldest of this.reads.keys()) if (this.reads.size > MOST_COMMITS) this.drop(oldest);
    return read;
  }

  private async readAnew(folder: string, commit: string): Promise<Commit | Problem> {
    const files = await this.history.specsAt(folder, commit);
    if (isProblem(files)) {
      // It may be there later.
      this.reads.delete(commit);
      return files;
    }
    const found: Commit = {
      files,
      paving: new Paving(files, today),
      run: { cancelled: false },
      jobs: new Map(),
      ready: new Map()
    };
    if (this.reads.has(commit)) this.commits.set(commit, found);
    return found;
  }
}

async function workedOut({ paving, run, ready }: Commit, path: string): Promise<Compared | undefined> {
  await paving.load(path);
  const evaluation = await inSlices(paving.evaluate(path), run);
  const priced = evaluation && (await inSlices(paving.priced(evaluation), run));
  if (run.cancelled) throw abandoned();
  const look = paving.look(path);
  const job = evaluation && look && { evaluation, look, ...(priced === undefined ? {} : { priced }) };
  ready.set(path, job);
  return job;
}
