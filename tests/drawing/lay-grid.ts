import { boundsOf, type Region, type UnitGrid } from '../../language/geometry/index.ts';
import { courseBond } from '../../language/laying/bonds/course-bond.ts';
import type { LaidUnits } from '../../language/laying/laid.ts';
import { layPattern } from '../../language/laying/bonds/lay-pattern.ts';
import { drain } from '../../language/paving.ts';

/** Units of one size in courses over a region, for drawings to show. */
export function layGrid(region: Region, grid: UnitGrid, unit: string): LaidUnits {
  const { length, width, joint, offset, ...frame } = grid;
  const bond = courseBond(frame, { key: unit, length, width }, { along: joint, across: joint }, offset);
  const laid = drain(layPattern(region, bond));
  if ('tooMany' in laid) throw new Error(`about ${laid.tooMany} units`);
  return laid;
}

/** Numbers as a cut list gives them: equal pieces, to a tenth of a millimetre, have equal numbers. */
export function numbersOf(laid: LaidUnits, known = new Map<string, number>()): number[] {
  return laid.cuts.map(({ unit, pieces }) => {
    const mm = (value: number): number => Math.round(value * 1e4) + 0;
    const shape = pieces.map(({ outline, area }) => {
      const { left, right, bottom, top } = boundsOf(outline);
      return [mm(right - left), mm(top - bottom), Math.round(area * 1e6)];
    });
    const key = JSON.stringify([unit, shape]);
    const number = known.get(key) ?? known.size + 1;
    known.set(key, number);
    return number;
  });
}
