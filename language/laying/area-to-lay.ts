import type { Loop } from '../geometry/index.ts';
import type { Cell, SizedUnit } from './bonds/cell-bond.ts';
import type { StartSaid } from './field-frame.ts';

/**
 * Joint lines are carried on through so many areas at most: no job comes near, and each area holds what it goes by.
 */
export const MOST_CARRIED_ON = 20;

/** All that laying an area goes by: shapes on the plan and sizes, metres and radians. */
export interface AreaToLay {
  readonly outline: Loop;
  readonly keptOut: readonly KeptOutShape[];
  readonly field: FieldToLay;
  readonly insets: readonly InsetToLay[];
  /** The outermost first. */
  readonly borders: readonly BorderToLay[];
  readonly bands: readonly BandToLay[];
}

export interface KeptOutShape {
  readonly key: string;
  readonly outline: Loop;
}

/** What is laid in one bond. */
export interface FieldToLay {
  readonly units: readonly SizedUnit[];
  readonly bond: BondToLay;
  readonly joint: JointLimits;
  /** Turn of the bond itself. */
  readonly turned: number;
  readonly start: Omit<StartSaid, 'carriedOn'>;
  /** In courses: where one would end in a piece shorter along it, m, the unit before it is cut as well. */
  readonly inboardCuts?: number;
  /** The area that joint lines go on from. */
  readonly carriedOnFrom?: AreaToLay;
}

export type BondToLay =
  | { readonly way: 'courses'; readonly offset: number }
  | { readonly way: 'cell'; readonly cell: Cell }
  | { readonly way: 'random-courses'; readonly seed: number; readonly jointsApart: number }
  | { readonly way: 'hexagons' }
  | { readonly way: 'rings' };

/** Width of a joint and how far it may be adjusted. */
export interface JointLimits {
  readonly width: number;
  readonly least: number;
  readonly most: number;
}

export interface InsetToLay extends KeptOutShape {
  readonly field: FieldToLay;
}

export interface BorderToLay {
  readonly key: string;
  readonly unit: SizedUnit;
  /** The unit's long side stands square to the edge. */
  readonly soldier: boolean;
  readonly joint: JointLimits;
  readonly along: { readonly sides: readonly number[] } | { readonly round: string };
  readonly mitred: boolean;
}

export interface BandToLay {
  readonly key: string;
  readonly unit: SizedUnit;
  readonly soldier: boolean;
  readonly joint: JointLimits;
  readonly side: number;
  /** From the beginning of the side to the middle of the band. */
  readonly at: number;
}
