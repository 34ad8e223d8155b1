import type { NamedRevision } from '../protocol.ts';
import { type Git, GitFailure } from './git.ts';
import { noRevision } from './revision-files.ts';

/** So many can be looked through in a list; any other can be typed. */
const MOST_COMMITS = 30;
const MOST_NAMES = 200;

/** No name, date or subject holds it. */
const BETWEEN = '\x1f';

/** HEAD, branches and tags, the newest first, and the last commits that touch the folder. Git is started twice. */
export async function listRevisions(git: Git): Promise<NamedRevision[]> {
  const named = lines(
    await git.run([
      'for-each-ref',
      `--count=${MOST_NAMES}`,
      '--sort=-creatordate',
      '--format=%(refname)%1f%(refname:short)%1f%(creatordate:short)%1f%(subject)',
      'refs/heads',
      'refs/tags'
    ])
  ).map(([ref, name, date = '', subject = '']): NamedRevision => {
    return { name: name!, kind: ref!.startsWith('refs/tags/') ? 'tag' : 'branch', date, subject };
  });
  const commits = lines(await git.run(LOG).catch(tellOfNoCommit)).map(
    ([name, date = '', subject = '']): NamedRevision => {
      return { name: name!, kind: 'commit', date, subject };
    }
  );
  return [{ name: 'HEAD', kind: 'head', date: '', subject: '' }, ...named, ...commits];
}

/** No program is started to check signatures. */
const LOG = [
  'log',
  `--max-count=${MOST_COMMITS}`,
  '--no-show-signature',
  '--no-color',
  '--encoding=UTF-8',
  '--date=short',
  '--format=%h%x1f%cd%x1f%s',
  'HEAD',
  '--',
  '.'
];

function tellOfNoCommit(error: unknown): never {
  const isOfNoCommit = error instanceof GitFailure && error.why === 'failed' && /HEAD/.test(error.message);
  throw isOfNoCommit ? noRevision('HEAD') : error;
}

function lines(answer: Buffer): string[][] {
  return answer
    .toString('utf8')
    .split('\n')
    .filter(line => line !== '')
    .map(line => line.split(BETWEEN));
}
