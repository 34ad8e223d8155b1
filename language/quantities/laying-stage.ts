import { MOST_UNITS } from '../geometry/index.ts';
import type { Area, Key } from '../job/job.ts';
import type { AreaToLay } from '../laying/area-to-lay.ts';
import type { TooManyUnits } from '../laying/laid.ts';
import { layArea, type LaidArea, type LaidPart, unitsAboutIn } from '../laying/lay-area.ts';

/** Units laid, counted on the shape; areas m2, lengths m. */
export interface Laid {
  readonly area: LaidArea;
  readonly totals: LaidTotals;
}

/** What the layers stage reads of what is laid. */
export interface LaidTotals {
  /** Each kind of unit once, in the order in which the parts come. */
  readonly units: readonly UnitTotals[];
  readonly joints: readonly JointTotals[];
  readonly jointLength?: number;
  readonly clipped: number;
  readonly running?: Running;
}

/** What the running sizes of the field are counted from, m and radians. */
export interface Running {
  readonly pitch: { readonly along: number; readonly across: number };
  readonly joint: { readonly along: number; readonly across: number };
  readonly extent: { readonly along: number; readonly across: number };
  /** Between the courses and the side that they begin at. */
  readonly turn: number;
}

export interface UnitTotals {
  readonly unit: Key;
  readonly whole: number;
  readonly cut: number;
  readonly area: number;
  /** The parts that it is laid in. */
  readonly parts: readonly string[];
}

/** Joints of one part, as deep as its units are thick. */
export interface JointTotals {
  readonly part: string;
  readonly unit: Key;
  readonly area: number;
}

/** Why the units could not be laid, without laying them. */
export function tooManyFor(inputs: AreaToLay): TooManyUnits | undefined {
  const about = unitsAboutIn(inputs);
  return Number.isFinite(about) && about > MOST_UNITS ? { tooMany: about } : undefined;
}

/** All parts of an area laid, in steps. */
export function* layingStage(inputs: AreaToLay): Generator<void, Laid | TooManyUnits> {
  const area = yield* layArea(inputs);
  return 'tooMany' in area ? area : { area, totals: totalsOf(area, unitAreas(inputs), turnOf(inputs.field)) };
}

function unitAreas({ field, insets, borders, bands }: AreaToLay): ReadonlyMap<Key, number> {
  const all = [field, ...insets.map(inset => inset.field)].flatMap(({ units }) => units);
  const edging = [...borders, ...bands].map(({ unit }) => unit);
  return new Map([...all, ...edging].map(({ key, length, width }) => [key, length * width]));
}

function turnOf({ turned, start }: AreaToLay['field']): number {
  return turned + (start.turned ?? 0);
}

function totalsOf({ parts }: LaidArea, sizes: ReadonlyMap<Key, number>, turn: number): LaidTotals {
  const units = new Map<Key, { whole: number; cut: number; area: number; parts: string[] }>();
  const add = (unit: Key, part: string, whole: number, cut: number, area: number): void => {
    const total = units.get(unit) ?? { whole: 0, cut: 0, area: 0, parts: [] };
    units.set(unit, total);
    total.whole += whole;
    total.cut += cut;
    total.area += area;
    if (!total.parts.includes(part)) total.parts.push(part);
  };
  for (const { part, units: kinds, laid } of parts) {
    for (const unit of kinds) add(unit, part, 0, 0, 0);
    for (const { unit, count } of laid.wholes) add(unit, part, count, 0, count * sizes.get(unit)!);
    for (const { unit, pieces } of laid.cuts)
      add(
        unit,
        part,
        0,
        1,
        pieces.reduce((sum, piece) => sum + piece.area, 0)
      );
  }
  const field = parts.find(({ part }) => part === 'field');
  const lengths = parts.map(({ laid }) => laid.jointLength);
  return {
    units: [...units].map(([unit, total]) => ({ unit, ...total })),
    joints: parts.map(jointsIn),
    ...(lengths.includes(undefined) ? {} : { jointLength: lengths.reduce<number>((sum, length) => sum + length!, 0) }),
    clipped: parts.reduce((sum, { laid }) => sum + laid.clipped, 0),
    ...(field?.pitch === undefined
      ? {}
      : { running: { pitch: field.pitch, joint: field.joint, extent: field.extent, turn } })
  };
}

function jointsIn({ part, units, laid }: LaidPart): JointTotals {
  return { part, unit: units[0]!, area: laid.jointArea };
}

/** What a part is called where its bond stands: the name of its bond, or of its course. */
export function bondOfPart(area: Pick<Area, 'paving' | 'insets' | 'borders' | 'bands'>, part: string): string {
  const inset = area.insets.find(({ key }) => key === part);
  if (inset !== undefined) return inset.paving.bond.name;
  const course = [...area.borders, ...area.bands].find(({ key }) => key === part)?.course;
  return course ?? area.paving!.bond.name;
}
