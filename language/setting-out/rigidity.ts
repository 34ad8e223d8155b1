import { scattered } from './scattered.ts';
import { equationsOf, rowOf, shownShares, type TapeEquation } from './tape-equations.ts';
import type { Network, Places } from './tape-network.ts';

/** What is left of a row, out of one, when it holds nothing the rows before it do not. */
const NOTHING_LEFT = 1e-9;
/** Share of an error that shows where a tape is checked by others at all: far below any real one, far above rounding. */
const LEAST_SHOWN = 1e-7;

/**
 * Whether tapes hold points in place is a matter of what is taped to what, not of the lengths (save for chance): so it
 * is asked of scattered places, where no chance line or circle spoils the answer.
 */
function scatteredEquations(network: Network, fixed: Places): { equations: TapeEquation[]; moving: string[] } {
  const moving = network.free.map(({ key }) => key).filter(key => !fixed.has(key));
  const places = scattered(network, fixed, 0);
  const numbers = new Map(moving.map((key, index) => [key, index]));
  return { equations: equationsOf(network.tapes, places, numbers), moving };
}

/** The points that the tapes leave free to move even together, once `placed` stand fast. */
export function movingPoints(network: Network, placed: Places): string[] {
  const { equations, moving } = scatteredEquations(network, placed);
  const held = heldUnknowns(equations.map(rowOf), 2 * moving.length);
  return moving.filter((_, index) => !held[2 * index] || !held[2 * index + 1]);
}

/** Keys of the tapes without which all points are still held in place. */
export function redundantTapes(network: Network): Set<string> {
  const { equations, moving } = scatteredEquations(network, network.fixed);
  const shares = shownShares(equations, 2 * moving.length);
  return new Set(equations.filter((_, index) => shares[index]! > LEAST_SHOWN).map(({ tape }) => tape.key));
}

/** Which unknowns the rows fix, by elimination with the largest pivot of all that is left. */
function heldUnknowns(sparse: readonly (readonly (readonly [number, number])[])[], unknowns: number): boolean[] {
  const rows = sparse.map(row => {
    const full = Array.from({ length: unknowns }, () => 0);
    for (const [unknown, coefficient] of row) full[unknown]! += coefficient;
    return full;
  });
  const pivots = new Map<number, number[]>();
  while (rows.length > 0) {
    const { row, column } = largestIn(rows);
    const [chosen] = rows.splice(row, 1) as [number[]];
    const pivot = chosen[column]!;
    if (Math.abs(pivot) <= NOTHING_LEFT) break;
    const scaled = chosen.map(value => value / pivot);
    for (const other of [...rows, ...pivots.values()]) {
      const times = other[column]!;
      if (times !== 0) scaled.forEach((value, index) => (other[index]! -= times * value));
    }
    pivots.set(column, scaled);
  }
  return Array.from({ length: unknowns }, (_, unknown) => {
    const row = pivots.get(unknown);
    return row?.every((value, index) => index === unknown || Math.abs(value) <= NOTHING_LEFT) ?? false;
  });
}

function largestIn(rows: readonly (readonly number[])[]): { row: number; column: number } {
  let [best, at] = [-1, { row: 0, column: 0 }];
  rows.forEach((values, row) => {
    values.forEach((value, column) => {
      if (Math.abs(value) > best) [best, at] = [Math.abs(value), { row, column }];
    });
  });
  return at;
}
