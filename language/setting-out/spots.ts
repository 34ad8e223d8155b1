import { distance, type Point } from '../geometry/index.ts';

/** So far along the line `from` … `to` and `out` to its left, m. Nothing where the two coincide: that line has no direction. */
export function along(from: Point, to: Point, forward: number, out: number): Point | undefined {
  const length = distance(from, to);
  if (length === 0) return undefined;
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return { x: from.x + forward * x - out * y, y: from.y + forward * y + out * x };
}

/** So far, m, in a direction: radians, anticlockwise from the x axis. */
export function polar(from: Point, far: number, direction: number): Point {
  return { x: from.x + far * Math.cos(direction), y: from.y + far * Math.sin(direction) };
}

export function halfway(one: Point, other: Point): Point {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}

/** A length to check corners by: between two of them, by their numbers from nought, m. */
export interface CornerTape {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/**
 * What to tape to know that corners stand right: both diagonals of four; of any other number, each corner from both ends
 * of the first side. Nothing for fewer than three.
 */
export function diagonals(corners: readonly Point[]): CornerTape[] {
  const between = (from: number, to: number): CornerTape => ({
    from,
    to,
    length: distance(corners[from]!, corners[to]!)
  });
  if (corners.length === 4) return [between(0, 2), between(1, 3)];
  return corners.slice(2).flatMap((_, index) => [between(0, index + 2), between(1, index + 2)]);
}

/** A 3-4-5 triangle, m: its right angle stands at the end of the base line. */
export interface RightTriangle {
  /** Four parts, taped along the base line from its end. */
  readonly along: number;
  /** Three parts, out from the end. */
  readonly out: number;
  /** Five parts, from the mark on the base line to the one out. */
  readonly across: number;
}

const FOOT = 0.3048;
/** One part of the triangle, a plain number on the tape: as many of the first measure as fit, else of the next. */
const PARTS = {
  imperial: [FOOT, FOOT / 4],
  metric: [0.1, 0.01]
} as const;
/** A base line exactly as long as the triangle still takes it, however its decimals round. */
const ROUNDING = 1e-6;

/**
 * The largest 3-4-5 triangle whose long leg fits a base line of this length: in whole feet (in threes of inches on lines
 * under 4 ft), or in tenths of a metre (hundredths on lines under 0.4 m). Nothing where none fits.
 */
export function threeFourFive(length: number, system: 'imperial' | 'metric'): RightTriangle | undefined {
  for (const metres of PARTS[system]) {
    const parts = Math.floor((length + ROUNDING) / (4 * metres));
    if (parts >= 1) return { along: 4 * parts * metres, out: 3 * parts * metres, across: 5 * parts * metres };
  }
  return undefined;
}

/** Where the triangle's two marks stand for a right angle at `end` of the line that comes from `other`. */
export function rightAngleAt(
  end: Point,
  other: Point,
  toLeft: boolean,
  triangle: RightTriangle
): { readonly onLine: Point; readonly out: Point } | undefined {
  const onLine = along(end, other, triangle.along, 0);
  // Looked at from the end, the line runs the other way: its left is the right of the line that comes there.
  const out = along(end, other, 0, toLeft ? -triangle.out : triangle.out);
  return onLine && out && { onLine, out };
}
