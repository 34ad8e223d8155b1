import type { Colours } from './colours.ts';

export interface Column {
  readonly head: string;
  /** Numbers stand flush right. */
  readonly right?: boolean;
}

const GAP = '  ';

/** Lines of an aligned table under its heads; a column in which nothing stands is left out. What has several lines goes on below. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], colours: Colours): string[] {
  const lines = rows.flatMap(linesOf);
  const shown = columns
    .map((column, index) => ({ ...column, index }))
    .filter(({ index }) => rows.some(row => row[index] !== ''));
  const parted = shown.map(({ head, right, index }) => {
    const width = Math.max(...[head, ...lines.map(row => row[index] ?? '')].map(widthOf));
    const pad = (text: string): string => {
      const space = ' '.repeat(width - widthOf(text));
      return right === true ? space + text : text + space;
    };
    return { head: pad(head), cells: lines.map(row => pad(row[index] ?? '')) };
  });
  const line = (cells: readonly string[]): string => cells.join(GAP).trimEnd();
  const body = lines.map((_, at) => line(parted.map(({ cells }) => cells[at]!)));
  return shown.every(({ head }) => head === '') ? body : [colours.faint(line(parted.map(({ head }) => head))), ...body];
}

function linesOf(row: readonly string[]): string[][] {
  const cells = row.map(cell => cell.split('\n'));
  const lines = Math.max(...cells.map(({ length }) => length));
  return Array.from({ length: lines }, (_, line) => cells.map(cell => cell[line] ?? ''));
}

function widthOf(text: string): number {
  return Array.from(text).length;
}
