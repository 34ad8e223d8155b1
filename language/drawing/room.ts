import type { Point } from '../geometry/index.ts';
import { insideCorners } from './chord-corners.ts';

/** Where the largest box of one proportion finds room, and how many times the size asked for. */
export interface Room {
  readonly at: Point;
  readonly times: number;
}

/** How often the likeliest part of a shape is looked at more closely. */
const LOOKS = 200;

/**
 * The middle of the largest box of a proportion (width by height, sides level once the shape is turned back by `turn`)
 * inside outlines given by their corners. In a frame in which the box is a square of side two, its room about a point is
 * the distance to the nearest edge, the greater of the two ways counting.
 */
export function roomFor(
  outlines: readonly (readonly Point[])[],
  box: { readonly width: number; readonly height: number },
  turn: number
): Room | undefined {
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  const squared = outlines.map(corners =>
    corners.map(({ x, y }) => ({
      x: ((x * cosine + y * sine) * 2) / box.width,
      y: ((y * cosine - x * sine) * 2) / box.height
    }))
  );
  const found = mostDistant(squared);
  if (found === undefined || found.room <= 0) return undefined;
  const x = (found.x * box.width) / 2;
  const y = (found.y * box.height) / 2;
  return { at: { x: x * cosine - y * sine, y: x * sine + y * cosine }, times: found.room };
}

interface Cell extends Point {
  readonly half: number;
  readonly room: number;
}

/** The point furthest from all edges: parts of the shape that can hold no better one are never looked at. */
function mostDistant(outlines: readonly (readonly Point[])[]): Cell | undefined {
  const all = outlines.flat();
  if (all.length === 0) return undefined;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of all) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  const cellAt = (x: number, y: number, half: number): Cell => ({ x, y, half, room: roomAt(outlines, { x, y }) });
  const half = Math.min(right - left, top - bottom) / 2;
  if (!(half > 0) || !Number.isFinite(half)) return undefined;
  const across = Math.min(MOST_ACROSS, Math.ceil((right - left) / (2 * half)));
  const up = Math.min(MOST_ACROSS, Math.ceil((top - bottom) / (2 * half)));
  const size = Math.max((right - left) / across, (top - bottom) / up) / 2;
  const cells: Cell[] = [cellAt((left + right) / 2, (bottom + top) / 2, 0)];
  for (let column = 0; column < across; column++) {
    for (let row = 0; row < up; row++) {
      cells.push(
        cellAt(left + ((right - left) * (column + 0.5)) / across, bottom + ((top - bottom) * (row + 0.5)) / up, size)
      );
    }
  }
  let best = cells.reduce((a, b) => (b.room > a.room + HAIR ? b : a));
  // No place has more room than half the shape is wide: of a rectangle the middle is found at once.
  for (let look = 0; look < LOOKS && best.room * ENOUGH < half; look++) {
    const index = likeliest(cells);
    const [cell] = cells.splice(index, 1);
    if (cell === undefined || cell.room + cell.half <= best.room * ENOUGH) break;
    const quarter = cell.half / 2;
    for (const [right, up] of QUARTERS) {
      const part = cellAt(cell.x + right * quarter, cell.y + up * quarter, quarter);
      if (part.room > best.room + HAIR) best = part;
      cells.push(part);
    }
  }
  return best;
}

const QUARTERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1]
] as const;

/** Long strips are looked at in so many parts at first. */
const MOST_ACROSS = 24;

/** Room a twentieth larger is not looked for. */
const ENOUGH = 1.05;

/** Of places as good as each other the first stays: rounding decides nothing. */
const HAIR = 1e-9;

function likeliest(cells: readonly Cell[]): number {
  let at = 0;
  cells.forEach((cell, index) => {
    if (cell.room + cell.half > cells[at]!.room + cells[at]!.half + HAIR) at = index;
  });
  return at;
}

function roomAt(outlines: readonly (readonly Point[])[], point: Point): number {
  let room = Infinity;
  for (const corners of outlines) {
    let before = corners[corners.length - 1];
    for (const corner of corners) {
      if (before) room = Math.min(room, squareDistance(point, before, corner));
      before = corner;
    }
  }
  return insideCorners(outlines, point) ? room : -room;
}

/** From a point to a straight edge, the greater of the ways across and up: where it is least, they agree or one is nought. */
function squareDistance(point: Point, from: Point, to: Point): number {
  const x = from.x - point.x;
  const y = from.y - point.y;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const at = (share: number): number => {
    const along = share > 0 ? (share < 1 ? share : 1) : 0;
    return Math.max(Math.abs(x + along * dx), Math.abs(y + along * dy));
  };
  let least = Math.min(at(0), at(1));
  if (dx !== 0) least = Math.min(least, at(-x / dx));
  if (dy !== 0) least = Math.min(least, at(-y / dy));
  if (dx !== dy) least = Math.min(least, at((y - x) / (dx - dy)));
  if (dx !== -dy) least = Math.min(least, at(-(x + y) / (dx + dy)));
  return least;
}
