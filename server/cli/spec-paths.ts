import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';

/** Stands for standard input among the files asked for. */
export const STANDARD_INPUT = '-';

/** Said in the help of every verb that takes files. */
export const FILES = 'FILE is a job spec, a folder (all specs in it and below), or - for standard input.';

export interface SpecPath {
  /** Absolute; standard input counts as a file of the working directory, so that its `use` leads from there. */
  readonly file: string;
  /** Asked for by its name, not found in a folder. */
  readonly byName: boolean;
  readonly fromStandardInput?: true;
}

export interface SpecPaths {
  readonly specs: readonly SpecPath[];
  readonly complaints: readonly string[];
}

/** The files asked for, each once; a folder stands for all specs below it. */
export async function specPaths(asked: readonly string[]): Promise<SpecPaths> {
  const specs = new Map<string, SpecPath>();
  const complaints: string[] = [];
  for (const name of asked) {
    if (name === STANDARD_INPUT) {
      const file = path.resolve('standard input');
      specs.set(file, { file, byName: true, fromStandardInput: true });
      continue;
    }
    const file = path.resolve(name);
    const entry = await stat(file).catch(() => undefined);
    if (entry === undefined) {
      complaints.push(`there is no file or folder ${name}. Check the name; it counts from where you are.`);
    } else if (!entry.isDirectory()) {
      specs.set(file, { file, byName: true });
    } else {
      const found = await specsBelow(file, complaints);
      if (found.length === 0)
        complaints.push(`no job spec lies in the folder ${name}. Job specs are files that end in .paving.`);
      for (const below of found) if (!specs.has(below)) specs.set(below, { file: below, byName: false });
    }
  }
  return { specs: [...specs.values()], complaints };
}

/** All specs in a folder and below, by name. Links to folders are not followed: they could lead round in a circle. */
export async function specsBelow(folder: string, complaints: string[]): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => undefined);
  if (entries === undefined) {
    complaints.push(`the folder ${path.relative('', folder)} may not be read. Ask for the right to read it.`);
    return [];
  }
  entries.sort((left, right) => (left.name < right.name ? -1 : 1));
  const found: string[] = [];
  for (const entry of entries) {
    const at = path.join(folder, entry.name);
    if (entry.isDirectory()) {
      if (entry.name !== 'node_modules' && !entry.name.startsWith('.'))
        found.push(...(await specsBelow(at, complaints)));
    } else if (entry.name.endsWith('.paving') && !(entry.isSymbolicLink() && (await isFolder(at)))) {
      found.push(at);
    }
  }
  return found;
}

async function isFolder(at: string): Promise<boolean> {
  return stat(at).then(
    entry => entry.isDirectory(),
    () => false
  );
}
