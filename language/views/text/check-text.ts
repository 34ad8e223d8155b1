import type { AcceptedFinding, Finding } from '../../findings/finding.ts';
import { acceptedCount, acceptedText } from './accepted-text.ts';
import { notChecked } from './cautions.ts';
import type { Colours } from './colours.ts';
import { countsText, findingText, numberOf } from './findings-text.ts';

export interface CheckReport {
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  /** What is set aside is listed, not only counted. */
  readonly listsAccepted: boolean;
  readonly textOf: (file: string) => string | undefined;
  /** Number of files checked. */
  readonly files: number;
  readonly hasJob: boolean;
  readonly colours: Colours;
}

/** All findings one below the other, then their count; of a job that passes, what was not checked. */
export function checkText(report: CheckReport): string {
  const { findings, accepted, listsAccepted, textOf, files, hasJob, colours } = report;
  const passes = hasJob && findings.every(({ severity }) => severity === 'note');
  const count = `${countsText(findings) ?? 'No findings'} in ${numberOf(files, 'file')}.`;
  return [
    ...findings.map(finding => `${findingText(finding, textOf(finding.file), colours)}\n`),
    ...(listsAccepted ? [`${acceptedText(accepted, colours)}\n`] : []),
    colours.strong([count, acceptedCount(accepted) ?? []].flat().join(' ')),
    ...(passes ? [notChecked(accepted.length > 0)] : [])
  ].join('\n');
}
