import { readFile, stat } from 'node:fs/promises';
import { drain, Paving } from '../../language/paving.ts';
import type { ReadProblem, SpecFiles } from '../../language/project.ts';
import { diffText, withHeading } from '../../language/views/text/diff-text.ts';
import { decode } from '../node-files.ts';
import { largestFile } from '../protocol.ts';
import { unreadable } from './unreadable.ts';

/**
 * A file as `git diff` shows it. Git hands over one text of one revision in a file of its own: what it uses does not lie
 * there, and may have been another then, so none of it is read. Whatever the file holds, there is a text.
 */
export async function diffTextOf(file: string): Promise<string> {
  const read = await textOf(file).catch((): { readonly problem: ReadProblem } => ({ problem: 'missing' }));
  if ('problem' in read) return `${unreadable('This file', read.problem)}\n`;
  const { text } = read;
  try {
    const paving = new Paving(ALONE);
    paving.setText(THE_TEXT, text);
    const evaluation = drain(paving.evaluate(THE_TEXT))!;
    const priced = drain(paving.priced(evaluation));
    return diffText({
      look: paving.look(THE_TEXT)!,
      evaluation,
      ...(priced === undefined ? {} : { priced })
    });
  } catch {
    return withHeading(text, ['Numbers of this text: none, since this program failed on it.']);
  }
}

async function textOf(file: string): Promise<ReturnType<typeof decode>> {
  const entry = await stat(file);
  if (entry.isDirectory()) return { problem: 'folder' };
  if (entry.size > largestFile) return { problem: 'too-large' };
  return decode(await readFile(file));
}

const THE_TEXT = 'this text';

/** A text whose files are not read: a path of one leads to nothing. */
const ALONE: SpecFiles = {
  resolve: (_, written) => `not read: ${written}`,
  read: () => Promise.resolve({ problem: 'missing' }),
  show: file => file
};
