import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type Git, GitFailure } from './git.ts';

/** What was found or changed, for who asked. */
export interface DiffSetUp {
  readonly root: string;
  readonly config: string;
  readonly attributes: string;
  /** The command stands in the configuration now, and did not before, or the other way round. */
  readonly changedConfig: boolean;
  readonly changedAttributes: boolean;
  /** Another line says otherwise of job specs, and stands over ours. */
  readonly overruledBy?: string;
}

const KEY = 'diff.paving.textconv';

/** Found again by what it says, so that nothing else is ever taken away. */
const LINES = ['# The next line is from: paving git-diff on', '*.paving diff=paving', ''].join('\n');

/**
 * Lets git show job specs by a command, in this clone alone: a line each in the clone's own configuration and attributes,
 * which no commit holds. Done twice it is as done once.
 *
 * @throws {GitFailure} where the folder is in no repository, or something else turns job specs to text there.
 */
export async function setUpDiff(git: Git, folder: string, command: string): Promise<DiffSetUp> {
  const files = await filesOf(git, folder);
  const known = await commandOf(git);
  if (known !== undefined && !isOurs(known))
    throw new GitFailure(
      'failed',
      `${KEY} is set to something else here: ${known}. Take it out first: git config --unset ${KEY}`
    );
  const changedConfig = known !== command;
  if (changedConfig) await git.run(['config', '--local', KEY, command]);
  const before = await textOf(files.attributes);
  const changedAttributes = !before.includes(LINES);
  if (changedAttributes) {
    await mkdir(path.dirname(files.attributes), { recursive: true });
    // Before all other lines, so that what somebody wrote there stands over it, and taking it out leaves the rest as it was.
    await writeFile(files.attributes, `${LINES}${before}`);
  }
  const told = (await git.run(['check-attr', '-z', 'diff', '--', 'job.paving'])).toString('utf8').split('\0')[2];
  const overruled = told === 'paving' ? {} : { overruledBy: told ?? 'unspecified' };
  return { ...files, changedConfig, changedAttributes, ...overruled };
}

/** Takes away what {@link setUpDiff} wrote, and nothing else. */
export async function takeAwayDiff(git: Git, folder: string): Promise<DiffSetUp> {
  const files = await filesOf(git, folder);
  const known = await commandOf(git);
  const changedConfig = known !== undefined && isOurs(known);
  if (changedConfig) await git.run(['config', '--local', '--unset', KEY]);
  const before = await textOf(files.attributes);
  const changedAttributes = before.includes(LINES);
  if (changedAttributes) {
    const after = before.replace(LINES, '');
    await (after === '' ? rm(files.attributes) : writeFile(files.attributes, after));
  }
  return { ...files, changedConfig, changedAttributes };
}

async function filesOf(git: Git, folder: string): Promise<Pick<DiffSetUp, 'root' | 'config' | 'attributes'>> {
  const told = await git.run(['rev-parse', '--show-toplevel', '--git-path', 'config', '--git-path', 'info/attributes']);
  const [root, config, attributes] = told.toString('utf8').trimEnd().split('\n');
  return { root: root!, config: path.resolve(folder, config!), attributes: path.resolve(folder, attributes!) };
}

async function commandOf(git: Git): Promise<string | undefined> {
  const listed = (await git.run(['config', '--local', '--list', '-z'])).toString('utf8').split('\0');
  return listed.findLast(entry => entry.startsWith(`${KEY}\n`))?.slice(KEY.length + 1);
}

/** The command as git runs it: where the program is gone git shows the plain text. */
export function diffCommand(program: readonly string[]): string {
  return `show() { ${program.map(quoted).join(' ')} git-diff text "$1" 2>/dev/null || cat "$1"; }; show`;
}

function isOurs(command: string): boolean {
  return / git-diff text "\$1" /.test(command);
}

/** A word for the shell that git runs commands with: only an assignment before the program stands as it is. */
function quoted(word: string): string {
  return /^[A-Z_]+=\d+$/.test(word) ? word : `'${word.replaceAll("'", String.raw`'\''`)}'`;
}

async function textOf(file: string): Promise<string> {
  return readFile(file, 'utf8').catch((error: unknown) => {
    if ((error as { code?: unknown }).code === 'ENOENT') return '';
    throw new GitFailure('failed', `${file} can't be read. Check that you may read it.`);
  });
}
