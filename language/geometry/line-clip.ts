import { append, close, type Edge, type Path, straightEdge, turnsTo } from './path-clip.ts';
import type { Point } from './shapes.ts';

/** In metres: ends of edges this near to the line lie on it, so that no edge is cut into crumbs there. */
const ON_LINE = 1e-12;

/** A line with a direction: how far left of it things lie, in metres. */
interface Line {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
}

/** What of paths lies left of the line from one point to another. Parts hang together as `cutPaths` leaves them. */
export function cutToLeft(paths: readonly Path[], from: Point, to: Point): Path[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const line = { x: from.x, y: from.y, ux: (to.x - from.x) / length, uy: (to.y - from.y) / length };
  const kept: Path[] = [];
  for (const path of paths) {
    const lies = sideOfLine(path, line);
    if (lies > 0) kept.push(path);
    else if (lies === 0) cutPath(path, line, kept);
  }
  return kept;
}

function leftOf({ x, y, ux, uy }: Line, pointX: number, pointY: number): number {
  const off = ux * (pointY - y) - uy * (pointX - x);
  return Math.abs(off) <= ON_LINE ? 0 : off;
}

/** 1 when a path lies wholly on or left of the line, -1 on or right of it, 0 when it may lie on both sides. */
function sideOfLine(path: Path, line: Line): number {
  let left = true;
  let right = true;
  for (const { x0, y0, centreX, centreY, radius } of path) {
    // Each edge ends where the next one starts. Round an arc it may reach as far as its whole circle.
    const off = radius > 0 ? leftOf(line, centreX, centreY) : leftOf(line, x0, y0);
    const start = leftOf(line, x0, y0);
    if (Math.min(off - radius, start) < 0) left = false;
    if (Math.max(off + radius, start) > 0) right = false;
    if (!left && !right) return 0;
  }
  return left ? 1 : -1;
}

function cutPath(path: Path, line: Line, kept: Path[]): void {
  const edges: Edge[] = [];
  for (const edge of path) {
    if (edge.radius > 0) cutArc(edge, line, edges);
    else cutStraight(edge, line, edges);
  }
  close(edges, kept);
}

function cutStraight(edge: Edge, line: Line, edges: Edge[]): void {
  const { x0, y0, x1, y1 } = edge;
  const from = leftOf(line, x0, y0);
  const to = leftOf(line, x1, y1);
  if (from <= 0 && to <= 0) return;
  if (from >= 0 && to >= 0) {
    append(edges, edge);
    return;
  }
  const share = from / (from - to);
  const x = x0 + share * (x1 - x0);
  const y = y0 + share * (y1 - y0);
  append(edges, from > 0 ? straightEdge(x0, y0, x, y) : straightEdge(x, y, x1, y1));
}

function cutArc(edge: Edge, line: Line, edges: Edge[]): void {
  const { centreX, centreY, radius, start, turn } = edge;
  const off = line.ux * (centreY - line.y) - line.uy * (centreX - line.x);
  const normal = Math.atan2(line.ux, -line.uy);
  const reach = Math.abs(off) < radius ? Math.acos(-off / radius) : undefined;
  const ends = [...(reach === undefined ? [] : turnsTo(edge, normal + reach, normal - reach)), turn];
  let { x0, y0 } = edge;
  let done = 0;
  for (const [index, end] of ends.entries()) {
    const isLast = index === ends.length - 1;
    const x1 = isLast ? edge.x1 : centreX + radius * Math.cos(start + end);
    const y1 = isLast ? edge.y1 : centreY + radius * Math.sin(start + end);
    const middle = off + radius * Math.cos(start + (done + end) / 2 - normal);
    if (middle > 0) append(edges, { x0, y0, x1, y1, centreX, centreY, radius, start: start + done, turn: end - done });
    [x0, y0, done] = [x1, y1, end];
  }
}
