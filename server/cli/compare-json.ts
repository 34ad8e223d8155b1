import type { ComparedJobInput, ComparedTextInput } from '../../language/views/json/comparison-json.ts';
import type { JobFound, JobText } from './compared-jobs.ts';
import { errorsOf, isLone, isUnchanged } from './compare-report.ts';
import { shownAs } from './with-job.ts';

/** A job as the JSON of a comparison is made from. */
export function jobInput(job: JobFound): ComparedJobInput {
  if (isUnchanged(job)) {
    const { unchanged } = job;
    const text = { file: shownAs(unchanged), errors: errorsOf(unchanged).length };
    return { title: unchanged.job.title, before: text, after: text };
  }
  if (isLone(job)) return { title: job.text.evaluation.job.title, [job.side]: textInput(job.text) };
  const { before, after, comparison } = job;
  return { title: after.evaluation.job.title, before: textInput(before), after: textInput(after), comparison };
}

function textInput({ evaluation, priced }: JobText): ComparedTextInput {
  return {
    file: shownAs(evaluation),
    errors: errorsOf(evaluation).length,
    quantities: evaluation.numbers.quantities,
    ...(priced?.costs === undefined ? {} : { costs: priced.costs })
  };
}
