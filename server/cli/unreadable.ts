import { FAULTS } from '../../language/findings/fault-list.ts';
import type { Finding } from '../../language/findings/finding.ts';
import type { ReadProblem } from '../../language/project.ts';

/** What is said on standard error of a file that could not be read. */
export function unreadable(show: string, why: ReadProblem): string {
  const what: Readonly<Record<ReadProblem, string>> = {
    missing: `${show} is not there.`,
    forbidden: `${show} may not be read. Ask for the right to read it.`,
    folder: `${show} is a folder.`,
    binary: `${show} holds no text. Name a job spec, or save it as plain text.`,
    encoding: `${show} is no UTF-8 text. Save it as UTF-8.`,
    'too-large': `${show} is too large to be a job spec. Part it into several files.`,
    outside: `${show} is a link that leads out of its folder. Name the file itself, or copy it in.`
  };
  return what[why];
}

/** The same as a finding, for who reads the report alone. */
export function unreadableFinding(show: string, why: ReadProblem): Finding {
  const what: Readonly<Record<ReadProblem, string>> = {
    missing: 'This file is not there.',
    forbidden: 'This file may not be read.',
    folder: 'This is a folder.',
    binary: 'This file holds no text.',
    encoding: 'This file is no UTF-8 text.',
    'too-large': 'This file is too large to be a job spec.',
    outside: 'This file is a link that leads out of its folder.'
  };
  return atTop('text-unreadable', show, `${what[why]} Nothing of it counts.`);
}

export function failedFinding(show: string): Finding {
  return atTop('internal', show, 'This program failed on this file; nothing of it counts.');
}

function atTop(id: string, file: string, message: string): Finding {
  return {
    id,
    family: 'fault',
    severity: FAULTS[id]!.severity,
    message,
    target: 'text',
    file,
    line: 1,
    column: 1,
    endLine: 1,
    endColumn: 1,
    values: [],
    related: [],
    fixes: []
  };
}
