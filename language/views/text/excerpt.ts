import type { Place } from '../../findings/finding.ts';
import { plainLine } from './plain-line.ts';

/** A longer line is cut round the place: more would be wrapped and hide the mark. */
const LONGEST_LINE = 96;

/** Room left before the place where a line is cut. */
const LEAD = 24;

/** The line a finding stands in, and below it a mark under the place; nothing for an empty line. */
export function excerpt(text: string, { line, column, endLine, endColumn }: Place): string[] {
  const written = plainLine(lineOf(text, line));
  if (written.trim() === '') return [];
  const indent = written.length - written.trimStart().length;
  const from = column - 1 - indent > LONGEST_LINE - LEAD ? column - 1 - LEAD : Math.min(indent, column - 1);
  const end = endLine === line ? endColumn - 1 : written.length;
  const shown = written.slice(from, from + LONGEST_LINE);
  const before = from > indent ? '… ' : '';
  const after = from + LONGEST_LINE < written.length ? ' …' : '';
  const length = Math.max(1, Math.min(end, from + shown.length) - (column - 1));
  return [`${before}${shown.trimEnd()}${after}`, ' '.repeat(before.length + column - 1 - from) + '^'.repeat(length)];
}

function lineOf(text: string, line: number): string {
  let start = 0;
  for (let at = 1; at < line; at++) {
    const end = text.indexOf('\n', start);
    if (end < 0) return '';
    start = end + 1;
  }
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
}
