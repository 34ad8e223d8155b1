import path from 'node:path';
import type { ReadResult, SpecFiles } from '../../language/project.ts';
import type { FoundRevision } from '../history.ts';
import { decode } from '../node-files.ts';
import { largestFile } from '../protocol.ts';
import { type Git, GitFailure } from './git.ts';

/** A revision of a folder under version control: its job specs, read all at once. */
export interface Revision {
  /** As it was asked for: `HEAD`, `quote-1`. */
  readonly name: string;
  readonly commit: string;
  /** The folder that the repository lies in. */
  readonly root: string;
  /** Bytes by path from the root, with forward slashes; of what is too large to be read nothing but its path. */
  readonly specs: ReadonlyMap<string, Buffer | 'too-large'>;
}

/** Files that a job uses may lie anywhere in the repository: all job specs are read, as far as they can be held, bytes. */
const LARGEST_TOGETHER = 32_000_000;

/** No longer name is one that a person gave. */
const LONGEST_NAME = 200;

/** Names of revisions hold nothing that git would read as an option, a path or a range. */
function checkRevisionName(name: string): void {
  const isOdd =
    name === '' || name.length > LONGEST_NAME || name.startsWith('-') || /[\0-\x20\x7f:?*[\\]|\.\./.test(name);
  if (isOdd)
    throw new GitFailure(
      'unknown revision',
      `${JSON.stringify(name)} is no name of a revision. Write a branch, a tag, HEAD or HEAD~1.`
    );
}

/** A name's commit, and the way from the top of the repository to the folder that git is asked in. Git is started once. */
export async function commitOf(git: Git, name: string): Promise<FoundRevision> {
  checkRevisionName(name);
  const asked = ['rev-parse', '--show-prefix', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`];
  const answer = await git.run(asked).catch((error: unknown) => {
    throw error instanceof GitFailure && error.why === 'failed' ? noRevision(name) : error;
  });
  const [prefix, commit] = answer.toString('utf8').split('\n');
  if (prefix === undefined || !/^[0-9a-f]{40,64}$/.test(commit ?? '')) throw noRevision(name);
  return { prefix, commit: commit! };
}

/** Reads all job specs of a revision. Git is started four times, however many files there are. */
export async function readRevision(git: Git, name: string): Promise<Revision> {
  const { commit } = await commitOf(git, name);
  const root = (await git.run(['rev-parse', '--show-toplevel'])).toString('utf8').trim();
  const listed = (await git.run(['ls-tree', '-r', '-z', '-l', '--full-tree', commit])).toString('utf8');
  const blobs = listed.split('\0').flatMap(line => {
    // 100644 blob <id> <size>	<path>
    const found = /^100(?:644|755) blob ([0-9a-f]+) +([0-9]+)\t(.*\.paving)$/is.exec(line);
    return found === null ? [] : [{ id: found[1]!, size: Number(found[2]), path: found[3]! }];
  });
  const read = blobs.filter(({ size }) => size <= largestFile);
  if (read.reduce((sum, { size }) => sum + size, 0) > LARGEST_TOGETHER)
    throw new GitFailure(
      'too large',
      `The job specs of this repository are too large together: more than ${LARGEST_TOGETHER / 1_000_000} MB. Compare two files instead.`
    );
  const bytes =
    read.length === 0
      ? []
      : blobsIn(await git.run(['cat-file', '--batch'], `${read.map(({ id }) => id).join('\n')}\n`));
  const specs = new Map<string, Buffer | 'too-large'>(blobs.map(({ path: file }) => [file, 'too-large']));
  read.forEach(({ path: file }, index) => specs.set(file, bytes[index]!));
  return { name, commit, root, specs };
}

/** Why a name leads to no commit. */
export function noRevision(name: string): GitFailure {
  return name === 'HEAD'
    ? new GitFailure('no commits', 'There is nothing to compare with yet: commit first, or compare two files.')
    : new GitFailure('unknown revision', `There is no revision ${name} here. Write a branch, a tag, HEAD or HEAD~1.`);
}

/** `<id> blob <size>`, a line break, so many bytes, a line break. */
function blobsIn(answer: Buffer): Buffer[] {
  const found: Buffer[] = [];
  let at = 0;
  while (at < answer.length) {
    const end = answer.indexOf(0x0a, at);
    const size = Number(/ ([0-9]+)$/.exec(answer.toString('latin1', at, end))?.[1] ?? Number.NaN);
    if (!Number.isSafeInteger(size))
      throw new GitFailure('failed', 'git did not answer with the files that were asked for.');
    found.push(answer.subarray(end + 1, end + 1 + size));
    at = end + 1 + size + 1;
  }
  return found;
}

/** The files of a revision, known by their paths from the root, and shown by their paths from a folder. */
export class RevisionFiles implements SpecFiles {
  readonly #revision: Revision;
  readonly #shownFrom: string;

  constructor(revision: Revision, shownFrom = revision.root) {
    this.#revision = revision;
    this.#shownFrom = shownFrom;
  }

  resolve(from: string, written: string): string | undefined {
    const plain = written.replaceAll('\\', '/');
    if (plain.startsWith('/') || /^[a-z]:/i.test(plain) || plain.includes('\0')) return undefined;
    const file = path.posix.normalize(path.posix.join(path.posix.dirname(from), plain));
    return file.startsWith('../') || file === '..' ? undefined : file;
  }

  read(file: string): Promise<ReadResult> {
    const bytes = this.#revision.specs.get(file);
    if (bytes === undefined) return Promise.resolve({ problem: 'missing' });
    return Promise.resolve(bytes === 'too-large' ? { problem: bytes } : decode(bytes));
  }

  show(file: string): string {
    return path.relative(this.#shownFrom, path.join(this.#revision.root, file)).replaceAll(path.sep, '/');
  }
}
