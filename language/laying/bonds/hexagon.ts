import { type CourseFrame, inFrame } from '../../geometry/grid-frame.ts';
import { CUTTING_TOLERANCE, MOST_UNITS, type Region, unitsAbout } from '../../geometry/index.ts';
import { pathOf, pathsArea } from '../../geometry/path-clip.ts';
import { shapesIn } from './hexagon-lattice.ts';
import { hexagonOf, type HexagonSize, jointShapesOf, pitchesOf } from './hexagon-shapes.ts';
import type { LaidUnits, TooManyUnits } from '../laid.ts';
import { inOwnFrame, type OwnFrame } from './own-frame.ts';
import { gathering, NOTHING_LAID } from './unit-cut.ts';

/**
 * Hexagons in courses: along a course the units stand flat side to flat side, each course half a unit on from the one
 * before, the joint the same all round. The first unit's box starts at the origin: a flat side on the left, a corner at
 * the bottom. Sizes in metres as measured, regular to their rounding.
 */
export interface Hexagons extends CourseFrame, HexagonSize {
  readonly unit: string;
}

/**
 * Lays hexagons over a region. Yields after each course, of units and then of each kind of joint; the tolerance is in
 * metres. A pattern or region that holds no area, or no numbers, takes no units.
 */
export function* layHexagons(
  region: Region,
  pattern: Hexagons,
  tolerance = CUTTING_TOLERANCE
): Generator<void, LaidUnits | TooManyUnits> {
  const { along, across } = pitchesOf(pattern);
  const about = unitsAbout(region, { ...pattern, length: along, width: across, joint: 0, offset: 0 });
  if (!isLayable(pattern) || !Number.isFinite(about)) return NOTHING_LAID;
  if (about > MOST_UNITS) return { tooMany: about };

  const paths = inFrame(region, pattern).map(pathOf);
  const laid = gathering(pattern, tolerance);
  const { shape, rows } = hexagonOf(pattern);
  const kind = { unit: pattern.unit, shape };
  yield* shapesIn(paths, rows, {
    full: (count, x, y) => laid.wholes(kind, ownFrame(pattern, x, y), { count, stepX: along, stepY: 0 }),
    partial: (x, y, inCell) => laid.clip(kind, ownFrame(pattern, x, y), inCell)
  });
  for (const joint of jointShapesOf(pattern)) {
    yield* shapesIn(paths, joint.rows, {
      full: count => laid.joints(count * joint.shape.area),
      partial: (x, y, inCell) => laid.joints(pathsArea(joint.shape.clip(inOwnFrame(inCell, boxFrame(x, y)))))
    });
  }
  return laid.laid();
}

/** The unit's length runs across the courses, its width along them. */
function ownFrame({ acrossFlats, mirrored }: Hexagons, x: number, y: number): OwnFrame {
  return { x: mirrored ? x : x + acrossFlats, y, ux: 0, uy: 1, mirrored };
}

function boxFrame(x: number, y: number): OwnFrame {
  return { x, y, ux: 1, uy: 0, mirrored: false };
}

function isLayable({ origin, direction, acrossCorners, acrossFlats, joint }: Hexagons): boolean {
  const numbers = [origin.x, origin.y, direction, acrossCorners, acrossFlats, joint];
  return numbers.every(Number.isFinite) && acrossCorners > 0 && acrossFlats > 0 && joint >= 0;
}
