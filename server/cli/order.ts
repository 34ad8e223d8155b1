import { writeFile } from 'node:fs/promises';
import type { Command } from 'commander';
import type { PricedJob } from '../../language/priced-job.ts';
import { orderCsv } from '../../language/views/csv/order-csv.ts';
import { orderText } from '../../language/views/text/order/order-text.ts';
import { clientSheet } from '../../language/views/text/quote/client-sheet.ts';
import { costsSheet } from '../../language/views/text/quote/costs-sheet.ts';
import type { QuoteInput } from '../../language/views/text/quote/quote-input.ts';
import { today } from '../today.ts';
import { oneOf } from './choices.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { jobsJson } from './jobs-json.ts';
import { asJson, coloursFor, write } from './output.ts';
import { Folders, readSpecs, type Reading } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { hasJob, shownAs, type WithJob } from './with-job.ts';

const FORMATS = ['human', 'json', 'csv', 'spreadsheet'] as const;

interface OrderOptions {
  readonly format: (typeof FORMATS)[number];
  readonly costs?: true;
  readonly client?: true;
  readonly workings?: true;
  readonly asOf?: string;
  readonly output?: string;
}

export function addOrder(program: Command): void {
  program
    .command('order')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('what to buy in the packs it is sold in, what it costs; the price for a client')
    .description(
      `Works out what to buy for the whole job, in the packs it is sold in, so that it covers the need at the least cost. What lies on hand and what was delivered counts. ${FILES}`
    )
    .option('--costs', 'the costs of all the work and what becomes the price: not for the client')
    .option('--client', 'the price as a client reads and signs it, without the costs behind it')
    .option('--workings', 'with --costs: show how each amount came about')
    .option('--format <format>', 'human, json, csv or spreadsheet', oneOf('--format', FORMATS), 'human')
    .option('--as-of <date>', 'the day for which it is worked out, such as 2026-04-18 (default: today)', readDate)
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(order);
}

const EXAMPLES = `
Examples:
  paving order terrace.paving                           what to buy, and other ways to buy it
  paving order --costs drive.paving                     what the work costs, and the price
  paving order --client drive.paving                    the sheet that a client signs
  paving order --format spreadsheet -o order.xlsx terrace.paving
  paving order --format csv -o order.csv terrace.paving

Prices stand in the spec or in a file that it uses: price washed-sand { bag of 0.5 cu ft for 4.98 USD }.
In csv, words that a spreadsheet would take for a formula (=, +, - or @ first) have an apostrophe before them.
Exit code: 0 fine, 1 a job has errors (what is sound is printed all the same), 2 could not run.`;

async function order(asked: readonly string[], options: OrderOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec, such as: paving order terrace.paving');
  checkOptions(options);
  const { specs, complaints } = await specPaths(asked);
  const asOf = options.asOf ?? today();
  const reading = await readSpecs(specs, readStandardInput, 'order', new Folders(asOf));
  const jobs = reading.evaluations.filter(hasJob);
  [...complaints, ...reading.complaints].forEach(complain);
  if (jobs.length === 0) {
    if (reading.evaluations.length > 0)
      complain('no file here has a job, so there is nothing to buy. Name the file that uses these.');
    return;
  }
  if (options.format === 'spreadsheet') await writeSpreadsheet(jobs, options.output!);
  else await write(await report(reading, jobs, asOf, options), options.output);
  for (const job of jobs) tellOldPrices(job, asOf);
  if (jobs.some(job => job.findings.some(({ severity }) => severity === 'error'))) exitWithFindings();
}

/** Beside the sheet, which may go to others. */
function tellOldPrices(job: WithJob, asOf: string): void {
  const old = job.findings.filter(({ id }) => OLD_PRICES.has(id)).length;
  if (old === 0) return;
  const [prices, hold] = old === 1 ? ['one price is', 'it'] : [`${old} prices are`, 'they'];
  complain(
    `${shownAs(job)}: ${prices} old on ${asOf}; ask whether ${hold} still hold${old === 1 ? 's' : ''}. paving check names them.`
  );
}

const OLD_PRICES: ReadonlySet<string> = new Set(['price-past', 'price-old']);

function checkOptions({ format, costs, client, workings, output }: OrderOptions): void {
  if (costs === true && client === true) throw new Failure('--costs and --client are two sheets: ask for one of them.');
  if ((costs === true || client === true) && format !== 'human')
    throw new Failure(`--costs and --client are for reading: leave out --format ${format}.`);
  if (workings === true && costs !== true) throw new Failure('--workings goes with --costs.');
  if (format === 'spreadsheet' && output === undefined)
    throw new Failure('a spreadsheet goes to a file: add -o order.xlsx.');
}

async function report(
  reading: Reading,
  jobs: readonly WithJob[],
  asOf: string,
  options: OrderOptions
): Promise<string> {
  const colours = coloursFor(options.output);
  switch (options.format) {
    case 'json':
      return asJson(await jobsJson(reading, jobs, asOf));
    case 'csv':
      return orderCsv(jobs.map(({ numbers }) => numbers.quantities));
    default:
      return (
        await Promise.all(
          jobs.map(async job => {
            if (options.costs !== true && options.client !== true)
              return orderText({
                file: shownAs(job),
                quantities: job.numbers.quantities,
                system: job.job.system,
                colours
              });
            const quote = quoteOf(job, await reading.pricedOf(job), colours);
            if (quote === undefined) return `${shownAs(job)} names no money: write prices, and what an hour costs.`;
            return options.client === true ? clientSheet(quote) : costsSheet(quote, options.workings === true);
          })
        )
      ).join('\n\n');
  }
}

function quoteOf(
  { job }: WithJob,
  priced: PricedJob | undefined,
  colours: QuoteInput['colours']
): QuoteInput | undefined {
  return priced?.costs === undefined
    ? undefined
    : { job, money: job.money, numbers: priced.numbers, costs: priced.costs, colours };
}

/** Loaded only where a spreadsheet is asked for. */
async function writeSpreadsheet(jobs: readonly WithJob[], file: string): Promise<void> {
  const { orderSpreadsheet } = await import('./order-spreadsheet.ts');
  const bytes = await orderSpreadsheet(jobs.map(({ numbers }) => numbers.quantities));
  await writeFile(file, bytes).catch(() => {
    throw new Failure(`${file} can't be written. Check that its folder is there and may be written to.`);
  });
}
