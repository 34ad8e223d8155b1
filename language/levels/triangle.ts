import type { Point } from '../geometry/index.ts';

/** Three points by their numbers, anticlockwise. */
export type Triangle = readonly [number, number, number];

/** An edge between two points, by their numbers. */
export interface NumberedEdge {
  readonly from: number;
  readonly to: number;
}

/** Twice the area of a triangle: positive when it runs anticlockwise. */
export function turning(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** The edges of a triangle as they run round it, each with the point over it. */
export function edgesOf([a, b, c]: Triangle): [from: number, to: number, over: number][] {
  return [
    [a, b, c],
    [b, c, a],
    [c, a, b]
  ];
}

export function edgeKey(from: number, to: number): string {
  return `${from} ${to}`;
}

/** For each edge of triangles, with its triangle on the left, the number of that triangle. */
export function triangleByEdge(triangles: readonly Triangle[]): Map<string, number> {
  const byEdge = new Map<string, number>();
  for (const [number, triangle] of triangles.entries()) {
    for (const [from, to] of edgesOf(triangle)) byEdge.set(edgeKey(from, to), number);
  }
  return byEdge;
}

/** The edges that have a triangle on their left only. */
export function rimOf(triangles: readonly Triangle[]): [from: number, to: number, over: number][] {
  const byEdge = triangleByEdge(triangles);
  return triangles.flatMap(edgesOf).filter(([from, to]) => !byEdge.has(edgeKey(to, from)));
}
