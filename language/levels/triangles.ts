import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import { cornerLoop, distance, hullOf, type Point, signedAreaOf } from '../geometry/index.ts';
import { withoutRimSlivers } from './rim-slivers.ts';
import { SAME_SPOT } from './spots.ts';
import { withTiesSettled } from './ties.ts';
import { type NumberedEdge, type Triangle, triangleByEdge, turning } from './triangle.ts';

/** Share of the whole by which the areas of triangles may miss the area of their hull. */
const ROUNDING = 1e-9;

/** In metres: how far a corner of a sliver may lie on the wrong side. */
const TURNED_OVER = 1e-9;

/**
 * Triangles between some of the points, as near to even-sided as can be (no point lies within the circle round another
 * three), save where edges are asked for. Where points on one circle leave a choice, see `withTiesSettled`. Undefined when
 * the points lie so nearly in one line that rounding leaves no sound triangles.
 */
export function trianglesBetween(
  points: readonly Point[],
  numbers: readonly number[],
  edges: readonly NumberedEdge[]
): Triangle[] | undefined {
  const raw = constrained(points, numbers, edges);
  if (!raw || !areSound(raw, points, numbers)) return undefined;
  return withTiesSettled(withoutRimSlivers(raw, points), points, edges);
}

function constrained(
  points: readonly Point[],
  numbers: readonly number[],
  edges: readonly NumberedEdge[]
): Triangle[] | undefined {
  const triangulation = Delaunator.from(
    numbers.map(number => points[number]!),
    ({ x }) => x,
    ({ y }) => y
  );
  if (triangulation.triangles.length === 0) return undefined;
  const place = new Map(numbers.map((number, index) => [number, index]));
  try {
    const constraints = new Constrainautor(triangulation);
    for (const { from, to } of edges) constraints.constrainOne(place.get(from)!, place.get(to)!);
  } catch {
    // The library throws on edges that cross or meet a point, which are told before; what is left is rounding.
    return undefined;
  }
  const corners = [...triangulation.triangles].map(place => numbers[place]!);
  const triangles: Triangle[] = [];
  for (let first = 0; first < corners.length; first += 3) {
    // The library runs round all of them one way, which is clockwise with y up.
    triangles.push([corners[first]!, corners[first + 2]!, corners[first + 1]!]);
  }
  return triangles;
}

/** Every point is taken, and the triangles fill the hull once over. */
function areSound(triangles: readonly Triangle[], points: readonly Point[], numbers: readonly number[]): boolean {
  const taken = new Set(triangles.flat());
  if (!numbers.every(number => taken.has(number))) return false;
  if (triangleByEdge(triangles).size !== 3 * triangles.length) return false;
  if (triangles.some(triangle => isTurnedOver(triangle, points))) return false;
  const hull = hullOf(numbers.map(number => points[number]!));
  const area = Math.abs(signedAreaOf(cornerLoop(hull)));
  const sum = triangles.reduce((sum, [a, b, c]) => sum + turning(points[a]!, points[b]!, points[c]!) / 2, 0);
  const round = hull.reduce((sum, corner, index) => sum + distance(corner, hull[(index + 1) % hull.length]!), 0);
  return Math.abs(sum - area) <= ROUNDING * area + ROUNDING * SAME_SPOT * round;
}

/** Whether a triangle runs clockwise, by more than rounding turns over a sliver. */
function isTurnedOver(triangle: Triangle, points: readonly Point[]): boolean {
  const [a, b, c] = triangle.map(number => points[number]!) as [Point, Point, Point];
  return turning(a, b, c) < -TURNED_OVER * Math.max(distance(a, b), distance(b, c), distance(c, a));
}
