import type { Slot } from '../laying/bonds/cell-bond.ts';

/** A unit whose squares make no rectangle, and one of them. */
interface OddUnit {
  readonly odd: string;
  readonly column: number;
  readonly row: number;
}

/**
 * The units drawn in a cell, as rows of names with the lowest first. A name fills a rectangle of squares, which may go
 * over an edge of the cell and on at the opposite one. In the order in which they come along the rows.
 */
export function slotsIn(rows: readonly (readonly string[])[]): { readonly slots: readonly Slot[] } | OddUnit {
  const squares = new Map<string, { column: number; row: number }[]>();
  rows.forEach((names, row) =>
    names.forEach((name, column) => {
      const others = squares.get(name);
      if (others === undefined) squares.set(name, [{ column, row }]);
      else others.push({ column, row });
    })
  );
  const columns = rows[0]?.length ?? 0;
  const is = (name: string, column: number, row: number): boolean =>
    rows[wrapped(row, rows.length)]![wrapped(column, columns)] === name;
  const slots: Slot[] = [];
  for (const [name, all] of squares) {
    const first = all[0]!;
    let { column, row } = first;
    for (let step = 1; step < columns && is(name, column - 1, row); step++) column = wrapped(column - 1, columns);
    for (let step = 1; step < rows.length && is(name, column, row - 1); step++) row = wrapped(row - 1, rows.length);
    let across = 1;
    while (across < columns && is(name, column + across, row)) across++;
    let up = 1;
    while (up < rows.length && is(name, column, row + up)) up++;
    const inside = (square: { column: number; row: number }): boolean =>
      wrapped(square.column - column, columns) < across && wrapped(square.row - row, rows.length) < up;
    const outside = all.find(square => !inside(square));
    if (outside !== undefined || all.length !== across * up) return { odd: name, ...(outside ?? first) };
    // One that fills the cell from edge to edge begins at its edge.
    slots.push({ column: across === columns ? 0 : column, row: up === rows.length ? 0 : row, across, up });
  }
  return { slots };
}

function wrapped(place: number, size: number): number {
  return ((place % size) + size) % size;
}
