import type { CutUnit, LaidUnits, WholeRun } from '../laid.ts';
import { shiftOf } from './lattice.ts';
import type { BondPattern, UnitLattice } from './pattern.ts';
import { placeIn } from '../field-frame.ts';
import type { Placement } from '../laid.ts';

/** What is laid in one course: cut units by their column, and runs of whole ones. */
export interface CourseRow {
  readonly number: number;
  readonly cuts: Map<number, CutUnit>;
  wholes: PlacedRun[];
}

export interface PlacedRun extends WholeRun {
  /** Column of its first unit. */
  readonly column: number;
}

/** What is laid of a bond in courses, course by course. */
export function courseRows({ wholes, cuts }: LaidUnits, { frame }: BondPattern, lattice: UnitLattice): CourseRow[] {
  const rows = new Map<number, CourseRow>();
  const rowOf = (at: Placement): { row: CourseRow; column: number } => {
    const { x, y } = placeIn(frame, at);
    const bottom = frame.mirrored ? y - lattice.width : y;
    const number = Math.round((bottom - lattice.y) / lattice.acrossPitch);
    const row = rows.get(number) ?? { number, cuts: new Map<number, CutUnit>(), wholes: [] };
    rows.set(number, row);
    return { row, column: Math.round((x - columnAt(lattice, number, 0)) / lattice.alongPitch) };
  };
  for (const run of wholes) {
    const { row, column } = rowOf(run.first);
    row.wholes.push({ ...run, column });
  }
  for (const cut of cuts) {
    const { row, column } = rowOf(cut.at);
    row.cuts.set(column, cut);
  }
  return [...rows.values()];
}

/** Where the unit of a column begins, metres along the courses. */
export function columnAt(lattice: UnitLattice, row: number, column: number): number {
  return lattice.x + shiftOf(row, lattice) + column * lattice.alongPitch;
}

/** Whether a whole unit lies in a column. */
export function hasWhole({ wholes }: CourseRow, column: number): boolean {
  return wholes.some(run => run.column <= column && column < run.column + run.count);
}

/** Takes up the whole unit of a column. */
export function takeUp(row: CourseRow, column: number): void {
  row.wholes = row.wholes.flatMap(run => {
    const before = column - run.column;
    if (before < 0 || before >= run.count) return [run];
    const { first, step, count } = run;
    const next = before + 1;
    const after = { ...first, x: first.x + next * step.x, y: first.y + next * step.y };
    return [
      { ...run, count: before },
      { ...run, first: after, column: column + 1, count: count - next }
    ].filter(part => part.count > 0);
  });
}
