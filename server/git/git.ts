import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { gitProgram } from './git-program.ts';

type Why =
  | 'no git'
  | 'no repository'
  | 'no commits'
  | 'unknown revision'
  | 'too long'
  | 'too large'
  | 'stopped'
  | 'abandoned'
  | 'failed';

/** Why git could not be asked, in words for the person who asked. */
export class GitFailure extends Error {
  readonly why: Why;

  constructor(why: Why, message: string) {
    super(message);
    this.why = why;
  }
}

/** A spec is read in the time that a person waits for a comparison. */
const LONGEST_MS = 20_000;

/** All job specs of a folder, or the list of its files. */
const LARGEST_OUTPUT = 64 * 1024 * 1024;

/**
 * Git, as far as job specs at a revision are read and its settings are asked for: never through a shell, never over the
 * network, never asking. It counts how often it starts git.
 */
export class Git {
  readonly #folder: string;
  readonly #signal: AbortSignal | undefined;
  starts = 0;

  constructor(folder: string, signal?: AbortSignal) {
    this.#folder = folder;
    this.#signal = signal;
  }

  /**
   * What git answers, as bytes.
   *
   * @throws {GitFailure} at once when the time is over, the answer too large, or nobody waits for it any more.
   */
  async run(given: readonly string[], input?: string): Promise<Buffer> {
    if (this.#signal?.aborted === true) throw abandoned();
    const program = gitProgram();
    if (program === undefined) throw noGit();
    this.starts++;
    const child = spawn(program, [...QUIET, ...given], {
      cwd: this.#folder,
      env: { ...withoutSettings(process.env), ...ALONE },
      shell: false,
      windowsHide: true,
      stdio: ['pipe', 'pipe', 'pipe']
    });
    try {
      return await answerOf(child, input ?? '', this.#signal);
    } catch (error) {
      stop(child);
      throw error;
    }
  }
}

function answerOf(child: ChildProcessWithoutNullStreams, input: string, signal?: AbortSignal): Promise<Buffer> {
  const ended = new AbortController();
  return new Promise<Buffer>((resolve, reject) => {
    const out: Buffer[] = [];
    let size = 0;
    let complaint = '';
    // Node's own limits would hold this program up where git is not there at all, and wait for what git itself has started.
    const limit = setTimeout(() => {
      reject(new GitFailure('too long', 'git took too long, and was stopped.'));
    }, LONGEST_MS);
    ended.signal.addEventListener('abort', () => clearTimeout(limit));
    signal?.addEventListener('abort', () => reject(abandoned()), { signal: ended.signal });
    child.on('error', error => reject(notStarted(error)));
    child.stdout.on('data', (data: Buffer) => {
      size += data.length;
      if (size > LARGEST_OUTPUT) reject(new GitFailure('too large', 'git answered with more than job specs can hold.'));
      else out.push(data);
    });
    child.stderr.on('data', (data: Buffer) => {
      complaint = (complaint + data.toString('utf8')).slice(0, 2000);
    });
    child.on('close', (code, stoppedBy) => {
      if (code === 0) resolve(Buffer.concat(out));
      else if (stoppedBy === null) reject(failureOf(complaint));
      else reject(new GitFailure('stopped', 'git was stopped by something else. Compare again.'));
    });
    // A program that ends early reads no more: that is told by its code.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  }).finally(() => ended.abort());
}

/** Not asked, since git may not listen; what git has started may hold the pipes for long, and is not waited for. */
function stop(child: ChildProcessWithoutNullStreams): void {
  child.kill('SIGKILL');
  for (const pipe of [child.stdin, child.stdout, child.stderr]) pipe.destroy();
  child.unref();
}

/** Nothing is paged, coloured, locked or watched. */
const QUIET = ['--no-pager', '--no-optional-locks', '-c', 'core.fsmonitor=false', '-c', 'core.quotePath=false'];

/** Git asks nobody, and fetches no objects that a partial clone left out. */
const ALONE = { GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: '', LC_ALL: 'C' };

/**
 * The repository is the one that the folder lies in, and its settings are those of its files, also where git itself
 * started this program.
 */
function withoutSettings(environment: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  return Object.fromEntries(
    Object.entries(environment).filter(([name]) => !/^GIT_/i.test(name) || NEEDED.has(name.toUpperCase()))
  );
}

/**
 * Where the person's and the machine's settings lie, which say whose repositories are trusted, and where git's own programs
 * lie if not where it was built for.
 */
const NEEDED: ReadonlySet<string> = new Set([
  ...['GIT_CONFIG_GLOBAL', 'GIT_CONFIG_SYSTEM', 'GIT_CONFIG_NOSYSTEM'],
  'GIT_EXEC_PATH'
]);

function abandoned(): GitFailure {
  return new GitFailure('abandoned', 'Nobody waits for this any more.');
}

function noGit(): GitFailure {
  return new GitFailure('no git', 'git is not installed here, or not on the path. Compare two files instead.');
}

function notStarted(error: Error): GitFailure {
  const isMissing = (error as { code?: unknown }).code === 'ENOENT';
  return isMissing ? noGit() : new GitFailure('failed', `git could not be started: ${error.message}`);
}

function failureOf(complaint: string): GitFailure {
  if (/not a git repository/i.test(complaint))
    return new GitFailure(
      'no repository',
      'This folder is under no version control by git. Compare two files instead.'
    );
  const [first] = complaint.trim().split('\n');
  return new GitFailure('failed', `git says: ${(first ?? '').replace(/^fatal: /, '')}`);
}
