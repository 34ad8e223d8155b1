/** Lower triangle of `A` as `L · Lᵀ`, row by row; nothing where `A` is not positive definite. */
export type Factors = readonly (readonly number[])[];

/** Cholesky's factors of a symmetric matrix. */
export function factorsOf(matrix: readonly (readonly number[])[]): Factors | undefined {
  const factors: number[][] = [];
  for (const [row, values] of matrix.entries()) {
    const own: number[] = [];
    for (let column = 0; column <= row; column++) {
      const above = column === row ? own : factors[column]!;
      let rest = values[column]!;
      for (let k = 0; k < column; k++) rest -= own[k]! * above[k]!;
      if (column < row) own.push(rest / above[column]!);
      else if (rest > 0) own.push(Math.sqrt(rest));
      else return undefined;
    }
    factors.push(own);
  }
  return factors;
}

/** `x` of `L · x = right`. */
export function solvedForward(factors: Factors, right: readonly number[]): number[] {
  const solved: number[] = [];
  for (const [row, own] of factors.entries()) {
    let rest = right[row]!;
    for (let k = 0; k < row; k++) rest -= own[k]! * solved[k]!;
    solved.push(rest / own[row]!);
  }
  return solved;
}

/** `x` of `A · x = right`. */
export function solved(factors: Factors, right: readonly number[]): number[] {
  const solution = solvedForward(factors, right);
  for (let row = solution.length - 1; row >= 0; row--) {
    let rest = solution[row]!;
    for (let k = row + 1; k < solution.length; k++) rest -= factors[k]![row]! * solution[k]!;
    solution[row] = rest / factors[row]![row]!;
  }
  return solution;
}
