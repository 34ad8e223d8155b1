import type { Region, UnitGrid } from '../../language/geometry/index.ts';
import { courseBond } from '../../language/laying/bonds/course-bond.ts';
import type { LaidUnits } from '../../language/laying/laid.ts';
import { layPattern } from '../../language/laying/bonds/lay-pattern.ts';
import type { BondPattern } from '../../language/laying/bonds/pattern.ts';

/** What a grid of units comes to. */
interface Counted {
  readonly whole: number;
  readonly cut: number;
  readonly clipped: number;
  readonly unitArea: number;
  readonly jointArea: number;
  readonly smallestPieceArea?: number;
}

/** A grid of units as the bond that it is. */
export function patternOf({ length, width, joint, offset, ...frame }: UnitGrid): BondPattern {
  return courseBond(frame, { key: 'unit:block', length, width }, { along: joint, across: joint }, offset);
}

/** Lays a grid to the end and counts it. */
export function laid(region: Region, grid: UnitGrid): Counted {
  const laying = layPattern(region, patternOf(grid));
  for (let step = laying.next(); ; step = laying.next()) {
    if (!step.done) continue;
    if ('tooMany' in step.value) throw new Error(`about ${step.value.tooMany} units`);
    return counted(step.value);
  }
}

function counted({ wholes, cuts, clipped, unitArea, jointArea }: LaidUnits): Counted {
  const pieces = cuts.flatMap(cut => cut.pieces.map(piece => piece.area));
  return {
    whole: wholes.reduce((sum, run) => sum + run.count, 0),
    cut: cuts.length,
    clipped,
    unitArea,
    jointArea,
    ...(pieces.length === 0 ? {} : { smallestPieceArea: Math.min(...pieces) })
  };
}
