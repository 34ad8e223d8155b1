import { type CourseFrame, type Loop, outOfFrame, type Region } from '../geometry/index.ts';
import type { FieldToLay } from './area-to-lay.ts';
import { type BondWay, bondWay, type LaidInBond, type NotLaid, type OpenDisc, stepsOf } from './bonds/bond-ways.ts';
import type { JointWidths } from './bonds/course-bond.ts';
import { boundsIn, fieldFrame, type StartSaid, type Steps, widthBetween } from './field-frame.ts';
import { type Fit, fitBetween, sameJoints } from './fitted-joints.ts';
import { type LaidUnits, together } from './laid.ts';

/** What is laid of one bond, and how it came to lie so. */
export interface LaidField {
  readonly frame: CourseFrame;
  readonly joint: JointWidths;
  /** The widest joint that comes of the bond, m. */
  readonly widestJoint: number;
  /** Joints that were adjusted, or would have to be, so that only whole units lie between two sides. */
  readonly fits: readonly SideFit[];
  /** From course to course and, where units follow each other alike, from unit to unit, m; absent where a bond has none. */
  readonly pitch?: { readonly along?: number; readonly across: number };
  /** How far the field reaches from its start, along the courses and across them, m. */
  readonly extent: { readonly along: number; readonly across: number };
  /** The disc about the centre of rings that is too tight for them. */
  readonly open?: OpenDisc;
  readonly laid: LaidUnits;
}

export interface SideFit extends Fit {
  /** The two sides of the outline, from nought. */
  readonly sides: readonly [number, number];
  readonly way: 'along' | 'across';
}

/** Where a field lies: the outline it belongs to, what borders take of each of its sides, and what is left. */
export interface Ground {
  readonly outline: Loop;
  readonly reach: readonly number[];
  /** Mostly one; bands part the ground. */
  readonly regions: readonly Region[];
}

/** A bond in its frame, ready to be laid. */
export interface SetOut extends Omit<LaidField, 'laid' | 'open'>, BondWay {}

/** Sets out a bond: where its courses begin and run, and how wide its joints are. */
export function setOut(ground: Ground, field: FieldToLay, carriedOn: CourseFrame | undefined): SetOut {
  const start: StartSaid = { ...field.start, ...(carriedOn === undefined ? {} : { carriedOn }) };
  const framed = (joint: JointWidths): CourseFrame => {
    const steps = stepsOf(field, joint);
    return fieldFrame(ground.outline, ground.reach, ground.regions, start, steps, field.turned);
  };
  const asked = sameJoints(field.joint.width);
  const fits = field.bond.way === 'courses' ? sideFits(ground, field, start, framed(asked)) : [];
  const joint = adjusted(asked, fits);
  const courses = framed(joint);
  const frame =
    field.bond.way === 'rings'
      ? aboutCentre(courses, ground, start)
      : fromFirstUnit(courses, ground.regions, { steps: stepsOf(field, joint), offset: offsetOf(field), start });
  return { frame, joint, fits, extent: extentOf(ground.regions, frame), ...bondWay(field, frame, joint) };
}

/** How far the ground reaches from where the first unit lies. */
function extentOf(regions: readonly Region[], frame: CourseFrame): LaidField['extent'] {
  const { right, top } = boundsIn(frame, regions);
  return { along: right, across: top };
}

/** Share of a unit by which the courses of a bond move on; random courses have no lattice to move along. */
function offsetOf({ bond }: FieldToLay): number | undefined {
  if (bond.way === 'courses') return bond.offset;
  if (bond.way === 'cell') return 0;
  return bond.way === 'hexagons' ? 1 / 2 : undefined;
}

/**
 * The same lattice told from a unit that lies on the ground: where joint lines, whole units or equal cuts have put the
 * frame's nought beyond it, or into the middle of it, by whole units and courses back to where laying begins.
 */
function fromFirstUnit(
  frame: CourseFrame,
  regions: readonly Region[],
  {
    steps: { alongPitch, acrossPitch },
    offset,
    start
  }: { readonly steps: Steps; readonly offset: number | undefined; readonly start: StartSaid }
): CourseFrame {
  if (offset === undefined || !(alongPitch > 0 && acrossPitch > 0)) return frame;
  const { left, right, bottom, top } = boundsIn(frame, regions);
  if (!Number.isFinite(right - left + top - bottom)) return frame;
  const beyond = (low: number, high: number): boolean => low > ON_EDGE || high < -ON_EDGE;
  const course = beyond(bottom, top) ? Math.ceil((bottom - ON_EDGE) / acrossPitch) : 0;
  const moved = course * offset;
  const phase = (moved - Math.floor(moved)) * alongPitch;
  const unit = beyond(left, right) || start.equalCuts ? Math.ceil((left - ON_EDGE - phase) / alongPitch) : 0;
  if (course === 0 && unit === 0) return frame;
  return { ...frame, origin: outOfFrame(frame, { x: phase + unit * alongPitch, y: course * acrossPitch }) };
}

/** In metres: a unit this near to the edge begins at it. */
const ON_EDGE = 1e-6;

/**
 * Rings lie about the point that the start names, else about the middle of the ground as seen along its courses: turned
 * with all else, it has the same middle.
 */
function aboutCentre(frame: CourseFrame, { outline }: Ground, { from }: StartSaid): CourseFrame {
  const { left, right, bottom, top } = boundsIn(frame, [{ outer: outline, holes: [] }]);
  return { ...frame, origin: from ?? outOfFrame(frame, { x: (left + right) / 2, y: (bottom + top) / 2 }) };
}

/** Lays what is set out over its ground. */
export function* layField(ground: Ground, set: SetOut): Generator<void, LaidField | NotLaid> {
  const { lay, frame, joint, fits, pitch, extent } = set;
  const how = { frame, joint, fits, extent, ...(pitch === undefined ? {} : { pitch }) };
  const all: LaidInBond[] = [];
  for (const region of ground.regions) {
    const laid = yield* lay(region);
    if (!('wholes' in laid)) return laid;
    all.push(laid);
  }
  const discs = all.flatMap(({ open }) => open ?? []);
  const open = discs[0] && { ...discs[0], area: discs.reduce((sum, { area }) => sum + area, 0) };
  // Limits so tight that no ring is as small as the ground: all of it would stay open.
  if (open !== undefined && all.every(({ unitArea }) => unitArea === 0))
    return { noRingWithin: set.widestJoint, least: open.radius };
  const widestJoint = Math.max(set.widestJoint, ...all.flatMap(({ wide }) => wide ?? []).map(({ opening }) => opening));
  return { ...how, widestJoint, ...(open === undefined || open.area === 0 ? {} : { open }), laid: together(all) };
}

/** Sides that whole units lie along, opposite each other, and the joints with which they come out even. */
function sideFits(
  { outline, reach }: Ground,
  { units, joint }: FieldToLay,
  { whole }: StartSaid,
  frame: CourseFrame
): SideFit[] {
  const [unit] = units;
  if (unit === undefined) return [];
  return whole.flatMap((one, index) =>
    whole.slice(index + 1).flatMap((other): SideFit[] => {
      const between = widthBetween(outline, reach, [one, other], frame);
      if (between === undefined) return [];
      const { way, width } = between;
      const size = way === 'along' ? unit.length : unit.width;
      return [{ ...fitBetween(width, size, joint), sides: [one, other], way }];
    })
  );
}

function adjusted(joint: JointWidths, fits: readonly SideFit[]): JointWidths {
  const fit = (way: SideFit['way']): number => fits.find(one => one.way === way && one.fits)?.joint ?? joint[way];
  return { along: fit('along'), across: fit('across') };
}
