import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Command } from 'commander';
import { diffCommand, type DiffSetUp, setUpDiff, takeAwayDiff } from '../git/diff-set-up.ts';
import { Git, GitFailure } from '../git/git.ts';
import { diffTextOf } from './diff-text-of.ts';
import { Failure } from './fail.ts';
import { write } from './output.ts';

export function addGitDiff(program: Command): void {
  program
    .command('git-diff')
    .usage('on|off [FOLDER], or text FILE')
    .argument('[what]')
    .argument('[path]')
    .summary('let git diff show the quantities of job specs as well')
    .description(
      'Makes git diff, git show and git log -p show the numbers of a job below its text, one a line, so that a change of text and what it comes to stand in one view. On and off concern this clone alone: nothing that is committed changes, and nobody else sees it.'
    )
    .addHelpText('after', EXAMPLES)
    .action(gitDiff);
}

const EXAMPLES = `
Examples:
  paving git-diff on                       in the repository of this folder
  paving git-diff on jobs                  in the repository of another folder
  paving git-diff off                      takes away what on wrote, and nothing else
  paving git-diff text terrace.paving      what git shows of a file; git calls this by itself

Git hands over one file at a time, so what a job uses is not read: then outlines alone are told, and that is said.
Everything, with the findings and the price: paving compare terrace.paving
The plain text alone: git diff --no-textconv
Exit code: 0 fine, 2 could not run; of text always 0.`;

async function gitDiff(what: string | undefined, given: string | undefined): Promise<void> {
  switch (what) {
    case 'text':
      if (given === undefined) throw new Failure('name a job spec, such as: paving git-diff text terrace.paving');
      return write(await diffTextOf(given), undefined);
    case 'on':
    case 'off':
      return write(await set(what, given ?? '.'), undefined);
    default:
      throw new Failure('write paving git-diff on, or paving git-diff off.');
  }
}

async function set(what: 'on' | 'off', asked: string): Promise<string> {
  const folder = path.resolve(asked);
  const entry = await stat(folder).catch(() => undefined);
  if (entry?.isDirectory() !== true) throw new Failure(`there is no folder ${asked}. Check the name.`);
  const git = new Git(folder);
  try {
    return what === 'on' ? on(await setUpDiff(git, folder, ownCommand())) : off(await takeAwayDiff(git, folder));
  } catch (problem) {
    if (problem instanceof GitFailure) throw new Failure(complaintOf(problem, asked));
    throw problem;
  }
}

/** The program that runs now, wherever it lies. */
function ownCommand(): string {
  const isEditor = 'electron' in process.versions;
  return diffCommand([...(isEditor ? ['ELECTRON_RUN_AS_NODE=1'] : []), process.execPath, __filename]);
}

function complaintOf({ why, message }: GitFailure, asked: string): string {
  if (why === 'no repository') return `the folder ${asked} is under no version control by git.`;
  return why === 'no git' ? 'git is not installed here, or not on the path.' : message;
}

function on({ root, config, attributes, changedConfig, changedAttributes, overruledBy }: DiffSetUp): string {
  const change = (changed: boolean, file: string, line: string): string =>
    `  ${changed ? 'wrote to' : 'stood in'} ${file}: ${line}`;
  return [
    changedConfig || changedAttributes
      ? `git diff shows the numbers of job specs in ${root} from now on.`
      : `git diff shows the numbers of job specs in ${root} already: nothing was changed.`,
    change(changedConfig, config, 'diff.paving.textconv, the command that git runs'),
    change(changedAttributes, attributes, '*.paving diff=paving, with a remark above it'),
    ...(overruledBy === undefined
      ? []
      : [`Another line says diff=${overruledBy} of job specs and stands over it: take that out, or nothing is shown.`]),
    'Both are of this clone alone. To undo it: paving git-diff off'
  ].join('\n');
}

function off({ root, config, attributes, changedConfig, changedAttributes }: DiffSetUp): string {
  if (!changedConfig && !changedAttributes)
    return `git diff showed plain text in ${root} already: nothing was changed.`;
  return [
    `git diff shows plain text in ${root} again.`,
    ...(changedConfig ? [`  taken out of ${config}: diff.paving.textconv`] : []),
    ...(changedAttributes ? [`  taken out of ${attributes}: *.paving diff=paving, with the remark above it`] : [])
  ].join('\n');
}
