import type { Evaluation } from '../../language/paving.ts';

/** What is worked out of a file with a job. */
export type WithJob = Evaluation & Required<Pick<Evaluation, 'job' | 'numbers'>>;

export function hasJob(evaluation: Evaluation): evaluation is WithJob {
  return evaluation.job !== undefined && evaluation.numbers !== undefined;
}

/** The file that a job is read from, as it is shown. */
export function shownAs({ texts }: Evaluation): string {
  return texts[0]!.file;
}
