/** A linear model, some of whose columns take whole numbers alone: what they cost is to be as little as can be. */
export interface IntegerModel {
  readonly columns: readonly { readonly cost: number; readonly most: number; readonly whole: boolean }[];
  readonly rows: readonly IntegerRow[];
}

/** The sum of columns, each times a number, lies between two limits. Columns are nought or more. */
export interface IntegerRow {
  readonly least: number;
  readonly most: number;
  readonly terms: readonly { readonly column: number; readonly by: number }[];
}

export interface IntegerSolution {
  /** By column; absent where none was found. */
  readonly values?: readonly number[];
  /** No solution costs less; infinite where there is none. */
  readonly bound: number;
}

/** After so much it stops with what it has. */
export interface SolverLimit {
  readonly nodes: number;
  readonly seconds: number;
}

/** Whoever runs the language may lend it a solver; without one it makes do with its own search. */
export type IntegerSolver = (model: IntegerModel, limit: SolverLimit) => IntegerSolution;
