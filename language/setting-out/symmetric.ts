/** Lower triangle of `A` as `L · Lᵀ`, row by row. */
export type Factors = readonly Float64Array[];

/** Cholesky's factors of a symmetric matrix; nothing where it is not positive definite. */
export function factorsOf(matrix: readonly Float64Array[]): Factors | undefined {
  const factors: Float64Array[] = [];
  for (const [row, values] of matrix.entries()) {
    const own = new Float64Array(row + 1);
    for (let column = 0; column < row; column++) {
      const above = factors[column]!;
      own[column] = (values[column]! - product(own, above, column)) / above[column]!;
    }
    const rest = values[row]! - product(own, own, row);
    if (!(rest > 0)) return undefined;
    own[row] = Math.sqrt(rest);
    factors.push(own);
  }
  return factors;
}

/** Of the first `count` numbers of each. */
function product(one: Float64Array, other: Float64Array, count: number): number {
  let sum = 0;
  for (let k = 0; k < count; k++) sum += one[k]! * other[k]!;
  return sum;
}

/** `x` of `L · x = right`. */
export function solvedForward(factors: Factors, right: Float64Array): Float64Array {
  const solution = right.slice();
  for (const [row, own] of factors.entries()) {
    solution[row] = (solution[row]! - product(own, solution, row)) / own[row]!;
  }
  return solution;
}

/** `x` of `A · x = right`. */
export function solved(factors: Factors, right: Float64Array): Float64Array {
  const solution = solvedForward(factors, right);
  for (let row = solution.length - 1; row >= 0; row--) {
    let rest = solution[row]!;
    for (let k = row + 1; k < solution.length; k++) rest -= factors[k]![row]! * solution[k]!;
    solution[row] = rest / factors[row]![row]!;
  }
  return solution;
}
