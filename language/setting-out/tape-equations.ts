import { distance, type Point } from '../geometry/index.ts';
import { type Factors, factorsOf, solvedForward } from './symmetric.ts';
import type { Places, Tape } from './tape-network.ts';

/** One tape seen from where the points are: its length there less the reading, and how it changes with its ends. */
export interface TapeEquation {
  readonly tape: Tape;
  readonly misfit: number;
  /** Unit vector from one end to the other; nought where they coincide. */
  readonly towards: Point;
  /** Numbers of its ends among the points that may move, −1 for one that stands fast. */
  readonly from: number;
  readonly to: number;
}

export function equationsOf(
  tapes: readonly Tape[],
  places: Places,
  moving: ReadonlyMap<string, number>
): TapeEquation[] {
  return tapes.flatMap(tape => {
    const [from, to] = [places.get(tape.from), places.get(tape.to)];
    if (!from || !to) return [];
    const length = distance(from, to);
    const towards = length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 0 };
    const misfit = length - tape.read;
    return [{ tape, misfit, towards, from: moving.get(tape.from) ?? -1, to: moving.get(tape.to) ?? -1 }];
  });
}

/** A tape's row of the design matrix, as pairs of unknown (2 · point for x, one more for y) and coefficient. */
export function rowOf({ from, to, towards }: TapeEquation): (readonly [number, number])[] {
  const row: (readonly [number, number])[] = [];
  if (from >= 0) row.push([2 * from, -towards.x], [2 * from + 1, -towards.y]);
  if (to >= 0) row.push([2 * to, towards.x], [2 * to + 1, towards.y]);
  return row;
}

/** Matrix of the normal equations, with `damping` added all along its diagonal. */
export function normalMatrix(equations: readonly TapeEquation[], unknowns: number, damping: number): Float64Array[] {
  const matrix = Array.from({ length: unknowns }, (_, row) => {
    const values = new Float64Array(unknowns);
    values[row] = damping;
    return values;
  });
  for (const equation of equations) {
    const row = rowOf(equation);
    for (const [i, one] of row) for (const [j, other] of row) matrix[i]![j]! += one * other;
  }
  return matrix;
}

export function sumOfSquares(equations: readonly TapeEquation[]): number {
  return equations.reduce((sum, { misfit }) => sum + misfit * misfit, 0);
}

/**
 * Keeps the equations solvable where points lie flat on the line between their tapes: nothing pulls across it, and so
 * nothing is changed by it.
 */
const FLAT_SUPPORT = 1e-10;

/**
 * How much of an error in each tape's reading shows as its own misfit, 0 (none: no other tape checks it) to 1 (all of
 * it); the redundancy numbers of adjustment.
 */
export function shownShares(equations: readonly TapeEquation[], unknowns: number): number[] {
  const factors = factorsOf(normalMatrix(equations, unknowns, FLAT_SUPPORT));
  return equations.map(equation => (factors ? Math.max(0, 1 - leverage(equation, factors)) : 0));
}

function leverage(equation: TapeEquation, factors: Factors): number {
  const row = new Float64Array(factors.length);
  for (const [unknown, coefficient] of rowOf(equation)) row[unknown]! += coefficient;
  return solvedForward(factors, row).reduce((sum, value) => sum + value * value, 0);
}
