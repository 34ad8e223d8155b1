import { type CourseFrame, jointLength, type Region } from '../../geometry/index.ts';
import type { FieldToLay } from '../area-to-lay.ts';
import { cellBond } from './cell-bond.ts';
import { courseBond, type JointWidths } from './course-bond.ts';
import type { Steps } from '../field-frame.ts';
import { pitchesOf } from './hexagon-shapes.ts';
import { layHexagons } from './hexagon.ts';
import { withInboardCuts } from './inboard-cuts.ts';
import type { LaidUnits, TooManyUnits } from '../laid.ts';
import { layPattern } from './lay-pattern.ts';
import type { BondPattern } from './pattern.ts';
import { layRandomCourses, type NoOrder } from './random-courses.ts';
import { type LaidRings, layRings, type NoRing } from './ring.ts';

/** The disc about the centre of rings that is too tight for them. */
export type OpenDisc = LaidRings['open'];

/** Why a bond could not be laid. */
export type NotLaid = TooManyUnits | NoOrder | NoRing;

/** Units laid, and of rings what they leave open and which open their joints too wide. */
export type LaidInBond = LaidUnits & Partial<Pick<LaidRings, 'open' | 'wide'>>;

/** How a bond is laid over a region. */
export interface BondWay {
  /** The widest joint that comes of the bond, m. */
  readonly widestJoint: number;
  /** From course to course and, where units follow each other alike, from unit to unit, m; absent where a bond has none. */
  readonly pitch?: { readonly along?: number; readonly across: number };
  /** Its lattices, where it is made of such. */
  readonly pattern?: BondPattern;
  readonly lay: (region: Region) => Generator<void, LaidInBond | NotLaid>;
}

/** Sets a bond up in its frame. */
export function bondWay(field: FieldToLay, frame: CourseFrame, joint: JointWidths): BondWay {
  const { bond, units } = field;
  const { width: asked, most } = field.joint;
  const [unit] = units;
  if (unit === undefined) return ofPattern({ frame, units: [], joints: 'between' }, asked);
  const { key, length, width } = unit;
  switch (bond.way) {
    case 'courses': {
      const pattern = courseBond(frame, unit, joint, bond.offset);
      const pitch = { along: length + joint.along, across: width + joint.across };
      const inboard = field.inboardCuts ?? 0;
      return { ...ofCourses(pattern, joint, inboard), pitch };
    }
    case 'cell': {
      const laid = cellBond(frame, bond.cell, units, asked);
      if ('sizes' in laid) return ofPattern({ frame, units: [], joints: 'between' }, asked);
      return { ...ofPattern(laid.pattern, laid.widestJoint), pitch: { across: laid.module.across } };
    }
    case 'random-courses': {
      const pattern = {
        ...frame,
        units: units.map(one => ({ unit: one.key, length: one.length })),
        width,
        joint: asked,
        seed: bond.seed,
        jointsApart: bond.jointsApart
      };
      return {
        widestJoint: asked,
        lay: region => layRandomCourses(region, pattern)
      };
    }
    case 'hexagons': {
      const size = { acrossCorners: length, acrossFlats: width, joint: asked };
      return {
        widestJoint: asked,
        lay: region => layHexagons(region, { ...frame, unit: key, ...size })
      };
    }
    case 'rings': {
      return {
        widestJoint: most,
        lay: region => layRings(region, { ...frame, unit: key, length, width, joint: asked, mostJoint: most })
      };
    }
  }
}

function ofPattern(pattern: BondPattern, widestJoint: number): BondWay {
  return { widestJoint, pattern, lay: region => layPattern(region, pattern) };
}

/** `inboard`: the shortest piece that a course may end in, m. */
function ofCourses(pattern: BondPattern, joint: JointWidths, inboard: number): BondWay {
  return {
    widestJoint: Math.max(joint.along, joint.across),
    pattern,
    lay: function* (region) {
      const plain = yield* layPattern(region, pattern);
      if ('tooMany' in plain) return plain;
      const laid = inboard > 0 ? yield* withInboardCuts(region, pattern, plain, inboard) : plain;
      const length = courseJoints(region, pattern, joint);
      // Where a joint was moved it may have become longer or shorter.
      const moved = joint.along > 0 ? (laid.jointArea - plain.jointArea) / joint.along : 0;
      return length === undefined ? laid : { ...laid, jointLength: length + moved };
    }
  };
}

function courseJoints(region: Region, { frame, units }: BondPattern, { across }: JointWidths): number | undefined {
  const [unit] = units;
  if (unit === undefined) return undefined;
  const { alongPitch, width, offset } = unit;
  return jointLength(region, { ...frame, length: alongPitch - across, width, joint: across, offset });
}

/** The sizes that a start goes by. Of a drawn cell it is the cell as a whole. */
export function stepsOf({ bond, units, joint: { width } }: FieldToLay, joint: JointWidths): Steps {
  const [unit] = units;
  if (bond.way === 'cell') {
    const laid = cellBond(NO_FRAME, bond.cell, units, width);
    if (!('sizes' in laid)) {
      const alongPitch = bond.cell.columns * laid.module.along;
      const acrossPitch = bond.cell.rows * laid.module.across;
      return { alongPitch, acrossPitch, length: alongPitch - width, width: acrossPitch - width };
    }
  }
  if (bond.way === 'hexagons' && unit !== undefined) {
    const { along, across } = pitchesOf({ acrossCorners: unit.length, acrossFlats: unit.width, joint: width });
    return { length: along - width, width: across - width, alongPitch: along, acrossPitch: across };
  }
  const size = { length: unit?.length ?? 0, width: unit?.width ?? 0 };
  return { ...size, alongPitch: size.length + joint.along, acrossPitch: size.width + joint.across };
}

const NO_FRAME: CourseFrame = { origin: { x: 0, y: 0 }, direction: 0, mirrored: false };
