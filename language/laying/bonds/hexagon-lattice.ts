import { cellsOf, evenCells } from '../../geometry/courses.ts';
import { boxRound, cutPaths, type Path } from '../../geometry/path-clip.ts';

/**
 * Equal shapes in rows, each row shifted by half a pitch against the one before. A shape lies in a box with its lower
 * left corner at nought, no longer than the pitch along; rows may overlap. Metres.
 */
export interface ShiftedRows {
  /** Where the first shape of row nought lies. */
  readonly x: number;
  readonly y: number;
  /** Of the box round a shape. */
  readonly height: number;
  /** From a shape to the next in its row, and from a row to the next. */
  readonly along: number;
  readonly across: number;
}

/** What is found in one row, from left to right. */
export interface ShapesFound {
  /** Shapes in a row that lie wholly inside, the box of the first at a place. */
  readonly full: (count: number, x: number, y: number) => void;
  /** The region's edge runs through the box of one shape: its place, and what lies about it. */
  readonly partial: (x: number, y: number, paths: readonly Path[]) => void;
}

/** Halves a region into rows and these into shapes, and tells which it fills. Yields after each row. */
export function* shapesIn(paths: readonly Path[], rows: ShiftedRows, found: ShapesFound): Generator<void, void> {
  for (const { number, bottom, top, paths: inRow } of overlappingRows(paths, rows)) {
    const half = number % 2 === 0 ? 0 : rows.along / 2;
    const cells = evenCells(rows.along, rows.x + half);
    const row = { number, bottom, top, paths: inRow };
    cellsOf(row, cells, {
      full: (first, end) => found.full(end - first, cells.at(first), bottom),
      partial: (cell, inCell) => found.partial(cells.at(cell), bottom, inCell)
    });
    yield;
  }
}

interface Band {
  readonly first: number;
  readonly end: number;
  readonly paths: readonly Path[];
}

function* overlappingRows(paths: readonly Path[], { y, height, across }: ShiftedRows) {
  const bottomOf = (row: number): number => y + row * across;
  const { bottom, top } = boxRound(paths);
  const first = Math.floor((bottom - y - height) / across) + 1;
  const end = Math.ceil((top - y) / across);
  const waiting: Band[] = [];
  const wait = (from: number, to: number, inBand: readonly Path[]): void => {
    const low = cutPaths(inBand, 'y', bottomOf(to - 1) + height).low;
    waiting.push({ first: from, end: to, paths: cutPaths(low, 'y', bottomOf(from)).high });
  };
  if (first < end) wait(first, end, paths);
  for (let band = waiting.pop(); band; band = waiting.pop()) {
    const { first: from, end: to, paths: inBand } = band;
    if (inBand.length === 0) continue;
    if (to - from === 1) {
      yield { number: from, bottom: bottomOf(from), top: bottomOf(from) + height, paths: inBand };
      continue;
    }
    const middle = Math.floor((from + to) / 2);
    wait(middle, to, inBand);
    wait(from, middle, inBand);
  }
}
