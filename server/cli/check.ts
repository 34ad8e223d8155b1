import type { Command } from 'commander';
import { SEVERITIES, type Severity } from '../../language/job/severity.ts';
import { checkJson } from '../../language/views/json/check-json.ts';
import { sarifLog } from '../../language/views/sarif/sarif.ts';
import { findingLine } from '../../language/views/text/findings-text.ts';
import { checkText } from '../../language/views/text/check-text.ts';
import { today } from '../today.ts';
import { oneOf } from './choices.ts';
import { readDate } from './dates.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { mend } from './mend.ts';
import { asJson, coloursFor, write } from './output.ts';
import { pageOf } from './pages.ts';
import { Folders, inOrder, readSpecs, type Reading } from './reading.ts';
import { FILES, specPaths, STANDARD_INPUT, type SpecPath } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { VERSION } from './version.ts';

const FORMATS = ['human', 'json', 'sarif', 'line'] as const;

interface CheckOptions {
  readonly format: (typeof FORMATS)[number];
  readonly severity: Severity;
  readonly accepted?: true;
  readonly fix?: true;
  readonly asOf?: string;
  readonly output?: string;
}

export function addCheck(program: Command): void {
  program
    .command('check')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('say what is wrong, and where')
    .description(`Checks job specs: faults of the text, and the rules that each job names. ${FILES}`)
    .option('--format <format>', 'human, json, sarif or line', oneOf('--format', FORMATS), 'human')
    .option(
      '--severity <severity>',
      'error, warning or note: exit code 1 from there on',
      oneOf('--severity', SEVERITIES),
      'error'
    )
    .option('--accepted', 'list what is set aside: rule, thing, how long, where and why')
    .option('--fix', 'make the fixes that keep the meaning, then say what is left')
    .option(
      '--as-of <date>',
      'the day on which it is asked what is set aside, such as 2026-04-18 (default: today)',
      readDate
    )
    .option('-o, --output <file>', 'write to a file')
    .addHelpText('after', EXAMPLES)
    .action(check);
}

const EXAMPLES = `
Examples:
  paving check terrace.paving              one job
  paving check .                           every job spec in this folder and below
  paving check --severity warning jobs     exit code 1 on warnings too
  paving check --format line jobs          one line a finding: file:line:column: severity: message [id]
  paving check --format sarif -o found.sarif jobs
  paving check --accepted jobs             what is set aside as well
  paving check --fix terrace.paving        mend what can be mended without changing what it means
  cat terrace.paving | paving check -      what comes over standard input

Exit code: 0 fine, 1 findings, 2 could not run. More on a finding: paving explain ID`;

async function check(asked: readonly string[], options: CheckOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec or a folder. For this folder write: paving check .');
  refuseMixed(asked, options);
  const { specs, complaints } = await specPaths(asked);
  const { reading, said, standardInput } = await readAndMend(specs, options);
  const all = [...complaints, ...reading.complaints];
  if (standardInput !== undefined) process.stdout.write(standardInput);
  if (specs.length > 0) {
    const isForReader = options.format === 'human';
    const text = report(reading, options, specs.length, all.length === 0);
    const told = isForReader ? [...said, ...(said.length === 0 ? [] : ['']), text].join('\n') : text;
    if (!isForReader) said.forEach(tell);
    if (standardInput !== undefined && options.output === undefined) tell(told);
    else await write(told, options.output);
  }
  all.forEach(complain);
  const asking = SEVERITIES.slice(0, SEVERITIES.indexOf(options.severity) + 1);
  if (reading.findings.some(({ severity }) => asking.includes(severity))) exitWithFindings();
}

/** A text for a reader and data for a program never come mixed. */
function refuseMixed(asked: readonly string[], { format, accepted, fix, output }: CheckOptions): void {
  if (format === 'human') return;
  if (accepted)
    throw new Failure(
      `--accepted lists for a reader. Leave out --format ${format}; JSON and SARIF tell what is set aside anyway.`
    );
  if (fix && output === undefined && asked.includes(STANDARD_INPUT))
    throw new Failure(`--fix writes the mended text to standard output. Say with -o where the ${format} report goes.`);
}

/** The text that a fix leaves goes where results go: what is told of it goes beside. */
function tell(text: string): void {
  process.stderr.write(`${text}\n`);
}

interface Checked {
  readonly reading: Reading;
  /** What was mended. */
  readonly said: readonly string[];
  /** What is to be written in the place of what came over standard input. */
  readonly standardInput?: string;
}

async function readAndMend(specs: readonly SpecPath[], { fix, asOf = today() }: CheckOptions): Promise<Checked> {
  const folders = new Folders(asOf);
  let input = specs.some(({ fromStandardInput }) => fromStandardInput) ? await readStandardInput() : new Uint8Array();
  const read = (): Promise<Reading> => readSpecs(specs, () => Promise.resolve(input), 'findings', folders);
  const reading = await read();
  if (!fix) return { reading, said: [] };
  const { said, standardInput } = await mend(specs, reading, folders);
  if (standardInput !== undefined) input = Buffer.from(standardInput);
  return { reading: await read(), said, ...(standardInput === undefined ? {} : { standardInput }) };
}

function report(
  reading: Reading,
  { format, accepted: listsAccepted, output }: CheckOptions,
  files: number,
  complete: boolean
): string {
  const { accepted, evaluations, textOf } = reading;
  const findings =
    format === 'json' || format === 'sarif' ? inOrder([...reading.findings, ...accepted]) : reading.findings;
  switch (format) {
    case 'json':
      return asJson(checkJson(findings));
    case 'sarif':
      return asJson(
        sarifLog({ version: VERSION, findings, pageOf: name => reading.rulePageOf(name) ?? pageOf(name), complete })
      );
    case 'line':
      return findings.map(findingLine).join('\n');
    case 'human': {
      const hasJob = evaluations.some(({ job }) => job !== undefined);
      return checkText({
        findings,
        accepted,
        listsAccepted: listsAccepted ?? false,
        textOf,
        files,
        hasJob,
        colours: coloursFor(output)
      });
    }
  }
}
