import { jointLength, type Loop, layUnits, MOST_UNITS, type UnitGrid, unitsAbout } from '../geometry/index.ts';
import type { Area } from '../job/job.ts';

/** What the laying stage reads of an area: shapes and sizes only. */
export interface LayingInputs {
  readonly outline: Loop;
  readonly keptOut: readonly Loop[];
  readonly grid: UnitGrid;
}

/** Units laid, counted on the shape; areas m2, lengths m. */
export interface Laid {
  readonly whole: number;
  readonly cut: number;
  readonly clipped: number;
  readonly unitArea: number;
  readonly jointLength?: number;
}

/** Why no units were laid. */
export interface NotLaid {
  readonly tooMany: number;
}

/** Absent where the area has no paving. */
export function layingInputs(area: Area): LayingInputs | undefined {
  if (area.paving === undefined) return undefined;
  const { unit, bond, joint } = area.paving;
  const { x, y, direction, mirrored } = area.start;
  const grid = {
    origin: { x, y },
    direction,
    mirrored,
    length: unit.length.value,
    width: unit.width.value,
    joint: joint.value,
    offset: bond.offset.value
  };
  return { outline: area.outline, keptOut: area.keptOut.map(shape => shape.outline), grid };
}

/** Why the units could not be laid, without laying them. */
export function tooManyFor({ outline, keptOut, grid }: LayingInputs): NotLaid | undefined {
  const about = unitsAbout({ outer: outline, holes: keptOut }, grid);
  return Number.isFinite(about) && about > MOST_UNITS ? { tooMany: about } : undefined;
}

/** The unit grid cut to the outline and the kept-out shapes, in steps. */
export function* layingStage(inputs: LayingInputs): Generator<void, Laid | NotLaid> {
  const region = { outer: inputs.outline, holes: inputs.keptOut };
  const units = yield* layUnits(region, inputs.grid);
  if ('tooMany' in units) return { tooMany: units.tooMany };
  const { whole, cut, clipped, unitArea } = units;
  const joints = jointLength(region, inputs.grid);
  return { whole, cut, clipped, unitArea, ...(joints === undefined ? {} : { jointLength: joints }) };
}
