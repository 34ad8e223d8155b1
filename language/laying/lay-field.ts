import { type Frame, jointLength, type Loop, type Region } from '../geometry/index.ts';
import type { FieldToLay } from './area-to-lay.ts';
import { cellBond } from './cell-bond.ts';
import { courseBond, type JointWidths } from './course-bond.ts';
import { fieldFrame, type StartSaid, type Steps, widthBetween } from './field-frame.ts';
import { type Fit, fitBetween, sameJoints } from './fitted-joints.ts';
import { withInboardCuts } from './inboard-cuts.ts';
import type { LaidUnits, TooManyUnits } from './laid.ts';
import { layPattern } from './lay-pattern.ts';
import type { BondPattern } from './pattern.ts';

/** What is laid of one bond, and how it came to lie so. */
export interface LaidField {
  readonly frame: Frame;
  readonly joint: JointWidths;
  /** The widest joint that comes of the bond, m. */
  readonly widestJoint: number;
  /** Joints that were adjusted, or would have to be, so that only whole units lie between two sides. */
  readonly fits: readonly SideFit[];
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
  readonly region: Region;
}

/** A bond in its frame, ready to be laid. */
export interface SetOut extends Omit<LaidField, 'laid'> {
  readonly pattern: BondPattern;
  /** Shortest piece that a course may end in, m; nought: as it comes. */
  readonly inboardCuts: number;
}

/** Sets out a bond: where its courses begin and run, and how wide its joints are. */
export function setOut(ground: Ground, field: FieldToLay, carriedOn: Frame | undefined): SetOut {
  const start: StartSaid = { ...field.start, ...(carriedOn === undefined ? {} : { carriedOn }) };
  const turn = field.turned;
  const framed = (joint: JointWidths): Frame =>
    fieldFrame(ground.outline, ground.reach, ground.region, start, stepsOf(field, joint), turn);
  const asked = sameJoints(field.joint.width);
  const fits = field.bond.way === 'courses' ? sideFits(ground, field, start, framed(asked)) : [];
  const joint = adjusted(asked, fits);
  const frame = framed(joint);
  const { pattern, widestJoint } = patternOf(field, frame, joint);
  const inboardCuts = field.bond.way === 'courses' ? (field.inboardCuts ?? 0) : 0;
  return { frame, joint, fits, widestJoint, pattern, inboardCuts };
}

/** Lays what is set out over its ground. */
export function* layField(
  ground: Ground,
  { pattern, inboardCuts, ...how }: SetOut
): Generator<void, LaidField | TooManyUnits> {
  const plain = yield* layPattern(ground.region, pattern);
  if ('tooMany' in plain) return plain;
  const laid = inboardCuts > 0 ? yield* withInboardCuts(ground.region, pattern, plain, inboardCuts) : plain;
  const length = laid.jointLength ?? courseJoints(ground.region, pattern, how.joint);
  // Where a joint was moved it may have become longer or shorter.
  const moved = how.joint.along > 0 ? (laid.jointArea - plain.jointArea) / how.joint.along : 0;
  return { ...how, laid: { ...laid, ...(length === undefined ? {} : { jointLength: length + moved }) } };
}

function courseJoints(region: Region, { frame, units }: BondPattern, { across }: JointWidths): number | undefined {
  const [unit] = units;
  if (unit === undefined) return undefined;
  const { alongPitch, width, offset } = unit;
  return jointLength(region, { ...frame, length: alongPitch - across, width, joint: across, offset });
}

function patternOf(
  { bond, units, joint: { width } }: FieldToLay,
  frame: Frame,
  joint: JointWidths
): { readonly pattern: BondPattern; readonly widestJoint: number } {
  if (bond.way === 'courses')
    return {
      pattern: courseBond(frame, units[0]!, joint, bond.offset),
      widestJoint: Math.max(joint.along, joint.across)
    };
  if (bond.way === 'cell') {
    const laid = cellBond(frame, bond.cell, units, width);
    if (!('sizes' in laid)) return laid;
  }
  return { pattern: { frame, units: [], joints: 'between' }, widestJoint: width };
}

function stepsOf({ bond, units, joint: { width } }: FieldToLay, joint: JointWidths): Steps {
  const [unit] = units;
  if (bond.way === 'cell') {
    const laid = cellBond(NO_FRAME, bond.cell, units, width);
    if (!('sizes' in laid)) {
      const alongPitch = bond.cell.columns * laid.module.along;
      const acrossPitch = bond.cell.rows * laid.module.across;
      return { alongPitch, acrossPitch, length: alongPitch - width, width: acrossPitch - width };
    }
  }
  const size = { length: unit?.length ?? 0, width: unit?.width ?? 0 };
  return { ...size, alongPitch: size.length + joint.along, acrossPitch: size.width + joint.across };
}

const NO_FRAME: Frame = { origin: { x: 0, y: 0 }, direction: 0, mirrored: false };

/** Sides that whole units lie along, opposite each other, and the joints with which they come out even. */
function sideFits(
  { outline, reach }: Ground,
  { units, joint }: FieldToLay,
  { whole }: StartSaid,
  frame: Frame
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
