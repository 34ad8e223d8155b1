import type { Point } from '../geometry/index.ts';
import { SAME_SPOT } from './spots.ts';
import { edgeKey, edgesOf, rimOf, type Triangle, triangleByEdge, turning } from './triangle.ts';

/**
 * Triangles without the slivers along their rim: a spot that rounding puts a hair inside a straight rim lies on it, and
 * the heights beyond the rim follow it.
 */
export function withoutRimSlivers(triangles: readonly Triangle[], points: readonly Point[]): Triangle[] {
  const byEdge = triangleByEdge(triangles);
  const rim = rimOf(triangles);
  const onRim = new Set(rim.map(([from]) => from));
  const left = new Set(triangles.keys());
  for (let next = rim.pop(); next; next = rim.pop()) {
    const [from, to, over] = next;
    if (onRim.has(over) || !liesOn(points[from]!, points[to]!, points[over]!)) continue;
    left.delete(byEdge.get(edgeKey(from, to))!);
    onRim.add(over);
    // What lay behind the sliver's other two edges now has them as its rim.
    for (const [start, end] of [
      [to, over],
      [over, from]
    ] as const) {
      const behind = byEdge.get(edgeKey(end, start));
      const edge = behind === undefined ? undefined : edgesOf(triangles[behind]!).find(([first]) => first === end);
      if (edge) rim.push(edge);
    }
  }
  return triangles.filter((_, number) => left.has(number));
}

function liesOn(from: Point, to: Point, point: Point): boolean {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length;
  return Math.abs(turning(from, to, point)) <= SAME_SPOT * length && along > 0 && along < length;
}
