import type { Finding } from '../../findings/finding.ts';
import type { Severity } from '../../job/severity.ts';
import { acceptedCount } from '../text/accepted-text.ts';
import { countsText } from '../text/findings-text.ts';
import { type ContentRow, type Contents, group } from './content-row.ts';

/** More findings of one weight than these nobody reads in a list. */
const MOST_FINDINGS = 500;

const HEADS: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors'],
  ['warning', 'Warnings'],
  ['note', 'Notes']
];

/** What was found, by weight; what is set aside is counted. */
export function findingRows(contents: Contents): ContentRow[] {
  const { findings, accepted } = contents.evaluation;
  const inside = HEADS.flatMap(([severity, head]) =>
    group(
      `findings/${severity}`,
      head,
      shownOf(contents, severity),
      String(findings.filter(finding => finding.severity === severity).length)
    )
  );
  const setAside = acceptedCount(accepted)?.replace(/\.$/, '');
  const value = [countsText(findings) ?? 'none', ...(setAside === undefined ? [] : [setAside])].join(', ');
  return [{ id: 'findings', kind: 'group', label: 'Findings', value, inside }];
}

function shownOf(contents: Contents, severity: Severity): ContentRow[] {
  const findings = contents.evaluation.findings.filter(finding => finding.severity === severity);
  const more = findings.length - MOST_FINDINGS;
  return [
    ...findings.slice(0, MOST_FINDINGS).map(finding => findingRow(contents, finding)),
    ...(more > 0
      ? [{ id: `findings/${severity}/more`, kind: severity, label: `${more} more are not shown.`, inside: [] }]
      : [])
  ];
}

function findingRow({ file }: Contents, finding: Finding): ContentRow {
  const { id, target, severity, message, line } = finding;
  return {
    id: `findings/${id}/${target}`,
    kind: severity,
    label: message,
    value: `line ${line}${finding.file === file ? '' : ` of ${finding.file}`}`,
    place: finding,
    inside: []
  };
}
