import {
  type Bounds,
  cutToColumns,
  cutToRows,
  CUTTING_TOLERANCE,
  inFrame,
  isNoWiderThan,
  MOST_UNITS,
  type Path,
  pathOf,
  pathsArea,
  perimeterOf,
  piecesOf,
  type Region,
  regionArea
} from '../geometry/index.ts';
import type { CutUnit, LaidUnits, TooManyUnits, WholeRun } from './laid.ts';
import { type Lattice, overLattice } from './lattice.ts';
import type { BondPattern, UnitLattice } from './pattern.ts';
import { pieceIn, placedUnit, stepAlong } from './placement.ts';

/** In metres and square metres: rounding that must not turn a miss of just the tolerance into more than it. */
const ROUNDING = 1e-9;

/** About how many units of a pattern meet a region: the mean over all places and turns. */
export function unitsAbout(region: Region, { units }: Pick<BondPattern, 'units'>): number {
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
  if (!isLayable(pattern) || !Number.isFinite(about))
    return { wholes: [], cuts: [], unitArea: 0, jointArea: 0, clipped: 0 };
  if (about > MOST_UNITS) return { tooMany: about };
  const paths = inFrame(region, pattern.frame).map(pathOf);
  const wholes: WholeRun[] = [];
  const cuts: CutUnit[] = [];
  let clipped = 0;
  let unitArea = 0;
  let jointArea = 0;
  const jointBetween = (area: number): void => {
    jointArea += area;
  };
  for (const lattice of pattern.units) {
    const size = lattice.length * lattice.width;
    const step = stepAlong(pattern.frame, lattice.alongPitch);
    const boxAt = (x: number, y: number): Bounds => ({
      left: x,
      right: x + lattice.length,
      bottom: y,
      top: y + lattice.width
    });
    const run = (x: number, y: number, count: number): void => {
      wholes.push({ unit: lattice.unit, first: placedUnit(pattern.frame, lattice, boxAt(x, y)), step, count });
    };
    yield* overLattice(paths, lattice, {
      full: (x, y, count) => {
        unitArea += count * size;
        run(x, y, count);
      },
      partial: (x, y, inUnit) => {
        clipped++;
        const area = pathsArea(inUnit);
        if (area <= ROUNDING * size) return;
        unitArea += area;
        if (isWhole(inUnit, area, lattice, x, y, tolerance)) {
          run(x, y, 1);
          return;
        }
        const box = boxAt(x, y);
        const pieces = piecesOf(inUnit, box).filter(
          piece => !isNoWiderThan(piece.rim, piece.area, tolerance + ROUNDING)
        );
        if (pieces.length === 0) return;
        const at = placedUnit(pattern.frame, lattice, box);
        cuts.push({ unit: lattice.unit, at, pieces: pieces.map(piece => pieceIn(pattern.frame, lattice, box, piece)) });
      },
      ...(pattern.joints === 'between' ? { between: jointBetween } : {})
    });
  }
  if (pattern.joints === 'between') return { wholes, cuts, unitArea, jointArea, clipped };
  let jointLength = 0;
  for (const joint of pattern.joints) {
    const area = yield* areaIn(paths, joint);
    jointArea += area;
    jointLength += area / Math.min(joint.length, joint.width);
  }
  return { wholes, cuts, unitArea, jointArea, jointLength, clipped };
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

/** Whether what lies in a unit misses it by no more than the tolerance along its sides. */
function isWhole(
  paths: readonly Path[],
  area: number,
  { length, width }: UnitLattice,
  left: number,
  bottom: number,
  tolerance: number
): boolean {
  const missing = length * width - area;
  if (missing <= ROUNDING * length * width) return true;
  if (missing > tolerance * 2 * (length + width) + ROUNDING) return false;
  // Not more than a quarter, so that there is always something left of a small unit to look at.
  const margin = Math.min(tolerance + ROUNDING, length / 4, width / 4);
  const columns = cutToColumns(paths, left + margin, left + length - margin);
  const core = cutToRows(columns, bottom + margin, bottom + width - margin);
  const coreArea = (length - 2 * margin) * (width - 2 * margin);
  return coreArea - pathsArea(core) <= ROUNDING * coreArea;
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
