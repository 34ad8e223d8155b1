import type { Point } from '../geometry/index.ts';

/** In metres: corners nearer than this across are on one level. */
const SAME_LEVEL = 1e-12;

/** What outlines enclose, in triangles: cut into strips between the levels of their corners, and each strip's parts in two. */
export function trianglesWithin(
  sides: readonly { readonly from: Point; readonly to: Point }[]
): [Point, Point, Point][] {
  const levels = sides
    .map(({ from }) => from.y)
    .sort((a, b) => a - b)
    .filter((level, index, all) => index === 0 || level - all[index - 1]! > SAME_LEVEL);
  return levels.slice(1).flatMap((top, index) => inStrip(sides, levels[index]!, top));
}

function inStrip(
  sides: readonly { readonly from: Point; readonly to: Point }[],
  bottom: number,
  top: number
): [Point, Point, Point][] {
  const middle = (bottom + top) / 2;
  const crossing = sides
    .filter(({ from, to }) => from.y > middle !== to.y > middle)
    .map(({ from, to }) => {
      const at = (y: number): Point => ({ x: from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x), y });
      return { low: at(bottom), high: at(top), at: at(middle).x, winding: to.y < from.y ? 1 : -1 };
    })
    .sort((a, b) => a.at - b.at);
  const triangles: [Point, Point, Point][] = [];
  let winding = 0;
  for (const [index, right] of crossing.entries()) {
    const left = crossing[index - 1];
    if (left && winding > 0) {
      triangles.push([left.low, right.low, right.high], [left.low, right.high, left.high]);
    }
    winding += right.winding;
  }
  return triangles.filter(([a, b, c]) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0);
}
