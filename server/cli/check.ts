import type { Command } from 'commander';
import type { Severity } from '../../language/findings/finding.ts';
import { checkJson } from '../../language/views/json/check-json.ts';
import { sarifLog } from '../../language/views/sarif/sarif.ts';
import { findingLine } from '../../language/views/text/findings-text.ts';
import { checkText } from '../../language/views/text/check-text.ts';
import { oneOf } from './choices.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { asJson, coloursFor, write } from './output.ts';
import { pageOf } from './pages.ts';
import { readSpecs, type Reading } from './reading.ts';
import { FILES, specPaths } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { VERSION } from './version.ts';

const FORMATS = ['human', 'json', 'sarif', 'line'] as const;

interface CheckOptions {
  readonly format: (typeof FORMATS)[number];
  readonly severity: Severity;
  readonly output?: string;
}

const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

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
  cat terrace.paving | paving check -      what comes over standard input

Exit code: 0 fine, 1 findings, 2 could not run. More on a finding: paving explain ID`;

async function check(asked: readonly string[], options: CheckOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec or a folder. For this folder write: paving check .');
  const { specs, complaints } = await specPaths(asked);
  const reading = await readSpecs(specs, readStandardInput, 'findings');
  const all = [...complaints, ...reading.complaints];
  if (specs.length > 0) await write(report(reading, options, specs.length, all.length === 0), options.output);
  all.forEach(complain);
  const asking = SEVERITIES.slice(0, SEVERITIES.indexOf(options.severity) + 1);
  if (reading.findings.some(({ severity }) => asking.includes(severity))) exitWithFindings();
}

function report(reading: Reading, { format, output }: CheckOptions, files: number, complete: boolean): string {
  const { findings, evaluations, textOf } = reading;
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
      return checkText({ findings, textOf, files, hasJob, colours: coloursFor(output) });
    }
  }
}
