import { statSync } from 'node:fs';
import { URI } from 'vscode-uri';
import type { SpecFiles } from '../../language/project.ts';
import { abandoned } from '../feature.ts';
import type { FoundRevision, History, Problem } from '../history.ts';
import type { NamedRevision } from '../protocol.ts';
import { Git, GitFailure } from './git.ts';
import { listRevisions } from './list-revisions.ts';
import { commitOf, readRevision, RevisionFiles } from './revision-files.ts';

/** The history of folders on this machine. */
export class GitHistory implements History {
  starts = 0;

  /** Starts git once. */
  find(folder: string, revision: string, signal?: AbortSignal): Promise<FoundRevision | Problem> {
    return this.#asked(folder, signal, git => commitOf(git, revision));
  }

  /** Starts git four times. */
  specsAt(folder: string, commit: string): Promise<SpecFiles | Problem> {
    return this.#asked(folder, undefined, async git => new RevisionFiles(await readRevision(git, commit)));
  }

  /** Starts git twice. */
  list(folder: string, signal?: AbortSignal): Promise<readonly NamedRevision[] | Problem> {
    return this.#asked(folder, signal, listRevisions);
  }

  async #asked<T>(
    address: string,
    signal: AbortSignal | undefined,
    ask: (git: Git) => Promise<T>
  ): Promise<T | Problem> {
    const folder = URI.parse(address).fsPath;
    // Where there is no folder to start it in, git itself would seem to be missing.
    if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true)
      return { problem: 'The folder of this file is not there any more.' };
    const git = new Git(folder, signal);
    try {
      return await ask(git);
    } catch (error) {
      if (!(error instanceof GitFailure)) throw error;
      if (error.why === 'abandoned') throw abandoned();
      return { problem: error.message };
    } finally {
      this.starts += git.starts;
    }
  }
}
