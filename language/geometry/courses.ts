import { boxRound, cutPaths, type Edge, filling, type Path, RIM_TOLERANCE } from './path-clip.ts';

/** One course and what of the region lies in it. */
export interface Course {
  readonly number: number;
  readonly bottom: number;
  readonly top: number;
  readonly paths: readonly Path[];
}

/** The courses a region reaches, found by halving: a pitch high each, in metres, the first starting at `start`. */
export function* coursesOf(paths: readonly Path[], pitch: number, start: number): Generator<Course, void> {
  const { bottom, top } = boxRound(paths);
  const first = Math.floor((bottom - start) / pitch);
  const end = Math.ceil((top - start) / pitch);
  const waiting = [{ first, end, paths: cutToRows(paths, start + first * pitch, start + end * pitch) }];
  for (let band = waiting.pop(); band; band = waiting.pop()) {
    if (band.paths.length === 0) continue;
    const { first: from, end: to } = band;
    if (to - from <= 1) {
      yield { number: from, bottom: start + from * pitch, top: start + to * pitch, paths: band.paths };
      continue;
    }
    const middle = Math.floor((from + to) / 2);
    const { low, high } = cutPaths(band.paths, 'y', start + middle * pitch);
    waiting.push({ first: middle, end: to, paths: high }, { first: from, end: middle, paths: low });
  }
}

/** What of paths lies between two levels across the courses. */
export function cutToRows(paths: readonly Path[], bottom: number, top: number): Path[] {
  return cutPaths(cutPaths(paths, 'y', bottom).high, 'y', top).low;
}

/** What of paths lies between two levels along the courses. */
export function cutToColumns(paths: readonly Path[], left: number, right: number): Path[] {
  return cutPaths(cutPaths(paths, 'x', left).high, 'x', right).low;
}

/** Cells that follow each other along a course without gaps, by number. */
export interface Cells {
  /** Metres along the course to the left edge of a cell. */
  readonly at: (cell: number) => number;
  /** The last cell that starts at or before a place. */
  readonly lastFrom: (place: number) => number;
  /** The first cell that starts at or after a place. */
  readonly firstFrom: (place: number) => number;
}

/** Cells of one length, the one with number nought starting at `start`. */
export function evenCells(pitch: number, start: number): Cells {
  return {
    at: cell => start + cell * pitch,
    lastFrom: place => Math.floor((place - start) / pitch),
    firstFrom: place => Math.ceil((place - start) / pitch)
  };
}

export interface CellsFound {
  /** Cells that lie wholly inside, from the first to before the end. */
  readonly full: (first: number, end: number) => void;
  /** One cell is partly inside: what lies in it. */
  readonly partial: (cell: number, paths: readonly Path[]) => void;
}

/**
 * Cuts a course into its cells and tells, from left to right, which the region fills. Where no edge runs the course is
 * full or empty throughout: only the cells about an edge are looked at one by one.
 */
export function cellsOf(course: Course, cells: Cells, found: CellsFound): void {
  const { bottom, top } = course;
  const halve = (paths: readonly Path[], first: number, end: number): void => {
    if (paths.length === 0) return;
    const fills = filling(paths, { left: cells.at(first), right: cells.at(end), bottom, top });
    if (fills === 'empty') return;
    if (fills === 'full') found.full(first, end);
    else if (end - first <= 1) found.partial(first, paths);
    else {
      const middle = Math.floor((first + end) / 2);
      const { low, high } = cutPaths(paths, 'x', cells.at(middle));
      halve(low, first, middle);
      halve(high, middle, end);
    }
  };
  let rest = course.paths;
  let reached: number | undefined;
  for (const { first, end } of cellsAboutEdges(course, cells)) {
    if (reached !== undefined) {
      const between = cutPaths(rest, 'x', cells.at(first));
      halve(between.low, reached, first);
      rest = between.high;
    }
    const { low, high } = cutPaths(rest, 'x', cells.at(end));
    halve(low, first, end);
    rest = high;
    reached = end;
  }
}

/** The cells that an edge runs through or along, in order and apart; edges along the course itself left out. */
function cellsAboutEdges({ paths, bottom, top }: Course, cells: Cells): { first: number; end: number }[] {
  const all: { first: number; end: number }[] = [];
  for (const path of paths)
    for (const edge of path) {
      if (edge.radius === 0 && (runsAt(edge, bottom) || runsAt(edge, top))) continue;
      const { left, right } = boxRound([[edge]]);
      all.push({ first: cells.lastFrom(left - RIM_TOLERANCE), end: cells.firstFrom(right + RIM_TOLERANCE) });
    }
  const apart: { first: number; end: number }[] = [];
  for (const { first, end } of all.sort((a, b) => a.first - b.first)) {
    const last = apart.at(-1);
    if (last !== undefined && first <= last.end) last.end = Math.max(last.end, end);
    else apart.push({ first, end });
  }
  return apart;
}

function runsAt({ y0, y1 }: Edge, level: number): boolean {
  return Math.abs(y0 - level) < RIM_TOLERANCE && Math.abs(y1 - level) < RIM_TOLERANCE;
}

export interface ColumnsFound {
  /** So many cells in a row lie wholly inside; the left edge of the first. */
  readonly full: (left: number, count: number) => void;
  /** One cell is partly inside: its left edge, and what lies in it. */
  readonly partial: (left: number, paths: readonly Path[]) => void;
}

/** Halves a course into cells, a pitch long each in metres from `start` on, and tells which the region fills. */
export function columnsOf(course: Course, pitch: number, start: number, found: ColumnsFound): void {
  const cells = evenCells(pitch, start);
  cellsOf(course, cells, {
    full: (first, end) => found.full(cells.at(first), end - first),
    partial: (cell, paths) => found.partial(cells.at(cell), paths)
  });
}
