import { type Bounds, type Point } from '../geometry/index.ts';
import { cutTo, type HalfPlane, halfPlane, leftOf } from './half-plane.ts';
import { SAME_SPOT, type Spot } from './spots.ts';
import { rimOf, type Triangle, turning } from './triangle.ts';

/** A sloping plane by one of its points; slopes as ratios. It keeps its digits far from the origin. */
export interface Slope {
  readonly through: Spot;
  readonly alongX: number;
  readonly alongY: number;
}

/** A convex part of the plan over which the ground is one plane; `corners` of those that end. */
export interface GroundCell {
  readonly sides: readonly HalfPlane[];
  readonly corners?: readonly Point[];
  readonly slope: Slope;
  /** Whether it lies beyond the spots. */
  readonly beyond: boolean;
}

export function onSlope({ through, alongX, alongY }: Slope, { x, y }: Point): number {
  return through.z + (x - through.x) * alongX + (y - through.y) * alongY;
}

/** Metres that a point lies inside a cell; negative outside. */
export function withinCell({ sides }: GroundCell, point: Point): number {
  return sides.reduce((least, side) => Math.min(least, leftOf(side, point)), Infinity);
}

/** What of a cell lies in a box: its corners, anticlockwise; none when there is nothing. */
export function cornersWithin({ sides, corners }: GroundCell, { left, right, bottom, top }: Bounds): Point[] {
  const box = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top }
  ];
  const boxSides = box.map((corner, index) => halfPlane(corner, box[(index + 1) % box.length]!));
  // A triangle keeps its own corners: those worked out from its sides would lose digits.
  const cut = corners ? boxSides.reduce(cutTo, [...corners]) : sides.reduce(cutTo, box);
  return cut.length < 3 ? [] : cut;
}

/** One spot: level ground everywhere. */
export function levelCell(spot: Spot): GroundCell {
  return { sides: [], slope: { through: spot, alongX: 0, alongY: 0 }, beyond: true };
}

/** Spots in one line, in order along it: strips square to it, and level ground past its ends. */
export function chainCells(chain: readonly Spot[]): GroundCell[] {
  const [first, last] = [chain[0]!, chain.at(-1)!];
  const { way } = halfPlane(first, last);
  const onward = { x: way.y, y: -way.x };
  const back = { x: -way.y, y: way.x };
  const strips = chain.slice(1).map((to, index): GroundCell => {
    const from = chain[index]!;
    const slope = slopeAlong(from, to, way);
    return {
      sides: [
        { on: from, way: onward },
        { on: to, way: back }
      ],
      slope,
      beyond: true
    };
  });
  return [
    { ...levelCell(first), sides: [{ on: first, way: back }] },
    ...strips,
    { ...levelCell(last), sides: [{ on: last, way: onward }] }
  ];
}

export function triangleCell(triangle: Triangle, spots: readonly Spot[]): GroundCell {
  const [a, b, c] = triangle.map(number => spots[number]!) as [Spot, Spot, Spot];
  const sides = [halfPlane(a, b), halfPlane(b, c), halfPlane(c, a)];
  return { sides, corners: [a, b, c], slope: slopeThrough(a, b, c), beyond: false };
}

function slopeThrough(a: Spot, b: Spot, c: Spot): Slope {
  const twice = turning(a, b, c);
  const [from, to] = [
    [a, b],
    [b, c],
    [c, a]
  ].reduce((longest, edge) => (lengthOf(edge) > lengthOf(longest) ? edge : longest)) as [Spot, Spot];
  // A triangle no wider than a line has no fall across.
  if (twice <= SAME_SPOT * lengthOf([from, to])) return slopeAlong(from, to, halfPlane(from, to).way);
  return {
    through: a,
    alongX: ((b.z - a.z) * (c.y - a.y) - (c.z - a.z) * (b.y - a.y)) / twice,
    alongY: ((c.z - a.z) * (b.x - a.x) - (b.z - a.z) * (c.x - a.x)) / twice
  };
}

function lengthOf([from, to]: readonly Spot[]): number {
  return Math.hypot(to!.x - from!.x, to!.y - from!.y);
}

/** Falls from one spot to another in a direction, and not at all square to it. */
function slopeAlong(from: Spot, to: Spot, way: Point): Slope {
  const fall = (to.z - from.z) / ((to.x - from.x) * way.x + (to.y - from.y) * way.y);
  return { through: from, alongX: fall * way.x, alongY: fall * way.y };
}

/** The edges round triangles, in order, anticlockwise. */
export function rimEdges(triangles: readonly Triangle[], spots: readonly Spot[]): (readonly [Spot, Spot])[] {
  const next = new Map(rimOf(triangles).map(([from, to]) => [from, to]));
  const edges: (readonly [Spot, Spot])[] = [];
  let from = Math.min(...next.keys());
  for (let to = next.get(from); to !== undefined; to = next.get(from)) {
    edges.push([spots[from]!, spots[to]!]);
    next.delete(from);
    from = to;
  }
  return edges;
}

/** Beyond the rim: strips square to its edges, as high as the edge, and wedges at its corners, as high as the corner. */
export function cellsBeyond(rim: readonly (readonly [Spot, Spot])[]): GroundCell[] {
  const outward = rim.map(([from, to]) => {
    const { way } = halfPlane(from, to);
    return { x: way.y, y: -way.x };
  });
  const corners = rim.map(([corner], index) => cornerBeyond(corner, outward.at(index - 1)!, outward[index]!));
  return rim.flatMap(([from, to], index) => {
    const { way } = halfPlane(from, to);
    const [start, end] = [corners[index]!, corners[(index + 1) % corners.length]!];
    const strip: GroundCell = {
      sides: [halfPlane(to, from), { on: from, way: start.after }, { on: to, way: turnedBack(end.before) }],
      slope: slopeAlong(from, to, way),
      beyond: true
    };
    return start.wedge ? [start.wedge, strip] : [strip];
  });
}

/** Which way the bounds between the cells at a corner run outward: the strip's before it and the strip's after it. */
function cornerBeyond(corner: Spot, before: Point, after: Point): { before: Point; after: Point; wedge?: GroundCell } {
  if (before.x * after.y - before.y * after.x > 0) {
    const sides = [
      { on: corner, way: before },
      { on: corner, way: turnedBack(after) }
    ];
    return { before, after, wedge: { ...levelCell(corner), sides } };
  }
  // On a straight rim the corner may lie a hair inside: the strips on both sides then share one bound.
  const { way } = halfPlane({ x: 0, y: 0 }, { x: before.x + after.x, y: before.y + after.y });
  return { before: way, after: way };
}

function turnedBack({ x, y }: Point): Point {
  return { x: -x, y: -y };
}
