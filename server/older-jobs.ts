import type { CancellationToken } from 'vscode-languageserver';
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

interface Commit {
  readonly files: Promise<SpecFiles | Problem>;
  /** How many wait for something of it. */
  awaited: number;
  /** Let go of as soon as nobody waits for it. */
  isLeft: boolean;
  work?: DayOfWork;
}

/** The jobs of one commit on one day, each worked out once: findings and prices hang on the day. */
interface DayOfWork {
  readonly day: string;
  readonly paving: Paving;
  readonly run: Pick<Run, 'cancelled'>;
  readonly jobs: Map<string, Promise<Compared | undefined>>;
  readonly ready: Map<string, Compared | undefined>;
}

/**
 * Jobs as they stood at commits. A commit never changes: its files are read once and its jobs worked out once a day, in
 * steps between what else is asked. A few commits are kept, and those that somebody waits for.
 */
export class OlderJobs {
  private readonly history: History;
  private readonly day: () => string;
  /** The one asked for longest ago first. */
  private readonly commits = new Map<string, Commit>();

  constructor(history: History, day = today) {
    this.history = history;
    this.day = day;
  }

  /**
   * Undefined where the commit has no such job spec.
   *
   * @throws when it is asked for no more: then it is worked out only as long as its commit is kept.
   */
  jobAt(spec: OlderSpec, token?: CancellationToken): Promise<Compared | Problem | undefined> {
    return this.awaiting(spec, token, (files, commit) => this.jobOf(files, commit, spec.path));
  }

  /** The same, if it is worked out by now. */
  readyAt({ commit, path }: OlderSpec): { readonly job: Compared | undefined } | undefined {
    const work = this.commits.get(commit)?.work;
    return work?.day === this.day() && work.ready.has(path) ? { job: work.ready.get(path) } : undefined;
  }

  textAt(spec: OlderSpec): Promise<string | Problem | undefined> {
    return this.awaiting(spec, undefined, async files => {
      const read = await files.read(spec.path);
      return 'text' in read ? read.text : undefined;
    });
  }

  /** Lets go of a commit, and of what is being worked out of it, as soon as nobody waits for it. */
  drop(name: string): void {
    const commit = this.commits.get(name);
    if (commit === undefined) return;
    commit.isLeft = true;
    this.dropSpare();
  }

  /** How many commits are kept, for tests. */
  get size(): number {
    return this.commits.size;
  }

  private async awaiting<T>(
    { folder, commit: name }: OlderSpec,
    token: CancellationToken | undefined,
    answer: (files: SpecFiles, commit: Commit) => Promise<T>
  ): Promise<T | Problem> {
    const commit = this.askedFor(folder, name);
    commit.awaited++;
    this.dropSpare();
    try {
      return await unlessGivenUp(
        commit.files.then<T | Problem>(files => (isProblem(files) ? files : answer(files, commit))),
        token
      );
    } finally {
      commit.awaited--;
      this.dropSpare();
    }
  }

  private askedFor(folder: string, name: string): Commit {
    const commit = this.commits.get(name) ?? this.read(folder, name);
    commit.isLeft = false;
    this.commits.delete(name);
    this.commits.set(name, commit);
    return commit;
  }

  private read(folder: string, name: string): Commit {
    const files = this.history.specsAt(folder, name);
    const commit: Commit = { files, awaited: 0, isLeft: false };
    // What could not be read may be there later.
    const forget = (): void => {
      if (this.commits.get(name) === commit) this.commits.delete(name);
    };
    files.then(found => {
      if (isProblem(found)) forget();
    }, forget);
    return commit;
  }

  private jobOf(files: SpecFiles, commit: Commit, path: string): Promise<Compared | undefined> {
    const day = this.day();
    if (commit.work?.day !== day)
      commit.work = {
        day,
        paving: new Paving(files, () => day),
        run: { cancelled: false },
        jobs: new Map(),
        ready: new Map()
      };
    const { work } = commit;
    const known = work.jobs.get(path);
    if (known !== undefined) return known;
    const job = workedOut(work, path);
    // Who asked for it may have given up.
    job.catch(() => undefined);
    work.jobs.set(path, job);
    return job;
  }

  private dropSpare(): void {
    for (const [name, { awaited, isLeft, work }] of this.commits) {
      if (awaited > 0 || (!isLeft && this.commits.size <= MOST_COMMITS)) continue;
      if (work !== undefined) work.run.cancelled = true;
      this.commits.delete(name);
    }
  }
}

function unlessGivenUp<T>(answer: Promise<T>, token: CancellationToken | undefined): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const heard = token?.onCancellationRequested(() => reject(abandoned()));
    void answer.then(resolve, reject).finally(() => heard?.dispose());
  });
}

async function workedOut({ paving, run, ready }: DayOfWork, path: string): Promise<Compared | undefined> {
  await paving.load(path);
  const evaluation = await inSlices(paving.evaluate(path), run);
  const priced = evaluation && (await inSlices(paving.priced(evaluation), run));
  if (run.cancelled) throw abandoned();
  const look = paving.look(path);
  const job = evaluation && look && { evaluation, look, ...(priced === undefined ? {} : { priced }) };
  ready.set(path, job);
  return job;
}
