import { type Convex, convexShape } from '../../geometry/convex.ts';
import type { Point } from '../../geometry/index.ts';
import type { ShiftedRows } from './hexagon-lattice.ts';

/** A hexagon by its size, and the joint round it. Metres. */
export interface HexagonSize {
  /** From corner to opposite corner: the unit's length. */
  readonly acrossCorners: number;
  /** From side to opposite side: the unit's width. */
  readonly acrossFlats: number;
  readonly joint: number;
}

/** A shape of the pattern in the box of its lattice. */
export interface PatternShape {
  readonly shape: Convex;
  readonly rows: ShiftedRows;
}

/** From one unit to the next in its course, and from a course to the next, in metres. */
export function pitchesOf({ acrossCorners, acrossFlats, joint }: HexagonSize): { along: number; across: number } {
  const slant = Math.hypot(acrossFlats / 2, acrossCorners / 4);
  // Square to a slanting side the next unit stands a joint away: solved for its rise. Regular: joint × √3/2.
  const rise = (2 * slant) / acrossFlats - acrossCorners / acrossFlats / 4;
  return { along: acrossFlats + joint, across: (3 / 4) * acrossCorners + joint * rise };
}

/**
 * The unit in its own frame, its corners left and right, and where it lies in courses along which the units touch with
 * their flat sides, corners up and down.
 */
export function hexagonOf(size: HexagonSize): PatternShape {
  const { acrossCorners: long, acrossFlats: wide } = size;
  const shape = convexShape([
    { x: long / 4, y: 0 },
    { x: (3 * long) / 4, y: 0 },
    { x: long, y: wide / 2 },
    { x: (3 * long) / 4, y: wide },
    { x: long / 4, y: wide },
    { x: 0, y: wide / 2 }
  ]);
  return { shape, rows: { x: 0, y: 0, height: long, ...pitchesOf(size) } };
}

/**
 * The joints that go with each unit, as seen along the courses: beside it, up to its right and up to its left, and the
 * corners where three joints meet, above it and to the upper right. None without a joint.
 */
export function jointShapesOf(size: HexagonSize): PatternShape[] {
  const { acrossCorners: long, acrossFlats: wide, joint } = size;
  if (joint === 0) return [];
  const pitches = pitchesOf(size);
  const { along, across } = pitches;
  // Corners of the unit, of the one beside it, and of the two above it.
  const lowRight = { x: wide, y: long / 4 };
  const highRight = { x: wide, y: (3 * long) / 4 };
  const top = { x: wide / 2, y: long };
  const highLeft = { x: 0, y: (3 * long) / 4 };
  const beside = (y: number): Point => ({ x: along, y });
  const right = { foot: { x: along / 2 + wide / 2, y: across }, left: { x: along / 2, y: across + long / 4 } };
  const left = {
    foot: { x: wide / 2 - along / 2, y: across },
    right: { x: wide - along / 2, y: across + long / 4 }
  };
  return [
    [lowRight, beside(lowRight.y), beside(highRight.y), highRight],
    [highRight, right.foot, right.left, top],
    [top, left.right, left.foot, highLeft],
    [top, right.left, left.right],
    [highRight, beside(highRight.y), right.foot]
  ].map(corners => {
    const x = Math.min(...corners.map(corner => corner.x));
    const y = Math.min(...corners.map(corner => corner.y));
    const height = Math.max(...corners.map(corner => corner.y)) - y;
    const shape = convexShape(corners.map(corner => ({ x: corner.x - x, y: corner.y - y })));
    return { shape, rows: { x, y, height, ...pitches } };
  });
}
