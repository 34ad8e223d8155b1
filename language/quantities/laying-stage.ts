import type { Area, Key } from '../job/job.ts';
import type { AreaToLay } from '../laying/area-to-lay.ts';
import { unitOutline } from '../laying/cut-list/unit-shape.ts';
import type { UnitCuts } from './cuts-stage.ts';
import type { UnitsForCuts } from './nesting-stage.ts';
import type { CourseRun } from '../laying/borders/border.ts';
import type { LaidField } from '../laying/lay-field.ts';
import { type AreaNotLaid, layArea, type LaidArea, type LaidPart } from '../laying/lay-area.ts';

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
  /** Rows of borders and bands, by part. */
  readonly rows: readonly { readonly part: string; readonly runs: readonly CourseRun[] }[];
  readonly clipped: number;
  readonly running?: Running;
  /** The widest joint of each part that comes of bond, curves and sizes, and the most that it may be, m. */
  readonly widestJoints: readonly WidestJoint[];
  /** The largest disc that rings leave open about their centre, m and m2. */
  readonly openDisc?: { readonly radius: number; readonly area: number };
}

export interface WidestJoint {
  readonly part: string;
  readonly widest: number;
  readonly most: number;
}

/** What the running sizes of the field are counted from, m and radians. */
export interface Running {
  readonly pitch: NonNullable<LaidField['pitch']>;
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
  readonly cuts?: UnitCuts;
  readonly nested?: Pick<UnitsForCuts, 'used' | 'lowerBound' | 'proven'>;
}

/** Joints of one part, as deep as its units are thick, and the ground that units and joints take up together, m2. */
export interface JointTotals {
  readonly part: string;
  readonly unit: Key;
  readonly area: number;
  readonly ground: number;
}

/** What is laid together with how it is cut, and what the pieces take where that is known. */
export function withCuts(
  totals: LaidTotals,
  cuts: readonly UnitCuts[],
  nested: readonly UnitsForCuts[] | undefined
): LaidTotals {
  const units = totals.units.map(total => {
    const ofUnit = cuts.find(({ unit }) => unit === total.unit);
    const found = nested?.find(({ unit }) => unit === total.unit);
    return {
      ...total,
      ...(ofUnit === undefined ? {} : { cuts: ofUnit }),
      ...(found === undefined
        ? {}
        : { nested: { used: found.used, lowerBound: found.lowerBound, proven: found.proven } })
    };
  });
  return { ...totals, units };
}

/** All parts of an area laid, in steps. */
export function* layingStage(inputs: AreaToLay): Generator<void, Laid | AreaNotLaid> {
  const area = yield* layArea(inputs);
  return 'parts' in area ? { area, totals: totalsOf(area, inputs) } : area;
}

/** m2 of each kind of unit, seen from above. */
function unitAreas({ field, insets, borders, bands }: AreaToLay): ReadonlyMap<Key, number> {
  const laid = [field, ...insets.map(inset => inset.field)].flatMap(({ bond, units }) =>
    units.map(({ key, length, width }): [Key, number] => [
      key,
      unitOutline({ shape: bond.way === 'hexagons' ? 'hexagon' : 'rectangle', length, width }).area
    ])
  );
  const edging = [...borders, ...bands].map(({ unit }): [Key, number] => [unit.key, unit.length * unit.width]);
  return new Map([...edging, ...laid]);
}

/** Between the courses and the side that they begin at, radians. */
function turnOf({ outline, field: { start } }: AreaToLay, { direction }: { readonly direction: number }): number {
  const side = outline[start.along ?? start.whole[0] ?? outline.findIndex(({ arc }) => arc === undefined)];
  return side === undefined ? 0 : direction - Math.atan2(side.to.y - side.from.y, side.to.x - side.from.x);
}

function totalsOf({ parts }: LaidArea, inputs: AreaToLay): LaidTotals {
  const sizes = unitAreas(inputs);
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
  const field = parts.find(({ part }) => part === 'field')?.how;
  const lengths = parts.map(({ laid }) => laid.jointLength);
  const [open] = parts.flatMap(({ how }) => how?.open ?? []).sort((one, other) => other.radius - one.radius);
  return {
    units: [...units].map(([unit, total]) => ({ unit, ...total })),
    joints: parts.map(jointsIn),
    rows: parts.flatMap(({ part, runs }) => (runs === undefined ? [] : [{ part, runs }])),
    widestJoints: parts.map(part => ({ part: part.part, widest: widestJointIn(part), most: mostIn(part, inputs) })),
    ...(open === undefined ? {} : { openDisc: open }),
    ...(lengths.includes(undefined) ? {} : { jointLength: lengths.reduce<number>((sum, length) => sum + length!, 0) }),
    clipped: parts.reduce((sum, { laid }) => sum + laid.clipped, 0),
    ...(field?.pitch === undefined
      ? {}
      : {
          running: { pitch: field.pitch, joint: field.joint, extent: field.extent, turn: turnOf(inputs, field.frame) }
        })
  };
}

function widestJointIn({ how, runs }: LaidPart): number {
  const inRuns = (runs ?? []).map(({ joint, opening }) => Math.max(joint, opening?.widest ?? 0));
  return Math.max(how?.widestJoint ?? 0, ...inRuns);
}

function mostIn({ part }: LaidPart, { field, insets, borders, bands }: AreaToLay): number {
  const own = [...insets.map(({ key, field: { joint } }) => ({ key, joint })), ...borders, ...bands];
  return (own.find(({ key }) => key === part) ?? field).joint.most;
}

function jointsIn({ part, units, laid }: LaidPart): JointTotals {
  return { part, unit: units[0]!, area: laid.jointArea, ground: laid.unitArea + laid.jointArea };
}

/** What a part is called where its bond stands: the name of its bond, or of its course. */
export function bondOfPart(area: Pick<Area, 'paving' | 'insets' | 'borders' | 'bands'>, part: string): string {
  const inset = area.insets.find(({ key }) => key === part);
  if (inset !== undefined) return inset.paving.bond.name;
  const course = [...area.borders, ...area.bands].find(({ key }) => key === part)?.course;
  return course ?? area.paving!.bond.name;
}
