import type { Point } from '../../geometry/index.ts';
import type { CornerName, SideName } from './unit-shape.ts';

/** A place on a side of the unit: so many metres along the side from one of its corners. */
export interface Mark {
  readonly side: SideName;
  readonly from: CornerName;
  readonly at: number;
}

/**
 * One cut as it is marked out on the whole unit lying face up, its length from left to right. Lengths in metres; `along`
 * counts from the left along the length, `across` from the near side.
 */
export type Marking =
  SquareCut | StripOff | SlantingCut | CornerCut | CornerNotch | SideNotch | Curve | Circle | Opening | SawPath;

/** A side of a rectangle. */
export type End = 'left' | 'right' | 'near' | 'far';

/** A straight cut square to the length (or the width): what is kept of it. */
export interface SquareCut {
  readonly kind: 'square-cut';
  readonly across: 'length' | 'width';
  readonly size: number;
  readonly keep: End;
}

/** The same of a unit cut square at both ends, or both sides: what comes off each. */
export interface StripOff {
  readonly kind: 'strip-off';
  readonly side: End;
  readonly size: number;
}

/** Which part of a unit is kept: that with a whole side or a corner of it, else told by the line itself. */
export type Keep =
  { readonly side: SideName } | { readonly corner: CornerName } | 'between the marks' | 'inside' | 'outside';

/** A straight cut from side to side. */
export interface SlantingCut {
  readonly kind: 'slanting-cut';
  readonly marks: readonly [Mark, Mark];
  readonly keep: Keep;
}

/** A straight cut across one corner, marked from there: the corner falls off, or nothing else is kept. */
export interface CornerCut {
  readonly kind: 'corner-cut';
  readonly corner: CornerName;
  readonly marks: readonly [Mark, Mark];
  readonly keep: 'corner' | 'rest';
}

/** A square notch out of a corner. */
export interface CornerNotch {
  readonly kind: 'corner-notch';
  readonly corner: CornerName;
  readonly along: number;
  readonly across: number;
}

/** A square notch in a side, `start` metres along it from one of its corners: the left one, or the near one. */
export interface SideNotch {
  readonly kind: 'side-notch';
  readonly side: SideName;
  readonly start: Mark;
  readonly width: number;
  readonly depth: number;
}

/**
 * An arc of at most a half turn from one side to another: the piece bows out beyond the chord, or in. Heights off the chord, for
 * a lath bent through them: evenly spread from the first mark, the middle one the bow.
 */
export interface Curve {
  readonly kind: 'curve';
  readonly marks: readonly [Mark, Mark];
  readonly radius: number;
  readonly bow: number;
  readonly bows: 'out' | 'in';
  readonly chord: number;
  readonly heights: readonly Height[];
  readonly keep: Keep;
}

/** A height off the chord of an arc, so far along the chord. */
export interface Height {
  readonly at: number;
  readonly height: number;
}

/** A round hole, or a round piece: its middle and diameter. */
export interface Circle {
  readonly kind: 'circle';
  readonly diameter: number;
  readonly along: number;
  readonly across: number;
  readonly keep: 'inside' | 'outside';
}

/** A rectangular hole, square to the unit: its near left corner and size. */
export interface Opening {
  readonly kind: 'opening';
  readonly along: number;
  readonly across: number;
  readonly length: number;
  readonly width: number;
}

/** Any other line, from corner to corner; `closed` when it ends where it starts. */
export interface SawPath {
  readonly kind: 'saw-path';
  readonly start: Offset;
  readonly legs: readonly Leg[];
  readonly closed: boolean;
  readonly keep: Keep;
}

export interface Offset {
  readonly along: number;
  readonly across: number;
}

/** To the next corner, straight or in an arc that bows away from the piece (out) or into it. */
export interface Leg extends Offset {
  readonly arc?: { readonly radius: number; readonly bow: number; readonly bows: 'out' | 'in' };
}

/** How a unit, or a piece of it, is cut: told by the hardest of its cuts. */
export type CutKind = 'straight' | 'several cuts' | 'notched' | 'curved' | 'with a hole';

/** The kinds from the easiest to the hardest. */
const BY_HARDNESS: readonly CutKind[] = ['straight', 'several cuts', 'notched', 'curved', 'with a hole'];

/** One cut, how it is made and marked. Straight: right through the unit, parting nothing that is laid. */
export interface Cut {
  readonly kind: CutKind;
  readonly marking: Marking;
  /** Corners of what a straight cut takes off. */
  readonly offcut?: readonly Point[];
}

/** How something with these cuts is cut: straight only with a single one. */
export function kindOf(cuts: readonly Cut[]): CutKind {
  const hardest = Math.max(0, ...cuts.map(cut => BY_HARDNESS.indexOf(cut.kind)));
  return BY_HARDNESS[Math.max(hardest, cuts.length > 1 ? 1 : 0)]!;
}
