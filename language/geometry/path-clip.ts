import type { Bounds } from './bounds.ts';
import { radiusOf, turnLessSine } from './outline.ts';
import type { Loop, Side } from './shapes.ts';

/** A side laid out flat for clipping; radius nought makes it straight. Metres and radians. */
export interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly centreX: number;
  readonly centreY: number;
  readonly radius: number;
  readonly start: number;
  readonly turn: number;
}

/** Edges that follow each other and close. */
export type Path = readonly Edge[];

/** What a cutting line is square to. */
export type Axis = 'x' | 'y';

/** In radians: no arc is cut this near to its ends, where a cut before has already put it on the line. */
const ARC_END = 1e-12;

/**
 * In metres: edges this near to the rim of a box run along it. Rounding of a plan a kilometre across stays below, and a
 * missing strip of this width along all of an edge is nothing of the area.
 */
export const RIM_TOLERANCE = 1e-10;

export function straightEdge(x0: number, y0: number, x1: number, y1: number): Edge {
  return { x0, y0, x1, y1, centreX: 0, centreY: 0, radius: 0, start: 0, turn: 0 };
}

export function pathOf(loop: Loop): Path {
  return loop.map(edgeOf);
}

/** A path as an outline. Its sides meet exactly, as an outline's do. */
export function loopOf(path: Path): Loop {
  return path.map((edge, index) => {
    const { x0, y0, x1, y1, radius, centreX, centreY, turn } = edge;
    const next = path[(index + 1) % path.length];
    const ends = { from: { x: x0, y: y0 }, to: { x: next?.x0 ?? x1, y: next?.y0 ?? y1 } };
    return radius > 0 ? { ...ends, arc: { centre: { x: centreX, y: centreY }, turn } } : ends;
  });
}

function edgeOf(side: Side): Edge {
  const { from, to, arc } = side;
  if (!arc) return straightEdge(from.x, from.y, to.x, to.y);
  return {
    x0: from.x,
    y0: from.y,
    x1: to.x,
    y1: to.y,
    centreX: arc.centre.x,
    centreY: arc.centre.y,
    radius: radiusOf(side, arc),
    start: Math.atan2(from.y - arc.centre.y, from.x - arc.centre.x),
    turn: arc.turn
  };
}

/**
 * Cuts paths in two along a line: what lies below the level (or left of it), and what lies above (right). A path in
 * several parts stays one path whose parts hang together by edges along the line; its signed area is right.
 */
export function cutPaths(paths: readonly Path[], axis: Axis, level: number): { low: Path[]; high: Path[] } {
  const low: Path[] = [];
  const high: Path[] = [];
  for (const path of paths) {
    const lies = sideOfLine(path, axis, level);
    if (lies < 0) low.push(path);
    else if (lies > 0) high.push(path);
    else cutPath(path, axis, level, low, high);
  }
  return { low, high };
}

/** -1 when a path lies wholly at or below the level, 1 at or above, 0 when it may lie on both sides. */
function sideOfLine(path: Path, axis: Axis, level: number): number {
  let low = true;
  let high = true;
  for (const edge of path) {
    if (lowest(edge, axis) < level) high = false;
    if (highest(edge, axis) > level) low = false;
    if (!low && !high) return 0;
  }
  return low ? -1 : 1;
}

// Round an arc these may reach as far as its whole circle.
function lowest(edge: Edge, axis: Axis): number {
  if (edge.radius > 0) return (axis === 'x' ? edge.centreX : edge.centreY) - edge.radius;
  return axis === 'x' ? Math.min(edge.x0, edge.x1) : Math.min(edge.y0, edge.y1);
}

function highest(edge: Edge, axis: Axis): number {
  if (edge.radius > 0) return (axis === 'x' ? edge.centreX : edge.centreY) + edge.radius;
  return axis === 'x' ? Math.max(edge.x0, edge.x1) : Math.max(edge.y0, edge.y1);
}

function cutPath(path: Path, axis: Axis, level: number, low: Path[], high: Path[]): void {
  const lowEdges: Edge[] = [];
  const highEdges: Edge[] = [];
  for (const edge of path) {
    if (edge.radius > 0) cutArc(edge, axis, level, lowEdges, highEdges);
    else cutStraight(edge, axis, level, lowEdges, highEdges);
  }
  close(lowEdges, low);
  close(highEdges, high);
}

/** Puts an edge behind others, tied to the last by a straight edge where they do not meet. */
export function append(edges: Edge[], edge: Edge): void {
  const last = edges[edges.length - 1];
  if (last) join(edges, last, edge);
  edges.push(edge);
}

function join(edges: Edge[], before: Edge, after: Edge): void {
  if (before.x1 !== after.x0 || before.y1 !== after.y0) {
    edges.push(straightEdge(before.x1, before.y1, after.x0, after.y0));
  }
}

/** Closes edges with a straight one and puts them among paths; no edges are no path. */
export function close(edges: Edge[], paths: Path[]): void {
  const first = edges[0];
  const last = edges[edges.length - 1];
  if (!first || !last) return;
  join(edges, last, first);
  paths.push(edges);
}

function cutStraight(edge: Edge, axis: Axis, level: number, low: Edge[], high: Edge[]): void {
  const { x0, y0, x1, y1 } = edge;
  const from = axis === 'x' ? x0 : y0;
  const to = axis === 'x' ? x1 : y1;
  // An edge along the line belongs to neither part: each part closes along the line where it has to.
  if (from === level && to === level) return;
  if (from <= level && to <= level) append(low, edge);
  else if (from >= level && to >= level) append(high, edge);
  else {
    const share = (level - from) / (to - from);
    const x = axis === 'x' ? level : x0 + share * (x1 - x0);
    const y = axis === 'y' ? level : y0 + share * (y1 - y0);
    append(from < level ? low : high, straightEdge(x0, y0, x, y));
    append(from < level ? high : low, straightEdge(x, y, x1, y1));
  }
}

function cutArc(edge: Edge, axis: Axis, level: number, low: Edge[], high: Edge[]): void {
  const { centreX, centreY, radius, start, turn } = edge;
  const centre = axis === 'x' ? centreX : centreY;
  const share = (level - centre) / radius;
  const first = axis === 'x' ? Math.acos(share) : Math.asin(share);
  const cuts = Math.abs(share) < 1 ? turnsTo(edge, first, axis === 'x' ? -first : Math.PI - first) : [];
  let x0 = edge.x0;
  let y0 = edge.y0;
  let done = 0;
  for (let index = 0; index <= cuts.length; index++) {
    const cut = cuts[index];
    const end = cut ?? turn;
    const angle = start + end;
    const x1 = cut === undefined ? edge.x1 : axis === 'x' ? level : centreX + radius * Math.cos(angle);
    const y1 = cut === undefined ? edge.y1 : axis === 'y' ? level : centreY + radius * Math.sin(angle);
    const middle = start + (done + end) / 2;
    const reach = centre + radius * (axis === 'x' ? Math.cos(middle) : Math.sin(middle));
    const part = { x0, y0, x1, y1, centreX, centreY, radius, start: start + done, turn: end - done };
    append(reach <= level ? low : high, part);
    x0 = x1;
    y0 = y1;
    done = end;
  }
}

/** How far along its turn an arc comes through two directions from its centre, in order; its ends are left out. */
export function turnsTo(edge: Edge, first: number, second: number): number[] {
  const way = Math.sign(edge.turn);
  const size = Math.abs(edge.turn);
  return [first, second]
    .map(angle => {
      const along = (way * (angle - edge.start)) % (2 * Math.PI);
      return along < 0 ? along + 2 * Math.PI : along;
    })
    .filter(along => along > ARC_END && along < size - ARC_END)
    .sort((a, b) => a - b)
    .map(along => way * along);
}

/** Area inside paths in square metres, holes (clockwise) counting negative. */
export function pathsArea(paths: readonly Path[]): number {
  let twice = 0;
  // Measured from a corner at hand: far from the origin the products would lose digits.
  const x = paths[0]?.[0]?.x0 ?? 0;
  const y = paths[0]?.[0]?.y0 ?? 0;
  for (const path of paths) {
    for (const edge of path) {
      twice += (edge.x0 - x) * (edge.y1 - y) - (edge.x1 - x) * (edge.y0 - y);
      if (edge.radius > 0) twice += edge.radius * edge.radius * turnLessSine(edge.turn);
    }
  }
  return twice / 2;
}

/** Whether an edge runs along one of the four sides of a box. */
export function alongRim({ x0, y0, x1, y1, radius }: Edge, { left, right, bottom, top }: Bounds): boolean {
  if (radius > 0) return false;
  return (
    (Math.abs(x0 - left) < RIM_TOLERANCE && Math.abs(x1 - left) < RIM_TOLERANCE) ||
    (Math.abs(x0 - right) < RIM_TOLERANCE && Math.abs(x1 - right) < RIM_TOLERANCE) ||
    (Math.abs(y0 - bottom) < RIM_TOLERANCE && Math.abs(y1 - bottom) < RIM_TOLERANCE) ||
    (Math.abs(y0 - top) < RIM_TOLERANCE && Math.abs(y1 - top) < RIM_TOLERANCE)
  );
}

/** How much of a box paths cut to it fill. */
export function filling(paths: readonly Path[], box: Bounds): 'empty' | 'partial' | 'full' {
  for (const path of paths) for (const edge of path) if (!alongRim(edge, box)) return 'partial';
  return pathsArea(paths) * 2 > (box.right - box.left) * (box.top - box.bottom) ? 'full' : 'empty';
}

/** A box round paths; arcs may make it larger than need be. */
export function boxRound(paths: readonly Path[]): Bounds {
  let left = Infinity;
  let right = -Infinity;
  let bottom = Infinity;
  let top = -Infinity;
  for (const path of paths) {
    for (const edge of path) {
      left = Math.min(left, lowest(edge, 'x'));
      right = Math.max(right, highest(edge, 'x'));
      bottom = Math.min(bottom, lowest(edge, 'y'));
      top = Math.max(top, highest(edge, 'y'));
    }
  }
  return { left, right, bottom, top };
}
