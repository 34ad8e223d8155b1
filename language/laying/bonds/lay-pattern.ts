import {
  boxShape,
  CUTTING_TOLERANCE,
  inFrame,
  MOST_UNITS,
  type Path,
  pathOf,
  pathsArea,
  perimeterOf,
  type Region,
  regionArea
} from '../../geometry/index.ts';
import type { LaidUnits, TooManyUnits } from '../laid.ts';
import { type Lattice, overLattice } from './lattice.ts';
import type { OwnFrame } from './own-frame.ts';
import type { BondPattern, UnitLattice } from './pattern.ts';
import { gathering, NOTHING_LAID, type UnitKind } from './unit-cut.ts';

/** About how many units of a pattern meet a region: the mean over all places and turns. */
function unitsAbout(region: Region, { units }: Pick<BondPattern, 'units'>): number {
  const area = regionArea(region);
  const border = [region.outer, ...region.holes].reduce((sum, loop) => sum + perimeterOf(loop), 0);
  const each = units.map(
    ({ length, width, alongPitch, acrossPitch }) =>
      (area + (border * (length + width)) / Math.PI) / (alongPitch * acrossPitch)
  );
  return Math.ceil(each.reduce((sum, count) => sum + count, 1));
}

/**
 * Lays a pattern over a region: whole units in runs, cut ones with the shapes of their pieces, joints clipped on their
 * own. Yields after each course, so that a caller can abandon it. The tolerance is in metres. A pattern or region that
 * holds no area, or no numbers, takes no units.
 */
export function* layPattern(
  region: Region,
  pattern: BondPattern,
  tolerance = CUTTING_TOLERANCE
): Generator<void, LaidUnits | TooManyUnits> {
  const about = unitsAbout(region, pattern);
  if (!isLayable(pattern) || !Number.isFinite(about)) return NOTHING_LAID;
  if (about > MOST_UNITS) return { tooMany: about };
  const paths = inFrame(region, pattern.frame).map(pathOf);
  const laid = gathering(pattern.frame, tolerance);
  for (const lattice of pattern.units) {
    const kind = kindOf(lattice);
    const own = (x: number, y: number): OwnFrame => ownFrame(lattice, pattern.frame.mirrored, x, y);
    const row = (count: number) => ({ count, stepX: lattice.alongPitch, stepY: 0 });
    yield* overLattice(paths, lattice, {
      full: (x, y, count) => laid.wholes(kind, own(x, y), row(count)),
      partial: (x, y, inUnit) => laid.clipped(kind, own(x, y), inUnit),
      ...(pattern.joints === 'between' ? { between: laid.joints } : {})
    });
  }
  if (pattern.joints === 'between') return laid.laid();
  let jointLength = 0;
  for (const joint of pattern.joints) {
    const area = yield* areaIn(paths, joint);
    laid.joints(area);
    jointLength += area / Math.min(joint.length, joint.width);
  }
  return { ...laid.laid(), jointLength };
}

function kindOf({ unit, length, width, standing }: UnitLattice): UnitKind {
  const [right, top] = standing ? [width, length] : [length, width];
  return { unit, shape: boxShape({ left: 0, right, bottom: 0, top }) };
}

/**
 * The own frame of the unit whose rectangle has its lower left corner here. It is never mirrored on the plan, so where
 * the courses are it begins at another corner.
 */
export function ownFrame({ length, width, standing }: UnitLattice, mirrored: boolean, x: number, y: number): OwnFrame {
  if (standing) return { x: mirrored ? x : x + length, y, ux: 0, uy: 1, mirrored };
  return { x, y: mirrored ? y + width : y, ux: 1, uy: 0, mirrored };
}

/** Square metres of what lies in the rectangles of a lattice. */
function* areaIn(paths: readonly Path[], lattice: Lattice): Generator<void, number> {
  let area = 0;
  yield* overLattice(paths, lattice, {
    full: (_x, _y, count) => {
      area += count * lattice.length * lattice.width;
    },
    partial: (_x, _y, inside) => {
      area += pathsArea(inside);
    }
  });
  return area;
}

/** Whether a pattern can be laid at all: lengths above nought, no joint below nought, and everything a number. */
function isLayable({ frame, units }: BondPattern): boolean {
  return (
    [frame.origin.x, frame.origin.y, frame.direction].every(Number.isFinite) &&
    units.length > 0 &&
    units.every(
      ({ x, y, length, width, alongPitch, acrossPitch, offset }) =>
        [x, y, offset, length, width].every(Number.isFinite) &&
        length > 0 &&
        width > 0 &&
        alongPitch >= length &&
        acrossPitch >= width
    )
  );
}
