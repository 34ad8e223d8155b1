import path from 'node:path';
import type { Command } from 'commander';
import { ruleNames } from '../../language/lowering/rule-pages.ts';
import { GUIDE, pageOfRule } from '../../language/pages.ts';
import { Paving } from '../../language/paving.ts';
import type { Project } from '../../language/lowering/project.ts';
import { nearest } from '../../language/syntax/nearest.ts';
import { table } from '../../language/views/text/table.ts';
import { NodeFiles, rootOf } from '../node-files.ts';
import { Failure } from './fail.ts';
import { coloursFor, write } from './output.ts';
import { FINDING_IDS, pageOf } from './pages.ts';
import { unreadable } from './unreadable.ts';

export function addExplain(program: Command): void {
  program
    .command('explain')
    .usage('[NAME] [FILE]')
    .argument('[name]')
    .argument('[file]')
    .summary('explain a finding or a rule')
    .description(
      'Shows the page about a finding or a rule: what it means, why it matters, what is asked and by whose word, a wrong and a right example. For a rule of your own, or as a job changes it, name the file too.'
    )
    .addHelpText('after', EXAMPLES)
    .action(explain);
}

const EXAMPLES = `
Examples:
  paving explain base-too-thin                  what it means, why it matters, a wrong and a right example
  paving explain base-too-thin terrace.paving   as it stands in this job
  paving explain base-on-clay terrace.paving    a rule of your own
  paving explain rules                          how to write a rule of your own
  paving explain                                all findings and rules there are`;

async function explain(name: string | undefined, file: string | undefined): Promise<void> {
  const colours = coloursFor(undefined);
  if (name === undefined) {
    const rows = [...FINDING_IDS, GUIDE].map(known => [known, pageOf(known).title]);
    await write(table([{ head: 'Name' }, { head: 'What it is' }], rows, colours).join('\n'), undefined);
    return;
  }
  const text = file === undefined ? shippedPage(name) : await pageIn(name, file);
  await write(text.replace(/^# .*$/m, colours.strong), undefined);
}

function shippedPage(name: string): string {
  if (name === GUIDE || FINDING_IDS.includes(name)) return pageOf(name).text;
  throw new Failure(
    `no finding or rule is called ${name}. ${helpFor(name, FINDING_IDS)} For a rule of your own name its file too: paving explain ${name} FILE`
  );
}

/** The page of a rule as it stands in a file. */
async function pageIn(name: string, written: string): Promise<string> {
  const project = await projectOf(written);
  const page = pageOfRule(project, name);
  if (page !== undefined) return page;
  const { own, shipped } = ruleNames(project);
  if (own.includes(name))
    throw new Failure(`the rule ${name} has an error, so it has no page yet. To see it write: paving check ${written}`);
  if (FINDING_IDS.includes(name)) return pageOf(name).text;
  throw new Failure(`no rule is called ${name} in ${written}. ${helpFor(name, [...own, ...shipped])}`);
}

async function projectOf(written: string): Promise<Project> {
  const file = path.resolve(written);
  const paving = new Paving(new NodeFiles({ root: rootOf(file), shownFrom: process.cwd() }));
  await paving.load(file);
  const look = paving.lookAtExamples(file);
  if (look === undefined) throw new Failure(unreadable(written, paving.problemOf(file) ?? 'missing'));
  return look.project;
}

/** A shorter part of a name is in too many of them. */
const SHORTEST_PART = 3;

/** A longer list is read by nobody. */
const MOST_NAMED = 8;

/** The name that was meant, and those of which a part begins with the word. */
function helpFor(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  const part = word.toLowerCase();
  const holding = part.length < SHORTEST_PART ? [] : known.filter(id => `-${id}`.includes(`-${part}`));
  const names = [...new Set([...(near === undefined ? [] : [near]), ...holding])].slice(0, MOST_NAMED);
  if (names.length === 0) return 'For a list write: paving explain.';
  return `Did you mean ${[names.slice(0, -1).join(', '), names.at(-1)!].filter(text => text !== '').join(' or ')}?`;
}
