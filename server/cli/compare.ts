import type { Command } from 'commander';
import type { Evaluation } from '../../language/paving.ts';
import { comparisonJson } from '../../language/views/json/comparison-json.ts';
import { GitFailure } from '../git/git.ts';
import { today } from '../today.ts';
import { SIDES } from './both-sides.ts';
import { oneOf } from './choices.ts';
import { atRevisions, type BothFiles, type ComparedFiles, twoFiles } from './compared-files.ts';
import { comparedJobs, fileShown, type JobCompared, type JobsCompared } from './compared-jobs.ts';
import {
  compareDrawing,
  compareMarkdown,
  comparePage,
  type CompareReport,
  compareReport,
  compareText,
  errorsOf,
  isCompared,
  isLone,
  isOtherwise,
  isUnchanged
} from './compare-report.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { jobInput } from './compare-json.ts';
import { asJson, coloursFor, write } from './output.ts';
import { VERSION } from './version.ts';
import { shownAs } from './with-job.ts';

const FORMATS = ['human', 'json', 'markdown', 'html', 'svg'] as const;

interface CompareOptions {
  readonly from?: string;
  readonly to?: string;
  readonly format: (typeof FORMATS)[number];
  readonly client?: true;
  readonly exitCode?: true;
  readonly asOf?: string;
  readonly output?: string;
}

export function addCompare(program: Command): void {
  program
    .command('compare')
    .usage('[options] OLD NEW, or [options] FILE|FOLDER')
    .argument('[files...]')
    .summary('say what a change to a job comes to: quantities, findings, price, days')
    .description(
      'Compares two texts of a job by what they mean: what was edited, and what follows from it. Moved, renamed or reformatted text changes nothing. OLD and NEW are two job specs. With one file, or a folder for all jobs in it and below, what stands there now is compared with the revision that git keeps, and the files that a job uses are taken at the same revision.'
    )
    .option('--from <revision>', 'the older revision, such as HEAD~3, a branch or a tag (default: HEAD)')
    .option('--to <revision>', 'the newer revision (default: the working copy, as the files stand now)')
    .option('--client', 'the page that both sides sign: what changes and what it comes to, without your costs')
    .option(
      '--format <format>',
      'human, json, markdown, html or svg, both plans over each other',
      oneOf('--format', FORMATS),
      'human'
    )
    .option('--exit-code', 'exit code 0 same, 1 different, 2 could not run')
    .option('--as-of <date>', 'the day for which both are worked out, such as 2026-04-18 (default: today)', readDate)
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(compare);
}

const EXAMPLES = `
Examples:
  paving compare quote-1.paving quote-2.paving     two files, without git
  paving compare terrace.paving                    since the last commit
  paving compare --from quote-1 terrace.paving     since the revision that was tagged quote-1
  paving compare --client --from quote-1 --format html -o change.html drive.paving
                                                   the page that the client signs
  paving compare --format svg -o plan.svg terrace.paving
                                                   both plans over each other
  paving compare --from main --to wider jobs       every job in a folder, one branch to another
  paving compare --exit-code --format json .       for other programs

A file that was renamed is found by its text, or by the title of its job.
Exit code: 0 fine, 1 the newer text has errors (what is sound is compared all the same), 2 could not run.`;

async function compare(asked: readonly string[], options: CompareOptions): Promise<void> {
  const asOf = options.asOf ?? today();
  if (options.client === true && (options.format === 'json' || options.format === 'svg'))
    throw new Failure(`--client is for reading: leave out --format ${options.format}.`);
  const files = await filesOf(asked, options);
  const compared = await comparedJobs(files, asOf);
  [...files.complaints, ...compared.complaints].forEach(complain);
  if (files.isOneJob && compared.complaints.length === 0) refuseLibraries(files, compared);
  if (compared.jobs.length > 0) await write(report(files, compared, asOf, options), options.output);
  else if (files.complaints.length + compared.complaints.length === 0)
    complain('no file here has a job, so there is nothing to compare. Name the file that uses these.');
  tellErrors(files, compared);
  if (options.exitCode === true ? compared.jobs.some(isOtherwise) : hasNewErrors(compared)) exitWithFindings();
}

async function filesOf(asked: readonly string[], { from, to }: CompareOptions): Promise<BothFiles> {
  const [first, second, ...more] = asked;
  if (first === undefined)
    throw new Failure(
      'name two job specs, or one file or folder: paving compare OLD NEW, paving compare terrace.paving'
    );
  if (more.length > 0) throw new Failure('more was given than two files. A folder stands for all jobs in it.');
  if (second !== undefined) {
    if (from !== undefined || to !== undefined)
      throw new Failure('--from and --to go with one file or folder. Two files are compared as they stand.');
    return twoFiles(first, second);
  }
  try {
    return await atRevisions(first, from ?? 'HEAD', to);
  } catch (problem) {
    if (problem instanceof GitFailure) throw new Failure(asComplaint(problem.message));
    throw problem;
  }
}

/** Complaints begin with a small letter. */
function asComplaint(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/** Of two files that were named each has to have a job. */
function refuseLibraries(files: BothFiles, { jobs, empty }: JobsCompared): void {
  if (jobs.length > 0 && !jobs.some(isLone)) return;
  const [lone] = jobs.filter(isLone);
  const without = SIDES.filter(side => side !== lone?.side);
  const hollow = without.filter(side => empty.has(side));
  const named = hollow.length > 0 ? hollow : without;
  const names = named.map(side => files[side].name).join(' and ');
  const isOne = named.length === 1;
  throw new Failure(
    hollow.length > 0
      ? `${names} ${isOne ? 'is' : 'are'} empty, so there is nothing to compare.`
      : `${names} ${isOne ? 'has' : 'have'} no job, so there is nothing to compare. Name the files that use ${isOne ? 'it' : 'them'}.`
  );
}

function report(
  files: BothFiles,
  compared: JobsCompared,
  asOf: string,
  { format, output, client }: CompareOptions
): string {
  const told = (): CompareReport => compareReport(files, compared, client === true);
  switch (format) {
    case 'human':
      return compareText(told(), coloursFor(output));
    case 'markdown':
      return compareMarkdown(told());
    case 'html':
      return comparePage(told(), { tool: `paving ${VERSION}`, asOf });
    case 'svg':
      return compareDrawing(theOne(compared), `${files.before.name} to ${files.after.name}`);
    case 'json':
      return json(files, compared, asOf);
  }
}

/** One drawing is of one job. */
function theOne({ jobs }: JobsCompared): JobCompared {
  const [job, ...others] = jobs.filter(isOtherwise).filter(isCompared);
  if (job === undefined) throw new Failure('no job has both texts and differs, so there are no two plans to draw.');
  if (others.length > 0) {
    const names = [job, ...others].map(one => fileShown(one)).join(', ');
    throw new Failure(`these are ${others.length + 1} jobs that differ. Name one: ${names}.`);
  }
  return job;
}

function json(files: BothFiles, compared: JobsCompared, asOf: string): string {
  return asJson(
    comparisonJson({
      tool: `paving ${VERSION}`,
      asOf,
      from: files.before.name,
      to: files.after.name,
      jobs: compared.jobs.map(jobInput)
    })
  );
}

/** What has errors has no numbers there: what is sound is compared. */
function tellErrors({ before, after }: BothFiles, { jobs }: JobsCompared): void {
  for (const job of jobs) {
    if (isUnchanged(job)) tellErrorsOf(after, job.unchanged);
    else if (isLone(job)) tellErrorsOf(job.side === 'before' ? before : after, job.text.evaluation);
    else {
      tellErrorsOf(before, job.before.evaluation);
      tellErrorsOf(after, job.after.evaluation);
    }
  }
}

function tellErrorsOf({ name, isOnDisk }: ComparedFiles, evaluation: Evaluation): void {
  const errors = errorsOf(evaluation);
  const [first] = errors;
  if (first === undefined) return;
  const show = shownAs(evaluation);
  const where = isOnDisk ? show : `${show} in ${name}`;
  const help = isOnDisk
    ? `See: paving check ${show}`
    : `The first of ${errors.length}: ${first.file}, line ${first.line}: ${first.message}`;
  process.stderr.write(`paving: ${where} has errors; what is sound is compared. ${help}\n`);
}

function hasNewErrors({ jobs }: JobsCompared): boolean {
  return jobs.some(job => {
    if (isLone(job)) return job.side === 'after' && errorsOf(job.text.evaluation).length > 0;
    return errorsOf(isCompared(job) ? job.after.evaluation : job.unchanged).length > 0;
  });
}
