import type { Job, Key } from '../../job/job.ts';
import { ToldHandles } from '../../lowering/handles/told-handles.ts';
import type { Look } from '../../paving.ts';

/**
 * Tells of the handles of a job, by the keys of their things, in a sentence why one can't be dragged; nothing where it can.
 * Each answer reads the statement of the thing alone.
 */
export function whyNotDragged({ project }: Look, job: Job | undefined): (thing: Key) => string | undefined {
  const handles = new ToldHandles(project, job);
  return thing => {
    const told = handles.told(thing);
    return 'why' in told ? told.why : undefined;
  };
}
