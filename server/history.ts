// What a host can tell of the past of a folder. Node asks git; a browser has nothing to ask.
import type { SpecFiles } from '../language/project.ts';
import type { NamedRevision } from './protocol.ts';

/** Why there is no answer, in words for the person who asked. */
export interface Problem {
  readonly problem: string;
}

/** A revision as seen from a folder. */
export interface FoundRevision {
  readonly commit: string;
  /** The path of the folder from the top of its repository: empty, or with a slash at its end. */
  readonly prefix: string;
}

/** Folders are known by their addresses. Each answer starts git a fixed number of times, however many files there are. */
export interface History {
  /** How often git was started, for tests. */
  readonly starts: number;
  find(folder: string, revision: string, signal?: AbortSignal): Promise<FoundRevision | Problem>;
  /** All job specs of a commit, by their paths from the top of the repository. */
  specsAt(folder: string, commit: string): Promise<SpecFiles | Problem>;
  /** Branches, tags, and the last commits that touch the folder. */
  list(folder: string, signal?: AbortSignal): Promise<readonly NamedRevision[] | Problem>;
}

export function isProblem(answer: object): answer is Problem {
  return 'problem' in answer;
}
