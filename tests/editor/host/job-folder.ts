// A folder with job specs for one run: tests write into it, so it is never the project's own.
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { makeHistory } from './history.ts';
import { root } from './places.ts';

/** The file that names both folders, for an editor that has several open. */
export const workspaceOf = (folder: string) => path.join(path.dirname(folder), 'jobs.code-workspace');

export async function withJobFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const top = mkdtempSync(path.join(tmpdir(), 'paving-jobs-'));
  const folder = path.join(top, 'jobs');
  try {
    cpSync(path.join(root, 'samples'), path.join(folder, 'samples'), { recursive: true });
    cpSync(path.join(root, 'tests/editor/fixtures'), folder, { recursive: true });
    makeHistory(folder);
    // A second folder, open beside it.
    mkdirSync(path.join(top, 'second'));
    writeFileSync(workspaceOf(folder), JSON.stringify({ folders: [{ path: 'jobs' }, { path: 'second' }] }));
    // Links that lead out of the folder.
    mkdirSync(path.join(top, 'elsewhere'));
    writeFileSync(path.join(top, 'elsewhere/there.paving'), '// not in the folder\n');
    symlinkSync(path.join(top, 'elsewhere/there.paving'), path.join(folder, 'link.paving'));
    symlinkSync(path.join(top, 'elsewhere'), path.join(folder, 'linked'));
    return await use(folder);
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}
