import type { Command } from 'commander';
import { placeOfKey } from '../../language/findings/placed.ts';
import type { Schedule } from '../../language/schedule/contract.ts';
import { scheduleCalendar } from '../../language/views/calendar/schedule-calendar.ts';
import { scheduleCsv } from '../../language/views/csv/schedule-csv.ts';
import { scheduleJson } from '../../language/views/json/schedule-json.ts';
import { scheduleText } from '../../language/views/text/schedule/schedule-text.ts';
import { oneOf } from './choices.ts';
import { today } from '../today.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { asJson, coloursFor, write } from './output.ts';
import { Folders, readSpecs, type Reading } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { VERSION } from './version.ts';
import { hasJob, shownAs, type WithJob } from './with-job.ts';

const FORMATS = ['human', 'json', 'csv', 'calendar'] as const;

interface ScheduleOptions {
  readonly format: (typeof FORMATS)[number];
  readonly workings?: true;
  readonly asOf?: string;
  readonly output?: string;
}

export function addSchedule(program: Command): void {
  program
    .command('schedule')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('tasks in their order, with hours, days, waits and cautions')
    .description(
      `Lays the work over the days of the crew: tasks in the order of the trade, hours by rates, what each waits for and what to mind. What is logged as done is done. ${FILES}`
    )
    .option('--format <format>', 'human, json, csv or calendar', oneOf('--format', FORMATS), 'human')
    .option('--workings', 'show how the hours came about (JSON always does)')
    .option('--as-of <date>', 'the day for which it is worked out, such as 2026-04-18 (default: today)', readDate)
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(schedule);
}

const EXAMPLES = `
Examples:
  paving schedule terrace.paving                             who does what for how long
  paving schedule --workings terrace.paving                  with amounts and rates
  paving schedule --format calendar -o terrace.ics terrace.paving
  paving schedule --format csv -o terrace.csv terrace.paving

Crew, first day and tasks of your own stand in the spec: crew 2, Monday to Friday, begins on 2026-04-13.
In csv, words that a spreadsheet would take for a formula (=, +, - or @ first) have an apostrophe before them.
In a calendar a task keeps its mark after an edit: an event brought in again stands in the place of the one before.
Exit code: 0 fine, 1 a job has errors (what is sound is printed all the same), 2 could not run.`;

async function schedule(asked: readonly string[], options: ScheduleOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec, such as: paving schedule terrace.paving');
  if (options.workings === true && options.format !== 'human')
    throw new Failure(`--workings is for reading: leave out --format ${options.format}.`);
  const { specs, complaints } = await specPaths(asked);
  const asOf = options.asOf ?? today();
  const reading = await readSpecs(specs, readStandardInput, 'numbers', new Folders(asOf));
  const jobs = reading.evaluations.filter(hasJob);
  [...complaints, ...reading.complaints].forEach(complain);
  if (jobs.length === 0) {
    if (reading.evaluations.length > 0)
      complain('no file here has a job, so there is nothing to schedule. Name the file that uses these.');
    return;
  }
  await write(report(reading, jobs, asOf, options), options.output);
  if (jobs.some(job => job.findings.some(({ severity }) => severity === 'error'))) exitWithFindings();
}

interface Scheduled {
  readonly evaluation: WithJob;
  readonly file: string;
  readonly schedule: Schedule;
}

function report(
  reading: Reading,
  jobs: readonly WithJob[],
  asOf: string,
  { format, workings, output }: ScheduleOptions
): string {
  const all = jobs.map((evaluation): Scheduled => ({
    evaluation,
    file: shownAs(evaluation),
    schedule: reading.scheduleOf(evaluation)!
  }));
  switch (format) {
    case 'json':
      return asJson(
        scheduleJson({
          tool: `paving ${VERSION}`,
          asOf,
          jobs: all.map(({ schedule: of, evaluation, file }) => ({
            schedule: of,
            placeOf: key => placeOfKey(key, evaluation.places, file)
          }))
        })
      );
    case 'csv':
      return scheduleCsv(all.map(({ schedule: of }) => of));
    case 'calendar':
      return calendar(all, asOf);
    case 'human': {
      const colours = coloursFor(output);
      return all
        .map(({ schedule: of, file, evaluation }) =>
          scheduleText({ file, schedule: of, system: evaluation.job.system, workings: workings ?? false, colours })
        )
        .join('\n\n');
    }
  }
}

function calendar(all: readonly Scheduled[], asOf: string): string {
  const undated = all.find(({ schedule: { begins } }) => begins === undefined);
  if (undated !== undefined)
    throw new Failure(
      `a calendar needs the first day of the work: write \`begins on 2026-04-13\` into the job of ${undated.file}.`
    );
  return scheduleCalendar(
    all.map(({ file, schedule: of }) => ({ file, schedule: of })),
    asOf
  );
}
