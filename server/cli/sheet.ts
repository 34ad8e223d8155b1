import type { Command } from 'commander';
import { levelSheet } from '../../language/views/text/level-sheet/level-sheet.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { coloursFor, write } from './output.ts';
import { Folders, readSpecs } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { today } from '../today.ts';
import { hasJob } from './with-job.ts';

interface SheetOptions {
  readonly asOf?: string;
  readonly output?: string;
}

export function addSheet(program: Command): void {
  program
    .command('sheet')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('print the level sheet for the site')
    .description(
      `Prints the sheet for the site: points and tapes, every height layer by layer, falls and steps along the sides, boxes, gates, drains, and what lies under the paving. ${FILES}`
    )
    .option('--as-of <date>', 'the day for which it is worked out, such as 2026-04-18 (default: today)', readDate)
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(sheet);
}

const EXAMPLES = `
Examples:
  paving sheet terrace.paving                      heights from the bottom of the dig to the finish
  paving sheet -o sheet.txt terrace.paving         to print and take along

How heights are printed, how far apart, and the string they are measured from stand in the spec: level-sheet { … }.
Exit code: 0 fine, 1 a job has errors (what is sound is printed all the same), 2 could not run.`;

async function sheet(asked: readonly string[], options: SheetOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec, such as: paving sheet terrace.paving');
  const { specs, complaints } = await specPaths(asked);
  const reading = await readSpecs(specs, readStandardInput, 'numbers', new Folders(options.asOf ?? today()));
  const jobs = reading.evaluations.filter(hasJob);
  [...complaints, ...reading.complaints].forEach(complain);
  if (jobs.length === 0) {
    if (reading.evaluations.length > 0)
      complain('no file here has a job, so there is no sheet. Name the file that uses these.');
    return;
  }
  const colours = coloursFor(options.output);
  await write(
    jobs.map(({ texts, job, numbers }) => levelSheet(texts[0]!.file, job, numbers, colours)).join('\n\n'),
    options.output
  );
  if (jobs.some(job => job.findings.some(({ severity }) => severity === 'error'))) exitWithFindings();
}
