import { columnsOf, coursesOf, cutPaths, filling, type Path, pathsArea } from '../../geometry/index.ts';

/** Equal rectangles in courses, in metres of the frame they are laid in. */
export interface Lattice {
  /** Lower left corner of one of them. */
  readonly x: number;
  readonly y: number;
  /** Along the courses. */
  readonly length: number;
  /** Across the courses. */
  readonly width: number;
  /** From each to the next, along and across. */
  readonly alongPitch: number;
  readonly acrossPitch: number;
  /** Share of the pitch along by which each course is moved on from the one before: 0 stack bond, 0.5 half bond. */
  readonly offset: number;
}

/** What of a region lies in the rectangles of a lattice, and beside them. */
export interface FoundInLattice {
  /** So many in a row lie wholly inside, the first with its lower left corner here. */
  readonly full: (x: number, y: number, count: number) => void;
  /** One lies partly inside: what lies in it. */
  readonly partial: (x: number, y: number, paths: readonly Path[]) => void;
  /** Square metres between the rectangles, where that is asked for. */
  readonly between?: (area: number) => void;
}

/** The shift of a course against the first, in metres along it: less than a pitch. */
export function shiftOf(course: number, { offset, alongPitch }: Lattice): number {
  const pitches = course * offset;
  return (pitches - Math.floor(pitches)) * alongPitch;
}

/** Goes through a lattice by halving courses, then columns. Yields after each course. */
export function* overLattice(paths: readonly Path[], lattice: Lattice, found: FoundInLattice): Generator<void, void> {
  const { length, width, alongPitch, acrossPitch } = lattice;
  for (const course of coursesOf(paths, acrossPitch, lattice.y)) {
    const { bottom } = course;
    const strip = { ...course, top: bottom + width };
    if (acrossPitch > width) {
      const { low, high } = cutPaths(course.paths, 'y', strip.top);
      strip.paths = low;
      found.between?.(pathsArea(high));
    }
    columnsOf(strip, alongPitch, lattice.x + shiftOf(course.number, lattice), {
      full: (left, count) => {
        found.full(left, bottom, count);
        found.between?.(count * (alongPitch - length) * width);
      },
      partial: (left, inCell) => {
        let inRectangle = inCell;
        if (alongPitch > length) {
          const { low, high } = cutPaths(inCell, 'x', left + length);
          inRectangle = low;
          found.between?.(pathsArea(high));
        }
        const rectangle = { left, right: left + length, bottom, top: strip.top };
        const fills = filling(inRectangle, rectangle);
        if (fills === 'full') found.full(left, bottom, 1);
        else if (fills === 'partial') found.partial(left, bottom, inRectangle);
      }
    });
    yield;
  }
}
