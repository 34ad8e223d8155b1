import type { Command } from 'commander';
import { drain } from '../../language/paving.ts';
import { cuttingAdvice, type CuttingAdvice } from '../../language/quantities/cutting-advice.ts';
import { CAUTIONS } from '../../language/views/text/cautions.ts';
import { jobText, type JobReport } from '../../language/views/text/job-text.ts';
import { oneOf } from './choices.ts';
import { today } from '../today.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { jobsJson, placer, pricedIn } from './jobs-json.ts';
import { asJson, coloursFor, write } from './output.ts';
import { Folders, readSpecs, type Reading } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { hasJob, shownAs, type WithJob } from './with-job.ts';

const FORMATS = ['human', 'json'] as const;

interface QuantitiesOptions {
  readonly format: (typeof FORMATS)[number];
  readonly workings?: true;
  readonly cuts?: true;
  readonly starts?: true;
  readonly asOf?: string;
  readonly output?: string;
}

export function addQuantities(program: Command): void {
  program
    .command('quantities')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('work out areas, layers, dig, units and edging')
    .description(
      `Works out the quantities of jobs, area by area and for the whole job, in the measures the job shows. ${FILES}`
    )
    .option('--format <format>', 'human or json', oneOf('--format', FORMATS), 'human')
    .option('--workings', 'show how each number came about (JSON always does)')
    .option('--cuts', 'list every cut, how it is marked out, and which pieces come out of one unit')
    .option('--starts', 'look for starts, joints and sizes that leave less to cut (takes a while; not in JSON)')
    .option('--as-of <date>', 'the day for which it is worked out, such as 2026-04-18 (default: today)', readDate)
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(quantities);
}

const EXAMPLES = `
Examples:
  paving quantities terrace.paving                 tables in the job's own measures
  paving quantities --workings terrace.paving      with formula and values of each number
  paving quantities --cuts terrace.paving          with the cut list and the cutting plan
  paving quantities --starts terrace.paving        with what to write so that there is less to cut
  paving quantities .                              every job in this folder and below
  paving quantities --format json --as-of 2026-04-18 -o terrace.json terrace.paving

A file without a job is a library: it is read where a job uses it.
Exit code: 0 fine, 1 a job has errors (what is sound is printed all the same), 2 could not run.`;

async function quantities(asked: readonly string[], options: QuantitiesOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec or a folder. For this folder write: paving quantities .');
  if (options.starts === true && options.format === 'json')
    throw new Failure('--starts is for reading: leave out --format json.');
  const { specs, complaints } = await specPaths(asked);
  const asOf = options.asOf ?? today();
  const need = options.format === 'json' ? 'order' : 'numbers';
  const reading = await readSpecs(specs, readStandardInput, need, new Folders(asOf));
  const jobs = reading.evaluations.filter(hasJob);
  if (jobs.length > 0) await write(await report(reading, jobs, asOf, options), options.output);
  else if (reading.evaluations.length > 0)
    complain(
      'no file here has a job, so there is nothing to work out. Write `job "…" { rules north-america }` into one, or name the file that uses these.'
    );
  [...complaints, ...reading.complaints].forEach(complain);
  if (jobs.some(job => job.findings.some(({ severity }) => severity === 'error'))) exitWithFindings();
}

async function report(
  reading: Reading,
  jobs: readonly WithJob[],
  asOf: string,
  options: QuantitiesOptions
): Promise<string> {
  if (options.format === 'json') return asJson(await jobsJson(reading, jobs, asOf));
  const colours = coloursFor(options.output);
  const texts = await Promise.all(
    jobs.map(async job =>
      jobText({
        ...job,
        file: shownAs(job),
        placeOf: placer(job),
        workings: options.workings ?? false,
        cuts: options.cuts ?? false,
        ...(options.starts === true ? { starts: startsOf(job) } : {}),
        ...(await variantsOf(reading, job)),
        colours
      })
    )
  );
  const libraries = reading.libraries.map(file => `${file} has no job of its own: it counts where a job uses it.`);
  return [...texts, ...libraries, CAUTIONS.join('\n')].join('\n\n');
}

/** The price of the job as it is written is worked out to stand beside those of its variants. */
async function variantsOf(reading: Reading, job: WithJob): Promise<Pick<JobReport, 'variants' | 'priced'>> {
  const variants = await reading.variantsOf(job);
  return variants.length === 0 ? {} : { variants, ...(await pricedIn(reading, job)) };
}

/** Of every area that has numbers and is paved. */
function startsOf({ job, numbers }: WithJob): CuttingAdvice[] {
  const sound = new Set(numbers.quantities.areas.map(({ id }) => id));
  return job.areas
    .filter(({ key }) => sound.has(key))
    .flatMap(area => drain(cuttingAdvice(job, area, ['starts', 'inboard', 'sizes'])) ?? []);
}
