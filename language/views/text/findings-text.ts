import type { Finding } from '../../findings/finding.ts';
import type { Severity } from '../../job/severity.ts';
import type { Colours } from './colours.ts';
import { excerpt } from './excerpt.ts';
import { plainLine } from './plain-line.ts';

/** A finding for a reader: where, what, the line it stands in, what it rests on and what would mend it. */
export function findingText(finding: Finding, text: string | undefined, colours: Colours): string {
  const { id, severity, file, line, column, message, source, related, fixes } = finding;
  return [
    `${colours.strong(placeText(file, line, column))}  ${colours[severity](severity)}  ${colours.faint(id)}`,
    `  ${plainLine(message)}`,
    ...(text === undefined ? [] : excerpt(text, finding).map(shown => `    ${colours.faint(shown)}`)),
    ...(source === undefined ? [] : [colours.faint(`  Source: ${plainLine(source)}`)]),
    ...related.map(other =>
      colours.faint(`  ${placeText(other.file, other.line, other.column)}  ${plainLine(other.message)}`)
    ),
    ...fixes.map(({ title }) => `  Fix: ${plainLine(title)}`)
  ].join('\n');
}

/** `file:line:column: severity: message [id]` */
export function findingLine({ file, line, column, severity, message, id }: Finding): string {
  return `${placeText(file, line, column)}: ${severity}: ${plainLine(message)} [${id}]`;
}

/** `file:line:column` */
export function placeText(file: string, line: number, column: number): string {
  return `${plainLine(file)}:${line}:${column}`;
}

/** `2 errors, 1 warning, 3 notes`; undefined where there is nothing to count. */
export function countsText(findings: readonly Finding[]): string | undefined {
  const counts = (['error', 'warning', 'note'] satisfies Severity[]).flatMap(severity => {
    const count = findings.filter(finding => finding.severity === severity).length;
    return count === 0 ? [] : [numberOf(count, severity)];
  });
  return counts.length === 0 ? undefined : counts.join(', ');
}

/** `1 file`, `2 files` */
export function numberOf(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
