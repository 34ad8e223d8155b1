import { commaIn, lengthMeasure, readCell, type Cell } from './cells.ts';

/** A table of points: a name, if it has names, and two numbers a line. */
export interface Table {
  readonly rows: readonly Row[];
  /** The measure that its heading says. */
  readonly measure?: string;
  /** Columns that say nothing of a place in the plan, such as heights. */
  readonly leftOut: number;
}

export interface Row {
  readonly name?: string;
  readonly x: Cell;
  readonly y: Cell;
}

export type TableOr = Table | { readonly problem: string };

/** More points than any job has; a longer table is something else. */
const MOST_ROWS = 2_000;

interface Columns {
  readonly name?: number;
  readonly x: number;
  readonly y: number;
  readonly measure?: string;
}

/** How the cells of a line can be parted, the plainest first. */
const PARTED: readonly RegExp[] = [/\t/, /;/, /,/, / {2,}/, /[ \t]+/];

/** Reads lines of `name x y`, `x y` and the like; says what is wrong where it almost is a table. */
export function readTable(text: string): TableOr {
  const lines = text.split(/\r\n|\n|\r/).filter(line => line.trim() !== '');
  if (lines.length === 0) return { problem: 'There is nothing to paste.' };
  if (lines.length > MOST_ROWS) return { problem: `The table has more than ${MOST_ROWS.toLocaleString('en')} lines.` };
  const tried = PARTED.filter(parted => lines.some(line => parted.test(line))).map(parted => tableOf(lines, parted));
  const first = tried.find(table => 'rows' in table) ?? tried[0];
  return first ?? { problem: NO_TABLE };
}

const NO_TABLE = 'This is no table of points: it needs a name, x and y on each line, or x and y alone.';

function tableOf(lines: readonly string[], parted: RegExp): TableOr {
  // A tab before the first number parts it from an empty name.
  const indent = parted === PARTED[0] ? /^ +/ : /^\s+/;
  const cells = lines.map(line => cellsOf(line.trimEnd().replace(indent, ''), parted));
  const [first, ...others] = cells as [string[], ...string[][]];
  // In a line parted by commas a comma is no part of a number.
  const comma = parted.source === ',' ? undefined : commaIn(cells.flat());
  const isNumber = (cell: string | undefined): boolean =>
    cell !== undefined && readCell(cell, comma === 'unclear' ? undefined : comma) !== undefined;
  const hasHeading = others.length > 0 && !first.some(isNumber);
  const body = hasHeading ? others : cells;
  const columns = (hasHeading && columnsByHeading(first)) || columnsByNumbers(body, isNumber);
  if ('problem' in columns) return columns;
  if (comma === 'unclear') return { problem: unclearComma(body, columns) };
  const rows: Row[] = [];
  for (const [index, row] of body.entries()) {
    const [x, y] = [row[columns.x], row[columns.y]].map(cell => cell && readCell(cell, comma));
    if (!x || !y) {
      const line = lines[index + (hasHeading ? 1 : 0)]!.trim();
      return { problem: `This line of the table has no two numbers: \`${shortened(line)}\`.` };
    }
    const name = columns.name === undefined ? undefined : row[columns.name];
    rows.push({ ...(name === undefined ? {} : { name }), x, y });
  }
  const used = columns.name === undefined ? 2 : 3;
  return {
    rows,
    ...(columns.measure === undefined ? {} : { measure: columns.measure }),
    leftOut: Math.max(...body.map(({ length }) => length)) - used
  };
}

function cellsOf(line: string, parted: RegExp): string[] {
  return line.split(parted).map(cell => cell.trim());
}

function shortened(line: string): string {
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}

function unclearComma(rows: readonly (readonly string[])[], { x, y }: Columns): string {
  const cell = rows.flatMap(row => [row[x], row[y]]).find(each => each?.includes(','));
  return `The comma in \`${cell ?? ','}\` could part decimals or thousands. Copy the table with a point before the decimals.`;
}

// ---- which column is which ----

const HEADINGS = {
  name: /^(?:name|points?|pt|pts|no|nr|number|id|label|#)$/i,
  x: /^(?:x|e|east|easting|eastings)$/i,
  y: /^(?:y|n|north|northing|northings)$/i
} as const;

/** `x (m)`, `Easting [ft]`, `E, m`, `Y m`. */
function heading(cell: string): { word: string; measure: string | undefined } {
  const [word = '', measure = ''] = cell.split(/[\s()[\],_/]+/).filter(part => part !== '');
  return { word, measure: lengthMeasure(measure) };
}

function columnsByHeading(cells: readonly string[]): Columns | undefined {
  const read = cells.map(heading);
  const find = (pattern: RegExp): number => read.findIndex(({ word }) => pattern.test(word));
  const [name, x, y] = [find(HEADINGS.name), find(HEADINGS.x), find(HEADINGS.y)];
  if (x < 0 || y < 0) return undefined;
  const measure = read[x]!.measure ?? read[y]!.measure;
  // A heading may leave the column of the names empty.
  const unnamed = cells.length > 2 && name < 0 && x > 0 && y > 0 ? 0 : undefined;
  const named = name < 0 ? unnamed : name;
  return { ...(named === undefined ? {} : { name: named }), x, y, ...(measure === undefined ? {} : { measure }) };
}

function columnsByNumbers(
  rows: readonly (readonly string[])[],
  isNumber: (cell: string | undefined) => boolean
): Columns | { readonly problem: string } {
  const width = Math.min(...rows.map(({ length }) => length));
  if (width < 2) return { problem: NO_TABLE };
  const first = rows.map(row => row[0]!);
  if (!first.every(isNumber)) return width < 3 ? { problem: NO_TABLE } : { name: 0, x: 1, y: 2 };
  if (width === 2) return { x: 0, y: 1 };
  const isCounted = first.every((cell, index) => /^\d+$/.test(cell) && Number(cell) === Number(first[0]) + index);
  if (isCounted) return { name: 0, x: 1, y: 2 };
  const isWhole = first.every(cell => /^\d+$/.test(cell));
  if (!isWhole) return { x: 0, y: 1 };
  return { problem: 'Which column is which? Write a heading over the table, such as `name x y`, and copy it with it.' };
}
