import type { Finding } from '../../language/findings/finding.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { Comparison } from '../../language/comparing/contract.ts';
import { comparisonSheet } from '../../language/views/comparison/comparison-sheet.ts';
import { loneJobLine, titleOf } from '../../language/views/comparison/lone-job.ts';
import { type ComparisonSheet, NOTHING_DIFFERS } from '../../language/views/comparison/sheet.ts';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import { comparisonPage, type PageFooter } from '../../language/views/html-page/comparison-page.ts';
import { comparisonMarkdown } from '../../language/views/markdown-page/comparison-markdown.ts';
import { forgeText } from '../../language/views/markdown-page/forge-text.ts';
import { overlayDrawing } from '../../language/views/plan/overlay/overlay-drawing.ts';
import { overlayText } from '../../language/views/plan/overlay/overlay-text.ts';
import { planChanges } from '../../language/views/plan/overlay/plan-changes.ts';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import { planOfJob } from '../../language/views/plan/plan-of-job.ts';
import type { System } from '../../language/job/job.ts';
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

export interface JobSheet {
  readonly sheet: ComparisonSheet;
  /** Where the plans differ. */
  readonly plans?: readonly [before: PlanInput, after: PlanInput];
  readonly system: System;
}

/** A comparison in words, as every printer of words lays it out. */
export interface CompareReport {
  /** Of every job that differs; of a job that is alone here also where it does not. */
  readonly sheets: readonly JobSheet[];
  /** Jobs that are new or gone, a line each. */
  readonly lone: readonly string[];
  /** What is said of the jobs that do not differ. */
  readonly same?: string;
}

export function compareReport(
  { before, after, isOneJob }: BothFiles,
  { jobs }: JobsCompared,
  isForClient: boolean
): CompareReport {
  const between = `${before.name} to ${after.name}`;
  const told = jobs.filter(job => isCompared(job) && (jobs.length === 1 || isOtherwise(job)));
  const unchanged = jobs.filter(job => isUnchanged(job) && jobs.length === 1);
  const same = jobs.length === 1 ? 0 : jobs.filter(job => !('side' in job) && !told.includes(job)).length;
  return {
    sheets: [
      ...told.filter(isCompared).map((job): JobSheet => {
        const { system, datum, money } = job.after.evaluation.job;
        const title = isOneJob ? titleOf(job.after.evaluation.job.title) : titleAndFile(job);
        const sheet = comparisonSheet({
          title,
          between,
          comparison: job.comparison,
          system,
          ...(datum && { datum }),
          ...(isForClient && { forClient: money })
        });
        return { sheet, system, ...plansOf(job) };
      }),
      ...unchanged.filter(isUnchanged).map(job => ({
        sheet: { title: `${titleOf(job.unchanged.job.title)} · ${fileShown(job)}`, between, notes: [], sections: [] },
        system: job.unchanged.job.system
      }))
    ],
    lone: jobs.filter(isLone).map(lineOf),
    ...(same === 0 ? {} : { same: sameLine(same, same === jobs.length) })
  };
}

function plansOf(job: JobCompared): Pick<JobSheet, 'plans'> {
  const plans = bothPlans(job);
  return planChanges(...plans).differs ? { plans } : {};
}

function bothPlans({ before, after }: JobCompared): [before: PlanInput, after: PlanInput] {
  const plan = ({ evaluation: { job, numbers } }: JobCompared['before']): PlanInput => planOfJob(job, numbers);
  return [plan(before), plan(after)];
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
    ...sheets.flatMap(({ sheet, plans, system }) => {
      const { title, between, sections } = sheet;
      const text = comparisonText(sheet, colours);
      if (plans === undefined || sections.some(({ id }) => id === 'sign')) return [text];
      return [text, overlayText(...plans, { title, between, system }, colours)];
    }),
    ...(lone.length === 0 ? [] : [lone.join('\n')]),
    ...(same === undefined ? [] : [same])
  ].join('\n\n');
}

/** Fit for a merge request. */
export function compareMarkdown({ sheets, lone, same }: CompareReport): string {
  const besides = [...lone, ...(same === undefined ? [] : [same])];
  return [comparisonMarkdown(sheets.map(({ sheet }) => sheet)), ...besides.map(forgeText)].join('\n\n');
}

/** In one file, with both plans over each other. */
export function comparePage({ sheets, lone, same }: CompareReport, footer: Omit<PageFooter, 'besides'>): string {
  const jobs = sheets.map(({ sheet, plans, system }) => {
    const { title, between } = sheet;
    return { sheet, ...(plans && { overlay: overlayDrawing(...plans, { title, between, system }) }) };
  });
  return comparisonPage(jobs, { ...footer, besides: [...lone, ...(same === undefined ? [] : [same])] });
}

/** Both plans of one job over each other. */
export function compareDrawing(job: JobCompared, between: string): string {
  const { title, system } = job.after.evaluation.job;
  return svgOf(overlayDrawing(...bothPlans(job), { title: titleOf(title), between, system }));
}

export function errorsOf({ findings }: Evaluation): Finding[] {
  return findings.filter(({ severity }) => severity === 'error');
}
