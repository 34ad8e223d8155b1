import type { CourseFrame } from '../../geometry/index.ts';
import type { BondPattern } from './pattern.ts';

/** Widths of the joints along and across the courses, m: cross joints and course joints. */
export interface JointWidths {
  readonly along: number;
  readonly across: number;
}

/** A unit as it lies in its course, m. */
interface CourseUnit {
  readonly key: string;
  readonly length: number;
  readonly width: number;
}

/** Stack and running bond: courses of one unit, each moved on by the same share of a unit and its joint. */
export function courseBond(frame: CourseFrame, unit: CourseUnit, joint: JointWidths, offset: number): BondPattern {
  const { key, length, width } = unit;
  const pitches = { alongPitch: length + joint.along, acrossPitch: width + joint.across };
  return {
    frame,
    units: [{ unit: key, standing: false, x: 0, y: 0, length, width, ...pitches, offset }],
    joints: 'between'
  };
}
