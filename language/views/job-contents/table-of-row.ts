import { stringify } from 'csv-stringify/browser/esm/sync';
import { textCell } from '../csv/cell.ts';
import { type ContentRow, NOT_COMPLETE } from './content-row.ts';

interface Line {
  /** What it stands in, below the row that the table is of. */
  readonly path: readonly string[];
  readonly row: ContentRow;
  readonly numbers: readonly ContentRow[];
  /** Where the line is of one number, what that is called. */
  readonly number?: string;
}

interface Column {
  readonly head: string;
  readonly cell: (line: Line) => string;
}

/** More columns than these nobody reads: then each number has a line. */
const MOST_NUMBERS = 16;

/**
 * A row and all in it as a table that spreadsheets take: cells parted by tabs under a line of heads, a column for each
 * number that any of them has, or where they are many a line for each. Cells that could be taken for formulas are marked
 * as text.
 */
export function tableOf(row: ContentRow): string {
  const lines = linesOf(row, [], []);
  const heads = [...new Set(lines.flatMap(({ numbers }) => numbers.map(({ label }) => label)))];
  return heads.length > MOST_NUMBERS
    ? printed(lines.flatMap(numberLines), NUMBER_COLUMN)
    : printed(lines, heads.map(columnOf));
}

function printed(lines: readonly Line[], between: readonly Column[]): string {
  const all: Column[] = [
    { head: 'In', cell: ({ path }) => path.join(', ') },
    { head: 'What', cell: ({ row: { label } }) => label },
    ...between,
    // What has numbers of its own says in them all that its value says.
    { head: 'Value', cell: ({ row: { value = '' }, numbers }) => (numbers.length === 0 ? value : '') },
    { head: 'State', cell: stateOf }
  ];
  const columns = all.filter(({ head, cell }) => head === 'What' || lines.some(line => cell(line) !== ''));
  const table = [columns.map(({ head }) => head), ...lines.map(line => columns.map(({ cell }) => cell(line)))];
  return stringify(
    table.map(cells => cells.map(textCell)),
    { delimiter: '\t', eof: false }
  );
}

function columnOf(head: string): Column {
  return { head, cell: ({ numbers }) => numbers.find(({ label }) => label === head)?.value ?? '' };
}

const NUMBER_COLUMN: readonly Column[] = [{ head: 'Number', cell: ({ number = '' }) => number }];

/** Each number by itself, behind what it is of. */
function numberLines(line: Line): Line[] {
  const { path, row, numbers } = line;
  if (numbers.length === 0) return [line];
  return numbers.map(number => ({ path, row: { ...number, label: row.label }, number: number.label, numbers: [] }));
}

/** Headings are no lines: they are told in the path of what stands under them. */
function linesOf(row: ContentRow, path: readonly string[], below: readonly string[]): Line[] {
  const numbers = row.inside.filter(({ kind }) => kind === 'number');
  const others = row.inside.filter(({ kind }) => kind !== 'number');
  const own = numbers.length > 0 || others.length === 0 ? [{ path, row, numbers }] : [];
  return [...own, ...others.flatMap(each => linesOf(each, below, [...below, each.label]))];
}

/** `before the error in line 12`; where that is so of some numbers alone, of which. */
function stateOf({ row, numbers }: Line): string {
  const own = wordsOf(row);
  if (own !== '') return own;
  const words = [...new Set(numbers.map(wordsOf))].filter(each => each !== '');
  return words
    .map(each => {
      const labels = numbers.filter(number => wordsOf(number) === each).map(({ label }) => label);
      return `${labels.join(', ')}: ${each}`;
    })
    .join('; ');
}

function wordsOf({ before, isPartial }: ContentRow): string {
  return before ?? (isPartial === true ? NOT_COMPLETE : '');
}
