import type { Point } from '../geometry/index.ts';
import { rootOf, unite } from './spots.ts';
import { edgeKey, edgesOf, type NumberedEdge, rimOf, type Triangle, triangleByEdge, turning } from './triangle.ts';

/** Sine by which two opposite angles may miss a half turn for four points to lie on one circle. */
const ON_CIRCLE = 1e-9;

/** Share of an area by which its parts may miss it. */
const SAME_AREA = 1e-9;

/**
 * Where four or more points lie on one circle, as the corners of a rectangle do, there is a choice of diagonals: the
 * corner of the point named first is cut off, then that of the next one named, and so on. In a rectangle named A, B, C, D
 * in order round that is the diagonal from B to D.
 */
export function withTiesSettled(
  triangles: readonly Triangle[],
  points: readonly Point[],
  edges: readonly NumberedEdge[]
): Triangle[] {
  const fixed = new Set(edges.flatMap(({ from, to }) => [edgeKey(from, to), edgeKey(to, from)]));
  const byEdge = triangleByEdge(triangles);
  const sets = triangles.map((_, number) => number);
  for (const [number, triangle] of triangles.entries()) {
    for (const [from, to, over] of edgesOf(triangle)) {
      const beside = byEdge.get(edgeKey(to, from));
      if (beside === undefined || beside < number || fixed.has(edgeKey(from, to))) continue;
      const across = triangles[beside]!.find(point => point !== from && point !== to)!;
      if (onOneCircle(points[from]!, points[to]!, points[over]!, points[across]!)) unite(sets, number, beside);
    }
  }
  const bySet = new Map<number, Triangle[]>();
  for (const [number, triangle] of triangles.entries()) {
    const root = rootOf(sets, number);
    bySet.set(root, [...(bySet.get(root) ?? []), triangle]);
  }
  return [...bySet.values()].flatMap(set => (set.length === 1 ? set : cornersCutOff(set, points)));
}

/** Whether the two points that look at an edge from both sides see it under angles that make a half turn. */
function onOneCircle(from: Point, to: Point, over: Point, across: Point): boolean {
  const one = seenFrom(over, from, to);
  const other = seenFrom(across, to, from);
  return Math.abs(one.sine * other.cosine + one.cosine * other.sine) <= ON_CIRCLE;
}

function seenFrom(eye: Point, from: Point, to: Point): { sine: number; cosine: number } {
  const size = Math.hypot(from.x - eye.x, from.y - eye.y) * Math.hypot(to.x - eye.x, to.y - eye.y);
  const dot = (from.x - eye.x) * (to.x - eye.x) + (from.y - eye.y) * (to.y - eye.y);
  return { sine: turning(eye, from, to) / size, cosine: dot / size };
}

function cornersCutOff(set: readonly Triangle[], points: readonly Point[]): readonly Triangle[] {
  const corners = inOrderRound(set);
  if (corners.length !== set.length + 2) return set;
  const cut: Triangle[] = [];
  while (corners.length > 3) {
    const first = corners.indexOf(Math.min(...corners));
    cut.push([corners.at(first - 1)!, corners[first]!, corners[(first + 1) % corners.length]!]);
    corners.splice(first, 1);
  }
  cut.push([corners[0]!, corners[1]!, corners[2]!]);
  return fillsTheSame(cut, set, points) ? cut : set;
}

function inOrderRound(set: readonly Triangle[]): number[] {
  const rim = rimOf(set);
  const next = new Map(rim.map(([from, to]) => [from, to]));
  const start = Math.min(...next.keys());
  const corners = [start];
  for (let corner = next.get(start); corner !== undefined && corner !== start; corner = next.get(corner)) {
    corners.push(corner);
    if (corners.length > rim.length) break;
  }
  return corners;
}

/** Points on nearly one circle only might make triangles that lie the wrong way round. */
function fillsTheSame(cut: readonly Triangle[], set: readonly Triangle[], points: readonly Point[]): boolean {
  const areas = (triangles: readonly Triangle[]): number[] =>
    triangles.map(([a, b, c]) => turning(points[a]!, points[b]!, points[c]!));
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const after = areas(cut);
  const before = sum(areas(set));
  return after.every(area => area > 0) && Math.abs(sum(after) - before) <= SAME_AREA * before;
}
