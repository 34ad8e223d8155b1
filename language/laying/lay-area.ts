import { type CourseFrame, type Loop, type Region } from '../geometry/index.ts';
import type { AreaToLay, BandToLay, BorderToLay, FieldToLay, JointLimits } from './area-to-lay.ts';
import type { NotLaid } from './bonds/bond-ways.ts';
import type { BandCourse, BorderCourse, BorderFault, CourseRun } from './borders/border.ts';
import { layBorders } from './borders/borders.ts';
import { acrossFrom } from './field-frame.ts';
import type { LaidUnits } from './laid.ts';
import { reachOf } from './reach.ts';
import { type Ground, type LaidField, layField, setOut, type SetOut } from './lay-field.ts';

/** What is laid in one part of an area: `field`, an inset, a border or band by its key. */
export interface LaidPart {
  readonly part: string;
  /** Keys of the units it is laid with. */
  readonly units: readonly string[];
  readonly laid: LaidUnits;
  /** Of a field or an inset: how it came to lie so. */
  readonly how?: Omit<LaidField, 'laid'>;
  /** Of a border or band: its rows, side by side. */
  readonly runs?: readonly CourseRun[];
}

export interface LaidArea {
  readonly parts: readonly LaidPart[];
}

/** Why an area could not be laid, and in which part. */
export type AreaNotLaid = { readonly part: string } & (NotLaid | Pick<BorderFault, 'fault' | 'side'>);

/** Lays all of an area: borders and bands first, the field inside them, insets in their own way. */
export function* layArea(area: AreaToLay): Generator<void, LaidArea | AreaNotLaid> {
  const prepared = yield* setOutArea(area);
  if ('part' in prepared) return prepared;
  const { ground, edging } = prepared;
  const field = yield* layField(ground, prepared.setOut);
  if (!('laid' in field)) return { part: 'field', ...field };
  const parts = [partOf('field', area.field, field)];
  for (const inset of area.insets) {
    const within: Ground = { outline: inset.outline, reach: [], regions: [{ outer: inset.outline, holes: [] }] };
    const laid = yield* layField(within, setOut(within, inset.field, undefined));
    if (!('laid' in laid)) return { part: inset.key, ...laid };
    parts.push(partOf(inset.key, inset.field, laid));
  }
  return { parts: [...parts, ...edging] };
}

/** An area with its borders and bands laid and its field set out. */
export interface AreaSetOut extends Prepared {
  readonly setOut: SetOut;
}

/** Where the field of an area lies and how it is set out, before it is laid. */
export function* setOutArea(area: AreaToLay): Generator<void, AreaSetOut | AreaNotLaid> {
  const prepared = yield* prepare(area);
  if ('part' in prepared) return prepared;
  const frame = yield* carriedOn(area);
  return { ...prepared, setOut: setOut(prepared.ground, area.field, frame) };
}

function partOf(part: string, { units }: FieldToLay, { laid, ...how }: LaidField): LaidPart {
  return { part, units: units.map(({ key }) => key), laid, how };
}

/** The ground that borders, bands, boxes and insets leave, and the borders and bands that are laid. */
interface Prepared {
  readonly ground: Ground;
  readonly edging: readonly LaidPart[];
}

function* prepare(area: AreaToLay): Generator<void, Prepared | AreaNotLaid> {
  const { outline, borders, bands } = area;
  const shapes = [...area.keptOut, ...area.insets];
  const region: Region = { outer: outline, holes: shapes.map(shape => shape.outline) };
  const alone: Prepared = { ground: { outline, reach: [], regions: [region] }, edging: [] };
  if (borders.length === 0 && bands.length === 0) return alone;
  const courses = borders.map(border => courseOf(border, outline, shapes));
  const laid = yield* layBorders(
    region,
    courses,
    bands.map(band => bandOf(band, outline))
  );
  if ('tooMany' in laid) return { part: 'field', ...laid };
  if ('fault' in laid) {
    const part = (laid.of === 'borders' ? borders : bands)[laid.course]!.key;
    return { part, fault: laid.fault, ...(laid.side === undefined ? {} : { side: laid.side }) };
  }
  const edging = [...borders, ...bands].map(({ key, unit }, index): LaidPart => {
    const course = [...laid.borders, ...laid.bands][index]!;
    return { part: key, units: [unit.key], laid: course.laid, runs: course.runs };
  });
  return { ground: { outline, reach: reachOf(area), regions: laid.field }, edging };
}

function courseOf(border: BorderToLay, outline: Loop, shapes: readonly { readonly key: string }[]): BorderCourse {
  const { unit, soldier, joint, along, mitred } = border;
  return {
    unit,
    lies: soldier ? 'soldier' : 'sailor',
    joint: usually(joint),
    along:
      'sides' in along
        ? outline.map((_, side) => along.sides.includes(side))
        : { hole: shapes.findIndex(({ key }) => key === along.round) },
    corners: mitred ? 'mitred' : 'butted'
  };
}

function bandOf({ unit, soldier, joint, side, at }: BandToLay, outline: Loop): BandCourse {
  return { unit, lies: soldier ? 'soldier' : 'sailor', joint: usually(joint), ...acrossFrom(outline, side, at) };
}

function usually({ width, least, most }: JointLimits): { least: number; usual: number; most: number } {
  return { least, usual: width, most };
}

/** The frame of the field that an area's joint lines go on from. */
function* carriedOn({ field: { carriedOnFrom } }: AreaToLay): Generator<void, CourseFrame | undefined> {
  if (carriedOnFrom === undefined) return undefined;
  const prepared = yield* prepare(carriedOnFrom);
  if ('part' in prepared) return undefined;
  const before = yield* carriedOn(carriedOnFrom);
  const { frame } = setOut(prepared.ground, carriedOnFrom.field, before);
  // The bond that goes on brings its own turn.
  const turn = (frame.mirrored ? -1 : 1) * carriedOnFrom.field.turned;
  return { ...frame, direction: frame.direction - turn };
}
