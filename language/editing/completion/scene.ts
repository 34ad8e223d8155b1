import type { Country, System } from '../../job/job.ts';
import { rulesAndSystem } from '../../lowering/job-words.ts';
import type { SpecText } from '../../lowering/names.ts';
import type { Project } from '../../lowering/project.ts';
import type { Cursor } from './cursor.ts';

/** What completion is worked out from: where the cursor stands, and the job around it. */
export interface Scene {
  readonly text: SpecText;
  readonly project: Project;
  readonly cursor: Cursor;
  readonly country: Country;
  readonly system: System;
  /** Other job specs that may be used, by their paths from this one. */
  readonly paths: readonly string[];
}

export function sceneAt(text: SpecText, project: Project, cursor: Cursor, paths: readonly string[]): Scene {
  return { text, project, cursor, paths, ...rulesAndSystem(project) };
}
