import type { Finding } from '../../language/findings/finding.ts';

/*
 * A faulty spec holds its own expected findings: under the line where a finding begins stands a comment that marks its
 * columns, and says severity, id and message:
 *
 *   base    pit-stone 3 in
 * //        ^^^^^^^^^ error unknown-name: No material is called …
 * //   fix: Write `crushed-stone`
 *
 * The two strokes of the comment hide columns 1 and 2, so a finding that begins there says ` from 1`; one whose end the
 * marks cannot show says where it ends: ` to 14` (column), ` to 19:4` (line and column). Ends stand just after the last
 * character. Lines are those of the file as it stands, with these comments in it.
 */

const DRAWN = /^\/\/ *\^*(?: from \d+)?(?: to (?:\d+:)?\d+)? (?:error|warning|note) [a-z-]+: |^\/\/ {3}(?:safe )?fix: /;

/** The text without its drawn findings. */
export function withoutDrawings(text: string): string {
  return text
    .split('\n')
    .filter(line => !DRAWN.test(line))
    .join('\n');
}

/** The text of one file with the findings drawn into it; their lines are those of `text`, which may hold older drawings. */
export function withDrawings(text: string, findings: readonly Finding[]): string {
  const lines = text.split('\n');
  const out = lines.flatMap((line, index) => {
    const here = findings.filter(finding => Math.min(finding.line, lines.length) === index + 1);
    return [...(DRAWN.test(line) ? [] : [line]), ...here.flatMap(finding => drawn(finding, line))];
  });
  return out.join('\n');
}

function drawn(finding: Finding, line: string): string[] {
  const { id, severity, message, fixes } = finding;
  const titles = fixes.map(fix => `//   ${fix.safe ? 'safe ' : ''}fix: ${fix.title}`);
  return [`//${marks(finding, line)} ${severity} ${id}: ${message}`, ...titles];
}

/** Columns 1 and 2 lie under the strokes of the comment. */
const HIDDEN = 2;

function marks(finding: Finding, line: string): string {
  const oneLine = finding.endLine === finding.line;
  const end = oneLine ? finding.endColumn : line.length + 1;
  const first = Math.max(finding.column, HIDDEN + 1);
  const carets = '^'.repeat(Math.max(0, end - first));
  const from = finding.column <= HIDDEN || carets === '' ? ` from ${finding.column}` : '';
  const to = oneLine && carets !== '' ? '' : ` to ${oneLine ? '' : `${finding.endLine}:`}${finding.endColumn}`;
  const space = carets === '' ? '' : ' '.repeat(first - HIDDEN - 1);
  return `${space}${carets}${from}${to}`;
}
