import type { Command } from 'commander';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import { planDrawing } from '../../language/views/plan/plan-drawing.ts';
import { planOfJob } from '../../language/views/plan/plan-of-job.ts';
import { planText } from '../../language/views/plan/plan-text.ts';
import { sectionDrawing } from '../../language/views/section/section-drawing.ts';
import { sectionOfJob } from '../../language/views/section/section-of-job.ts';
import { sectionText } from '../../language/views/section/section-text.ts';
import { oneOf } from './choices.ts';
import { today } from '../today.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { coloursFor, write } from './output.ts';
import { Folders, readSpecs } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { hasJob, shownAs, type WithJob } from './with-job.ts';

const FORMATS = ['svg', 'text'] as const;

interface DrawOptions {
  readonly format: (typeof FORMATS)[number];
  readonly output?: string;
  readonly section?: string;
}

export function addDraw(program: Command): void {
  program
    .command('draw')
    .usage('[options] FILE')
    .argument('[files...]')
    .summary('draw the plan: every unit, the cuts numbered; or a section')
    .description(
      `Draws the plan of a job to scale: every unit as it lies, cuts with their numbers, borders, what is kept out, where laying begins, points, heights, falls, gates, drains and pipes. With --section the cut along a section that the job names (section NAME P to Q to R, of two points or more), or along one of its lines. ${FILES} One job is drawn at a time.`
    )
    .option('--format <format>', 'svg, a drawing, or text, the same in words', oneOf('--format', FORMATS), 'svg')
    .option('--section <name>', 'draw the cut along a section or a line of the job, not the plan')
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(draw);
}

const EXAMPLES = `
Examples:
  paving draw -o terrace.svg terrace.paving        a drawing that any browser opens and prints to scale
  paving draw --format text terrace.paving         sides, units, and the place of each cut in words
  paving draw --section across -o across.svg terrace.paving    ground, finish, layers and dig along a line
  paving draw --section spine -o spine.svg path.paving         a path cut lengthways, along line spine P to Q to R

The drawing tells its paper and scale. Before taking measures from a print, check its bar with a rule.
Exit code: 0 fine, 1 the job has errors (what is sound is drawn all the same), 2 could not run.`;

async function draw(asked: readonly string[], options: DrawOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec, such as: paving draw -o terrace.svg terrace.paving');
  const { specs, complaints } = await specPaths(asked);
  const reading = await readSpecs(specs, readStandardInput, 'numbers', new Folders(today()));
  const [job, ...others] = reading.evaluations.filter(hasJob);
  [...complaints, ...reading.complaints].forEach(complain);
  if (job === undefined) {
    if (reading.evaluations.length > 0)
      complain('no file here has a job, so there is nothing to draw. Name the file that uses these.');
    return;
  }
  if (others.length > 0)
    throw new Failure(`these are ${others.length + 1} jobs. Name one: ${[job, ...others].map(shownAs).join(', ')}.`);
  await write(drawn(job, options), options.output);
  if (job.findings.some(({ severity }) => severity === 'error')) tellErrors(shownAs(job));
}

function drawn({ job, numbers }: WithJob, { format, output, section }: DrawOptions): string {
  if (section !== undefined) {
    const cut = sectionOfJob(job, numbers, section);
    if (cut === undefined) throw new Failure(noSection(section, job.sections, job.lines));
    return format === 'svg' ? svgOf(sectionDrawing(cut)) : sectionText(cut, coloursFor(output));
  }
  const plan = planOfJob(job, numbers);
  return format === 'svg' ? svgOf(planDrawing(plan)) : planText(plan, coloursFor(output));
}

type Named = readonly { readonly name: string }[];

function noSection(asked: string, sections: Named, lines: Named): string {
  const known = [...sections, ...lines].map(({ name }) => name);
  const what = `the job has no section or line ${asked}.`;
  if (known.length === 0) return `${what} Write \`section ${asked} A to B\` with two of its points or more.`;
  return `${what} It has: ${known.join(', ')}.`;
}

/** A drawing has no room for findings. */
function tellErrors(show: string): void {
  process.stderr.write(`paving: ${show} has errors; what is sound is drawn. See: paving check ${show}\n`);
  exitWithFindings();
}
