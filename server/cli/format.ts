import type { Command } from 'commander';
import { formatText } from '../../language/format/format.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { numberOf } from '../../language/views/text/findings-text.ts';
import { decode, NodeFiles, rootOf } from '../node-files.ts';
import { complain, exitWithFindings, Failure } from './fail.ts';
import { write } from './output.ts';
import { FILES, specPaths, STANDARD_INPUT, type SpecPath } from './spec-paths.ts';
import { readStandardInput } from './standard-input.ts';
import { unreadable } from './unreadable.ts';
import { writeBack } from './write-back.ts';

interface FormatOptions {
  readonly write?: true;
}

export function addFormat(program: Command): void {
  program
    .command('format')
    .usage('[options] FILE…')
    .argument('[files...]')
    .summary('line up a job spec')
    .description(`Prints a job spec with everything lined up; every quantity and comment stays as written. ${FILES}`)
    .option('-w, --write', 'write it into the file instead')
    .addHelpText('after', EXAMPLES)
    .action(format);
}

const EXAMPLES = `
Examples:
  paving format terrace.paving         print it; the file stays as it is
  paving format -w terrace.paving      write it into the file
  paving format -w .                   every job spec in this folder and below
  paving format - < terrace.paving     what comes over standard input

A text with a fault in its writing is left as it is, and the exit code is 1.`;

async function format(asked: readonly string[], options: FormatOptions): Promise<void> {
  if (asked.length === 0) throw new Failure('name a job spec. To write all in this folder: paving format -w .');
  if (options.write && asked.includes(STANDARD_INPUT))
    throw new Failure('standard input can’t be written to. Leave out -w.');
  const { specs, complaints } = await specPaths(asked);
  if (!options.write && specs.length > 1)
    throw new Failure(`these are ${specs.length} files. Name one to print it, or write them all with -w.`);
  complaints.forEach(complain);
  const parse = createParse();
  let written = 0;
  for (const spec of specs) {
    const show = showing(spec);
    const text = await textOf(spec, show);
    if (text === undefined) continue;
    const isBroken = parse(text).faults.length > 0;
    if (isBroken) leftAlone(show);
    const formatted = formatText(text, parse);
    if (!options.write) process.stdout.write(formatted);
    else if (formatted !== text && (await writeBack(spec.file, show, formatted))) written++;
  }
  if (options.write && specs.length > 0)
    await write(`${written} of ${numberOf(specs.length, 'file')} written.`, undefined);
}

function leftAlone(show: string): void {
  process.stderr.write(`paving: ${show} has a fault in its writing and is left as it is. See: paving check ${show}\n`);
  exitWithFindings();
}

async function textOf({ file, fromStandardInput }: SpecPath, show: string): Promise<string | undefined> {
  const read = fromStandardInput ? decode(await readStandardInput()) : await filesOf(file).read(file);
  if ('text' in read) return read.text;
  complain(unreadable(show, read.problem));
  return undefined;
}

function showing({ file }: SpecPath): string {
  return filesOf(file).show(file);
}

function filesOf(file: string): NodeFiles {
  return new NodeFiles({ root: rootOf(file), shownFrom: process.cwd() });
}
