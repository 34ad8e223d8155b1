import type { Loop, Point } from '../geometry/index.ts';

/**
 * Where a unit lies on the plan: the lower left corner of its own frame, and the direction in which its length runs,
 * radians anticlockwise from the x axis. Metres. Never mirrored: a unit lies face up.
 */
export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly direction: number;
}

/** Units of one kind laid whole in a row: the first, and the step from each to the next, metres on the plan. */
export interface WholeRun {
  /** Key of the unit. */
  readonly unit: string;
  readonly first: Placement;
  readonly step: Point;
  readonly count: number;
}

/**
 * A piece cut from a unit, in the unit's own frame: its lower left corner at nought, its length along x, face up. Metres
 * and square metres; arcs are arcs. The outline runs anticlockwise, holes clockwise; the area is without the holes.
 */
export interface Piece {
  readonly outline: Loop;
  readonly holes: readonly Loop[];
  readonly area: number;
}

/** One unit that is cut where it lies, and the pieces of it that are laid: mostly one. */
export interface CutUnit {
  /** Key of the unit. */
  readonly unit: string;
  readonly at: Placement;
  readonly pieces: readonly Piece[];
}

/** What laying one region takes. */
export interface LaidUnits {
  readonly wholes: readonly WholeRun[];
  readonly cuts: readonly CutUnit[];
  /** Square metres of the region that units cover: whole ones, pieces, and shavings too narrow to be laid. */
  readonly unitArea: number;
  /** Square metres of joints, clipped on their own: never what the units leave. */
  readonly jointArea: number;
  /** Metres of joint, along the middle; absent where the bond has no courses. */
  readonly jointLength?: number;
  /** Units the clip was really run on: a counter of work that grows with the border, not with the area. */
  readonly clipped: number;
}

/** A region of more units than are laid one by one, and about how many. */
export interface TooManyUnits {
  readonly tooMany: number;
}

/** What laying several regions takes, as one. */
export function together(all: readonly LaidUnits[]): LaidUnits {
  const sum = (of: (one: LaidUnits) => number): number => all.reduce((total, one) => total + of(one), 0);
  const lengths = all.flatMap(({ jointLength }) => jointLength ?? []);
  return {
    wholes: all.flatMap(({ wholes }) => wholes),
    cuts: all.flatMap(({ cuts }) => cuts),
    unitArea: sum(one => one.unitArea),
    jointArea: sum(one => one.jointArea),
    ...(lengths.length < all.length ? {} : { jointLength: lengths.reduce((total, length) => total + length, 0) }),
    clipped: sum(one => one.clipped)
  };
}
