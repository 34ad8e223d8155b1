import { realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { SpecFiles } from '../../language/project.ts';
import { Git } from '../git/git.ts';
import { readRevision, type Revision, RevisionFiles } from '../git/revision-files.ts';
import { NodeFiles, rootOf } from '../node-files.ts';
import type { Side } from './both-sides.ts';
import { Failure } from './fail.ts';
import { specsBelow } from './spec-paths.ts';

/** One side of a comparison: where its job specs are read from. */
export interface ComparedFiles {
  /** As it is named to a reader: `HEAD`, `the working copy`, `old.paving`. */
  readonly name: string;
  readonly files: SpecFiles;
  /** The specs asked for, as `files` knows them; of a file that is not there none. */
  readonly specs: readonly string[];
  /** It is on disk now, so that other verbs find it. */
  readonly isOnDisk: boolean;
}

export interface BothFiles {
  readonly before: ComparedFiles;
  readonly after: ComparedFiles;
  /** Two files that were named are one job, however they are called; else files are one by their paths. */
  readonly isOneJob: boolean;
  readonly otherNames?: OtherNames;
  readonly complaints: readonly string[];
}

/** One file was asked for, and a side has none of its path: it may be called otherwise there. */
export interface OtherNames {
  readonly side: Side;
  /** What that side has and the other has not, as its files know them. */
  readonly specs: readonly string[];
}

/** Two files on disk; nothing is asked of git. */
export async function twoFiles(older: string, newer: string): Promise<BothFiles> {
  for (const name of [older, newer]) {
    const entry = await stat(name).catch(() => undefined);
    if (entry === undefined)
      throw new Failure(`there is no file ${name}. Check the name; it counts from where you are.`);
    if (entry.isDirectory())
      throw new Failure(`${name} is a folder. Name two files, or one folder to compare it with an earlier revision.`);
  }
  const shownFrom = process.cwd();
  const [before, after] = [older, newer].map((name): ComparedFiles => {
    const file = path.resolve(name);
    const files = new NodeFiles({ root: rootOf(file), shownFrom });
    return { name: files.show(file), files, specs: [file], isOnDisk: true };
  });
  return { before: before!, after: after!, isOneJob: true, complaints: [] };
}

/** A file, or all specs of a folder, at two revisions; without `to` as they stand in the working copy. */
export async function atRevisions(asked: string, from: string, to: string | undefined): Promise<BothFiles> {
  const at = await realPathOf(path.resolve(asked));
  const shownFrom = await realpath(process.cwd());
  const git = new Git(await folderOf(at));
  const older = await readRevision(git, from);
  const newer = to === undefined ? undefined : await readRevision(git, to);
  const below = withSlashes(path.relative(older.root, at));
  if (below === '..' || below.startsWith('../') || path.isAbsolute(below))
    throw new Failure(`${asked} lies outside the repository in ${older.root}. Compare two files instead.`);
  const complaints: string[] = [];
  const before = ofRevision(older, below, shownFrom);
  const after =
    newer === undefined
      ? await ofWorkingCopy(older.root, at, shownFrom, complaints)
      : ofRevision(newer, below, shownFrom);
  if (before.specs.length === 0 && after.specs.length === 0 && complaints.length === 0)
    throw new Failure(
      /\.paving$/i.test(asked)
        ? `there is no file ${asked}, neither in ${before.name} nor in ${after.name}. Check the name; it counts from where you are.`
        : `no job spec lies in ${asked}, neither in ${before.name} nor in ${after.name}. Job specs are files that end in .paving.`
    );
  const both = { before, after, isOneJob: false, complaints };
  // A folder is never a spec of its own.
  const isOneFile = [...before.specs, ...after.specs].some(spec => spec === below || spec === at);
  if (isOneFile && before.specs.length === 0)
    return { ...both, otherNames: { side: 'before', specs: await goneSince(older, newer) } };
  if (isOneFile && after.specs.length === 0)
    return { ...both, otherNames: { side: 'after', specs: await addedSince(older, newer) } };
  return both;
}

/** The specs of a revision that are not there any more, as the revision knows them. */
async function goneSince(older: Revision, newer: Revision | undefined): Promise<string[]> {
  const isThere = await Promise.all(
    [...older.specs.keys()].map(async file => newer?.specs.has(file) ?? (await isOnDisk(path.join(older.root, file))))
  );
  return [...older.specs.keys()].filter((file, index) => !isThere[index] && !isPassedOver(file));
}

/** The specs that a revision did not have, as the newer side knows them. */
async function addedSince(older: Revision, newer: Revision | undefined): Promise<string[]> {
  if (newer !== undefined) return [...newer.specs.keys()].filter(file => !older.specs.has(file) && !isPassedOver(file));
  const root = path.normalize(older.root);
  // Of a folder that may not be read nothing was asked.
  const onDisk = await specsBelow(root, []);
  return onDisk.filter(file => !older.specs.has(withSlashes(path.relative(root, file))));
}

function isOnDisk(file: string): Promise<boolean> {
  return stat(file).then(
    () => true,
    () => false
  );
}

function ofRevision(revision: Revision, below: string, shownFrom: string): ComparedFiles {
  const inside = below === '' ? '' : `${below}/`;
  const specs = [...revision.specs.keys()].filter(
    file => file === below || (file.startsWith(inside) && !isPassedOver(file.slice(inside.length)))
  );
  return { name: revision.name, files: new RevisionFiles(revision, shownFrom), specs, isOnDisk: false };
}

/** As in a folder on disk. */
function isPassedOver(file: string): boolean {
  return file
    .split('/')
    .slice(0, -1)
    .some(folder => folder === 'node_modules' || folder.startsWith('.'));
}

async function ofWorkingCopy(
  root: string,
  at: string,
  shownFrom: string,
  complaints: string[]
): Promise<ComparedFiles> {
  const entry = await stat(at).catch(() => undefined);
  const specs =
    entry === undefined
      ? []
      : entry.isDirectory()
        ? await specsBelow(at, complaints)
        : /\.paving$/i.test(at)
          ? [at]
          : [];
  const files = new NodeFiles({ root: path.normalize(root), shownFrom });
  return { name: 'the working copy', files, specs, isOnDisk: true };
}

/** Without the links that lead to it, since git knows no others; what is not there any more lies where it lay. */
async function realPathOf(at: string): Promise<string> {
  const entry = await stat(at).catch(() => undefined);
  if (entry?.isDirectory() === true) return realpath(at);
  const above = path.dirname(at);
  return above === at ? at : path.join(await realPathOf(above), path.basename(at));
}

/** The nearest folder that is there. */
async function folderOf(at: string): Promise<string> {
  const entry = await stat(at).catch(() => undefined);
  const above = path.dirname(at);
  return entry?.isDirectory() === true || above === at ? at : folderOf(above);
}

function withSlashes(file: string): string {
  return file.replaceAll(path.sep, '/');
}
