import type { Point } from '../geometry/index.ts';
import { factorsOf, solved } from './symmetric.ts';
import { equationsOf, normalMatrix, rowOf, sumOfSquares, type TapeEquation } from './tape-equations.ts';
import type { Places, Tape } from './tape-network.ts';

/** Steps one fit takes at most: a fair one takes under ten, a flat one some forty. */
const MOST_STEPS = 200;
/** A step shorter than this share of the plan's extent (at least of one metre) changes nothing: the digits end there. */
const SETTLED_STEP = 1e-12;
/** Pull on the points, as a share of the extent, that is only rounding. */
const SETTLED_PULL = 1e-15;
/** Pull up to which a place that no step betters counts as found. */
const FOUND_PULL = 1e-7;
const FIRST_DAMPING = 1e-4;
const LEAST_DAMPING = 1e-10;
const DAMPING_FACTOR = 10;

/** Steps still allowed, counted down by the fits that share it. */
export interface Allowance {
  left: number;
}

export interface Fit {
  readonly places: Places;
  readonly sumOfSquares: number;
  /** Not so where the steps ran out. */
  readonly settled: boolean;
}

/**
 * Places of the moving points with the least sum of squared misfits near where they start: Gauss-Newton steps, damped
 * after Levenberg so that none makes the fit worse. Tapes with an unplaced end are left out.
 */
export function fitted(tapes: readonly Tape[], start: Places, movable: readonly string[], allowance: Allowance): Fit {
  const moving = new Map(movable.map((key, index) => [key, index]));
  const extent = extentOf(start, tapes);
  let places = start;
  let equations = equationsOf(tapes, places, moving);
  let sum = sumOfSquares(equations);
  let damping = FIRST_DAMPING;
  for (let step = 0; step < MOST_STEPS && allowance.left > 0; step++, allowance.left--) {
    const pull = pullOf(equations, 2 * movable.length);
    const strongest = largest(pull);
    if (strongest <= SETTLED_PULL * extent) return { places, sumOfSquares: sum, settled: true };
    const factors = factorsOf(normalMatrix(equations, pull.length, damping));
    const move = factors && solved(factors, pull);
    if (move && largest(move) <= SETTLED_STEP * extent) {
      return { places, sumOfSquares: sum, settled: strongest <= FOUND_PULL * extent };
    }
    const moved = move && shifted(places, movable, move);
    const then = moved && equationsOf(tapes, moved, moving);
    const sumThen = then ? sumOfSquares(then) : Infinity;
    if (moved && then && sumThen < sum) {
      [places, equations, sum] = [moved, then, sumThen];
      damping = Math.max(damping / DAMPING_FACTOR, LEAST_DAMPING);
    } else damping *= DAMPING_FACTOR;
  }
  return { places, sumOfSquares: sum, settled: false };
}

/** Minus half the gradient of the sum of squares. */
function pullOf(equations: readonly TapeEquation[], unknowns: number): Float64Array {
  const pull = new Float64Array(unknowns);
  for (const equation of equations) {
    for (const [unknown, coefficient] of rowOf(equation)) pull[unknown]! -= coefficient * equation.misfit;
  }
  return pull;
}

function shifted(places: Places, movable: readonly string[], move: Float64Array): Places {
  const moved = new Map<string, Point>(places);
  movable.forEach((key, index) => {
    const { x, y } = places.get(key)!;
    moved.set(key, { x: x + move[2 * index]!, y: y + move[2 * index + 1]! });
  });
  return moved;
}

function largest(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

function extentOf(places: Places, tapes: readonly Tape[]): number {
  let extent = 1;
  for (const { x, y } of places.values()) extent = Math.max(extent, Math.abs(x), Math.abs(y));
  for (const { read } of tapes) extent = Math.max(extent, read);
  return extent;
}
