import { layUnits, type LaidUnits, type Region, type UnitGrid } from '../../language/geometry/index.ts';

/** Lays a grid to the end. */
export function laid(region: Region, grid: UnitGrid): LaidUnits {
  const laying = layUnits(region, grid);
  for (let step = laying.next(); ; step = laying.next()) {
    if (!step.done) continue;
    if ('tooMany' in step.value) throw new Error(`about ${step.value.tooMany} units`);
    return step.value;
  }
}
