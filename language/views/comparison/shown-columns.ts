import type { SheetColumn, SheetSection } from './sheet.ts';

/** A column with its cells, one a row. */
export interface ShownColumn extends SheetColumn {
  readonly cells: readonly string[];
  /** Of which edits a row is. */
  readonly isBy: boolean;
}

/** The columns of a section in which something stands, and at last the edits behind each row; places to sign stay. */
export function shownColumns({ id, columns, rows }: SheetSection): ShownColumn[] {
  const own = columns.map((column, index): ShownColumn => ({
    ...column,
    cells: rows.map(({ cells }) => cells[index] ?? ''),
    isBy: false
  }));
  const by: ShownColumn = { head: 'By', cells: rows.map(row => row.by.join(', ')), isBy: true };
  return [...own, by].filter(({ cells, isBy }) => (id === 'sign' && !isBy) || cells.some(cell => cell !== ''));
}
