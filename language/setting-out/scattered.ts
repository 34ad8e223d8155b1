import type { Point } from '../geometry/index.ts';
import type { Network, Places } from './tape-network.ts';

/**
 * Places for points without any, scattered about what stands fast as far as the tapes reach: no three in a row, no
 * pattern. The same `round` gives the same places.
 */
export function scattered({ free, tapes }: Network, fixed: Places, round: number): Map<string, Point> {
  const reach = tapes.reduce((longest, { read }) => Math.max(longest, read), 0);
  const centre = centreOf(tapes.flatMap(({ from, to }) => [fixed.get(from), fixed.get(to)]));
  const next = numbersFrom(round);
  const places = new Map<string, Point>(fixed);
  for (const { key } of free) {
    if (fixed.has(key)) continue;
    places.set(key, { x: centre.x + (2 * next() - 1) * reach, y: centre.y + (2 * next() - 1) * reach });
  }
  return places;
}

function centreOf(points: readonly (Point | undefined)[]): Point {
  const known = points.filter(point => point !== undefined);
  const count = Math.max(known.length, 1);
  return {
    x: known.reduce((sum, { x }) => sum + x, 0) / count,
    y: known.reduce((sum, { y }) => sum + y, 0) / count
  };
}

/** Numbers from 0 to 1 without a pattern, the same ones for a round (linear congruential, Numerical Recipes). */
function numbersFrom(round: number): () => number {
  let state = (round + 1) * 2654435761;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
