import type { Finding } from '../../findings/finding.ts';
import { NOT_CHECKED } from './cautions.ts';
import type { Colours } from './colours.ts';
import { countsText, findingText, numberOf } from './findings-text.ts';

export interface CheckReport {
  readonly findings: readonly Finding[];
  readonly textOf: (file: string) => string | undefined;
  /** Number of files checked. */
  readonly files: number;
  readonly hasJob: boolean;
  readonly colours: Colours;
}

/** All findings one below the other, then their count; of a job that passes, what was not checked. */
export function checkText({ findings, textOf, files, hasJob, colours }: CheckReport): string {
  const passes = hasJob && findings.every(({ severity }) => severity === 'note');
  const count = `${countsText(findings) ?? 'No findings'} in ${numberOf(files, 'file')}.`;
  return [
    ...findings.map(finding => `${findingText(finding, textOf(finding.file), colours)}\n`),
    colours.strong(count),
    ...(passes ? [NOT_CHECKED] : [])
  ].join('\n');
}
