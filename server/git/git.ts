import { spawn } from 'node:child_process';

/** Why git could not be asked, in words for the person who asked. */
export class GitFailure extends Error {
  readonly why: 'no git' | 'no repository' | 'no commits' | 'unknown revision' | 'too long' | 'too large' | 'failed';

  constructor(why: GitFailure['why'], message: string) {
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

  /** What git answers, as bytes. */
  async run(given: readonly string[], input?: string): Promise<Buffer> {
    this.starts++;
    return await new Promise<Buffer>((resolve, reject) => {
      const child = spawn('git', [...QUIET, ...given], {
        cwd: this.#folder,
        env: { ...withoutRepository(process.env), ...ALONE },
        shell: false,
        windowsHide: true,
        stdio: ['pipe', 'pipe', 'pipe'],
        ...(this.#signal === undefined ? {} : { signal: this.#signal })
      });
      const out: Buffer[] = [];
      let size = 0;
      let complaint = '';
      // Node's own limit would hold this program up where git is not there at all.
      const limit = setTimeout(() => child.kill(), LONGEST_MS);
      child.on('error', error => {
        clearTimeout(limit);
        const isMissing = (error as { code?: unknown }).code === 'ENOENT';
        reject(
          isMissing
            ? new GitFailure('no git', 'git is not installed here, or not on the path. Compare two files instead.')
            : new GitFailure('failed', `git could not be started: ${error.message}`)
        );
      });
      child.stdout.on('data', (data: Buffer) => {
        size += data.length;
        if (size > LARGEST_OUTPUT) {
          child.kill();
          reject(new GitFailure('too large', 'git answered with more than job specs can hold.'));
        } else out.push(data);
      });
      child.stderr.on('data', (data: Buffer) => {
        complaint = (complaint + data.toString('utf8')).slice(0, 2000);
      });
      child.on('close', (code, signal) => {
        clearTimeout(limit);
        if (code === 0) resolve(Buffer.concat(out));
        else if (signal !== null) reject(new GitFailure('too long', 'git took too long, and was stopped.'));
        else reject(failureOf(complaint));
      });
      // A program that ends early reads no more: that is told by its code.
      child.stdin.on('error', () => undefined);
      child.stdin.end(input ?? '');
    });
  }
}

/** Nothing is paged, coloured, locked or watched. */
const QUIET = ['--no-pager', '--no-optional-locks', '-c', 'core.fsmonitor=false', '-c', 'core.quotePath=false'];

/** Git asks nobody, and fetches no objects that a partial clone left out. */
const ALONE = { GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: '', LC_ALL: 'C' };

/** The repository is the one that the folder lies in, also where git itself started this program. */
function withoutRepository(environment: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(environment).filter(([name]) => !OF_ONE_REPOSITORY.has(name.toUpperCase())));
}

const OF_ONE_REPOSITORY: ReadonlySet<string> = new Set([
  ...['GIT_DIR', 'GIT_WORK_TREE', 'GIT_COMMON_DIR', 'GIT_INDEX_FILE', 'GIT_PREFIX', 'GIT_NAMESPACE'],
  ...['GIT_OBJECT_DIRECTORY', 'GIT_ALTERNATE_OBJECT_DIRECTORIES']
]);

function failureOf(complaint: string): GitFailure {
  if (/not a git repository/i.test(complaint))
    return new GitFailure(
      'no repository',
      'This folder is under no version control by git. Compare two files instead.'
    );
  const [first] = complaint.trim().split('\n');
  return new GitFailure('failed', `git says: ${(first ?? '').replace(/^fatal: /, '')}`);
}
