import { type ComparisonSheet, NOTHING_DIFFERS, type SheetSection } from '../comparison/sheet.ts';
import { shownColumns } from '../comparison/shown-columns.ts';
import { plainLine } from '../text/plain-line.ts';
import { forgeParagraph, forgeText, summaryText } from './forge-text.ts';

/** More rows than this in all are too many to read on: long tables of numbers are folded up, short ones are not. */
const MOST_OPEN = 40;
const SHORT = 6;

/** What is long and follows from the rest. */
const FOLDED: ReadonlySet<string> = new Set(['numbers', 'tasks']);

/** Comparisons of jobs as Markdown fit for a merge request: a heading each, a table for each section. */
export function comparisonMarkdown(sheets: readonly ComparisonSheet[]): string {
  const rows = sheets.flatMap(({ sections }) => sections.map(section => section.rows.length));
  const isLong = rows.reduce((sum, count) => sum + count, 0) > MOST_OPEN;
  const blocks = sheets.flatMap(sheet => sheetBlocks(sheet, isLong));
  return `${blocks.length === 0 ? NOTHING_DIFFERS : blocks.join('\n\n')}\n`;
}

function sheetBlocks({ title, between, notes, sections }: ComparisonSheet, isLong: boolean): string[] {
  const job = forgeText(plainLine(title));
  if (sections.length === 0) return [`**${job}** · ${forgeText(plainLine(between))}: ${NOTHING_DIFFERS}`];
  return [
    `## ${job}`,
    forgeParagraph(plainLine(between)),
    ...notes.map(note => forgeParagraph(plainLine(note))),
    ...sections.flatMap(section => sectionBlocks(section, isLong && isFolded(section)))
  ];
}

function isFolded({ id, rows }: SheetSection): boolean {
  return FOLDED.has(id) && rows.length > SHORT;
}

function sectionBlocks(section: SheetSection, folded: boolean): string[] {
  const { heading, notes, rows } = section;
  const said = notes.map(note => forgeParagraph(plainLine(note)));
  const table = tableOf(section);
  if (!folded) return [`### ${forgeText(plainLine(heading))}`, ...said, table];
  const summary = `${summaryText(heading)}: ${rows.length} rows`;
  return [`<details><summary>${summary}</summary>`, ...said, table, '</details>'];
}

function tableOf(section: SheetSection): string {
  const columns = shownColumns(section);
  const line = (cells: readonly string[]): string => `| ${cells.map(cell => forgeText(plainLine(cell))).join(' | ')} |`;
  return [
    line(columns.map(({ head }) => head)),
    `|${columns.map(({ right }) => (right === true ? '--:|' : ':--|')).join('')}`,
    ...section.rows.map((_, row) => line(columns.map(({ cells }) => cells[row]!)))
  ].join('\n');
}
