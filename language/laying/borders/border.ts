import type { Point, Region } from '../../geometry/index.ts';
import type { LaidUnits } from '../laid.ts';

/** Width of a joint in metres: what it may be adjusted between, and what it is when nothing asks otherwise. */
export interface JointLimits {
  readonly least: number;
  readonly usual: number;
  readonly most: number;
}

/** Units in a row: which, and how each lies. */
export interface CourseOfUnits {
  /** Size in metres, as seen from above. */
  readonly unit: { readonly key: string; readonly length: number; readonly width: number };
  /** Soldier: its length square to the edge. Sailor: its length along the edge. */
  readonly lies: 'soldier' | 'sailor';
  readonly joint: JointLimits;
}

/** One course of a border. */
export interface BorderCourse extends CourseOfUnits {
  /** Whether it runs along each side of the outline in turn, or all round a kept-out hole, by its place in the list. */
  readonly along: readonly boolean[] | { readonly hole: number };
  /**
   * Mitred: both courses end on the line that halves the corner, a joint apart. Butted: the course of the longer side
   * runs through to the outer face, the other ends against it; corners that turn by less than 30 degrees are mitred.
   */
  readonly corners: 'mitred' | 'butted';
}

/** A course across the paving. */
export interface BandCourse extends CourseOfUnits {
  /** The straight line along its middle, from side to side. */
  readonly from: Point;
  readonly to: Point;
}

/** Units in a row along one side, one hole or one piece of a band, and the joint they came to. */
export interface CourseRun {
  /** Sides of the outline, or of the hole, along which it runs without a break; none for a band. */
  readonly sides: readonly number[];
  readonly hole?: number;
  /** Of a straight row: metres from end to end. */
  readonly length?: number;
  /** Units in it, whole and cut, as if nothing were kept out. */
  readonly units: number;
  /** Metres between units: on a curve where they are nearest. */
  readonly joint: number;
  /** Whether whole units fit with a joint within its limits; otherwise the joint is the usual one and both ends are cut. */
  readonly fits: boolean;
  /** On a curve: metres between units where they are furthest apart, and whether that is more than the joint may be. */
  readonly opening?: { readonly widest: number; readonly tooWide: boolean };
}

/** What one course takes. Its joints are those between its units, at its corners, and between it and what lies inside. */
export interface LaidCourse {
  readonly laid: LaidUnits;
  readonly runs: readonly CourseRun[];
}

/** Borders and bands laid, each list in the order asked for, and what they leave for the field. */
export interface LaidBorders {
  readonly borders: readonly LaidCourse[];
  readonly bands: readonly LaidCourse[];
  readonly field: readonly Region[];
}

/**
 * Why a border can't be laid: too narrow, where courses meet each other or a side has no room between its neighbours;
 * too tight, where a curve's radius is less than the units need; too sharp, where a corner leads far round; not a size,
 * where units or joints are none.
 */
export type FaultReason = 'too-narrow' | 'too-tight' | 'too-sharp' | 'not-a-size';

export interface BorderFault {
  readonly fault: FaultReason;
  /** Place of the course in its list. */
  readonly course: number;
  readonly of: 'borders' | 'bands';
  /** Side of the outline or of the hole where it is found. */
  readonly side?: number;
  readonly hole?: number;
}

/** Size of a unit along the edge and square to it, in metres. */
export function sizeOf({ unit, lies }: CourseOfUnits): { along: number; across: number } {
  return lies === 'sailor' ? { along: unit.length, across: unit.width } : { along: unit.width, across: unit.length };
}
