import type { Finding } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import type { Evaluation } from '../paving.ts';

/** The first error that took an area's numbers away: in the thing that broke it, else in the area itself, else in what that thing stands in. */
export function errorBehind({ findings, job }: Evaluation, key: Key): Finding | undefined {
  const because = job?.missing.find(missing => missing.key === key)?.because;
  const errors = findings.filter(({ severity }) => severity === 'error');
  return (
    errors.find(({ target }) => nameIn(target) === because) ??
    errors.find(({ target }) => target === key || target.startsWith(`${key}/`)) ??
    errors[0]
  );
}
