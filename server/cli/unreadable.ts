import type { Finding } from '../../language/findings/finding.ts';
import { placed } from '../../language/findings/placed.ts';
import type { ReadProblem } from '../../language/project.ts';

/** What is wrong with a file, and what to do about it. */
const WHY: Readonly<Record<ReadProblem, readonly [string, string?]>> = {
  missing: ['is not there'],
  forbidden: ['may not be read', 'Ask for the right to read it.'],
  folder: ['is a folder'],
  binary: ['holds no text', 'Name a job spec, or save it as plain text.'],
  encoding: ['is no UTF-8 text', 'Save it as UTF-8.'],
  'too-large': ['is too large to be a job spec', 'Part it into several files.'],
  outside: ['is a link that leads out of its folder', 'Name the file itself, or copy it in.']
};

/** What is said on standard error of a file that could not be read. */
export function unreadable(show: string, why: ReadProblem): string {
  const [what, help] = WHY[why];
  return `${show} ${what}.${help === undefined ? '' : ` ${help}`}`;
}

/** The same as a finding, for who reads the report alone. */
export function unreadableFinding(show: string, why: ReadProblem): Finding {
  return atTop('text-unreadable', show, `This file ${WHY[why][0]}. Nothing of it counts.`);
}

export function failedFinding(show: string): Finding {
  return atTop('internal', show, 'This program failed on this file; nothing of it counts.');
}

function atTop(id: string, file: string, message: string): Finding {
  return placed({ id, message, target: 'text' }, { places: new Map(), gaps: new Map() }, file);
}
