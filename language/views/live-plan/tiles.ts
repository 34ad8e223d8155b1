import type { Point } from '../../geometry/index.ts';

/** Side of a tile, m: a change at one side of a large area touches few tiles, and a tile holds some dozens of rows. */
const TILE = 4;

/** m: outlines begin at round numbers, and rounding must not decide the tile. */
const OFF_ROUND = 0.0137;

/** The tile of the ground that a place lies in. */
export function tileOf({ x, y }: Point): string {
  return `${tileAt(x)},${tileAt(y)}`;
}

function tileAt(metres: number): number {
  return Math.floor((metres + OFF_ROUND) / TILE);
}

/** A run of frames in the parts that begin in one tile each, by the index of the first and how many. */
export function partsInTiles(
  first: Point,
  step: Point,
  count: number
): { readonly from: number; readonly count: number }[] {
  const parts: { from: number; count: number }[] = [];
  let [across, up] = [NaN, NaN];
  for (let index = 0; index < count; index++) {
    const [x, y] = [tileAt(first.x + index * step.x), tileAt(first.y + index * step.y)];
    if (x === across && y === up) parts.at(-1)!.count++;
    else parts.push({ from: index, count: 1 });
    [across, up] = [x, y];
  }
  return parts;
}
