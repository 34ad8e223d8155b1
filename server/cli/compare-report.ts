import type { Finding } from '../../language/findings/finding.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { Comparison } from '../../language/comparing/contract.ts';
import { comparisonSheet } from '../../language/views/comparison/comparison-sheet.ts';
import { loneJobLine, titleOf } from '../../language/views/comparison/lone-job.ts';
import { type ComparisonSheet, NOTHING_DIFFERS } from '../../language/views/comparison/sheet.ts';
import type { Colours } from '../../language/views/text/colours.ts';
import { comparisonText } from '../../language/views/text/comparison/comparison-text.ts';
import type { BothFiles } from './compared-files.ts';
import {
  fileShown,
  type JobCompared,
  type JobFound,
  type JobsCompared,
  type LoneJob,
  type UnchangedJob
} from './compared-jobs.ts';
import { shownAs } from './with-job.ts';

/** A comparison in words, as every printer of words lays it out. */
export interface CompareReport {
  /** Of every job that differs; of a job that is alone here also where it does not. */
  readonly sheets: readonly ComparisonSheet[];
  /** Jobs that are new or gone, a line each. */
  readonly lone: readonly string[];
  /** What is said of the jobs that do not differ. */
  readonly same?: string;
}

export function compareReport({ before, after, isOneJob }: BothFiles, { jobs }: JobsCompared): CompareReport {
  const between = `${before.name} to ${after.name}`;
  const told = jobs.filter(job => isCompared(job) && (jobs.length === 1 || isOtherwise(job)));
  const unchanged = jobs.filter(job => isUnchanged(job) && jobs.length === 1);
  const same = jobs.length === 1 ? 0 : jobs.filter(job => !('side' in job) && !told.includes(job)).length;
  return {
    sheets: [
      ...told.filter(isCompared).map(job =>
        comparisonSheet({
          title: isOneJob ? titleOf(job.after.evaluation.job.title) : titleAndFile(job),
          between,
          comparison: job.comparison,
          system: job.after.evaluation.job.system
        })
      ),
      ...unchanged.filter(isUnchanged).map(job => ({
        title: `${titleOf(job.unchanged.job.title)} · ${fileShown(job)}`,
        between,
        sections: []
      }))
    ],
    lone: jobs.filter(isLone).map(lineOf),
    ...(same === 0 ? {} : { same: sameLine(same, same === jobs.length) })
  };
}

export function isCompared(job: JobFound): job is JobCompared {
  return 'comparison' in job;
}

export function isLone(job: JobFound): job is LoneJob {
  return 'side' in job;
}

export function isUnchanged(job: JobFound): job is UnchangedJob {
  return 'unchanged' in job;
}

function titleAndFile(job: JobCompared): string {
  const was = shownAs(job.before.evaluation);
  const file = fileShown(job);
  return `${titleOf(job.after.evaluation.job.title)} · ${file}${was === file ? '' : ` (was ${was})`}`;
}

function lineOf({ side, text }: LoneJob): string {
  const { job, numbers } = text.evaluation;
  return loneJobLine({
    kind: side === 'after' ? 'new' : 'gone',
    title: job.title,
    file: shownAs(text.evaluation),
    quantities: numbers.quantities,
    ...(text.priced === undefined ? {} : { priced: text.priced }),
    system: job.system
  });
}

function sameLine(same: number, areAll: boolean): string {
  const jobs = same === 1 ? 'job' : 'jobs';
  return NOTHING_DIFFERS.replace(/\.$/, ` in ${same} ${areAll ? '' : 'other '}${jobs}.`);
}

/** Whether a job is another: by anything but what things are called. */
export function isOtherwise(job: JobFound): boolean {
  return isLone(job) || (isCompared(job) && differs(job.comparison));
}

function differs({ edits, numbers, findings, money, days }: Comparison): boolean {
  return edits.length > 0 || numbers.length > 0 || findings.length > 0 || money.length > 0 || days !== undefined;
}

/** For a reader. */
export function compareText({ sheets, lone, same }: CompareReport, colours: Colours): string {
  return [
    ...sheets.map(sheet => comparisonText(sheet, colours)),
    ...(lone.length === 0 ? [] : [lone.join('\n')]),
    ...(same === undefined ? [] : [same])
  ].join('\n\n');
}

export function errorsOf({ findings }: Evaluation): Finding[] {
  return findings.filter(({ severity }) => severity === 'error');
}
