import type { UnitShape } from '../cut-list/unit-shape.ts';
import type { Piece } from '../laid.ts';

/** Equal pieces that are laid, under the number of their group. A mirrored piece is of another group. */
export interface DemandedPieces {
  readonly group: number;
  readonly piece: Piece;
  readonly count: number;
}

/** What nesting goes by: lengths in metres. */
export interface NestingInputs {
  readonly unit: UnitShape;
  readonly pieces: readonly DemandedPieces[];
  /** Width of the saw's cut. */
  readonly sawCut: number;
  /** Pieces keep their place across the unit and are moved along it alone, never turned: one long side is finished. */
  readonly finishedEdge: boolean;
  /**
   * About the most ways of putting pieces together that are tried. Beyond it the pieces left are put where the first few
   * tries lead: that costs little and still counts.
   */
  readonly workLimit: number;
}

/** A limit of work that takes some tenths of a second. */
export const USUAL_NESTING_WORK = 600_000;

/** Where a piece is cut from a unit: its outline turned about nought of the unit's own frame, then moved. */
export interface PlacedPiece {
  readonly group: number;
  /** In metres, after the turn. */
  readonly x: number;
  readonly y: number;
  /** Degrees anticlockwise: 0, 90, 180 or 270, of a hexagon multiples of 60. */
  readonly turn: number;
}

/** So many units that are cut in the same way. */
export interface CuttingPattern {
  readonly units: number;
  readonly pieces: readonly PlacedPiece[];
}

/**
 * The method that a lower bound is by. `area`: the area of all pieces over that of a unit. `saw`: the same with half a
 * saw's cut round each piece and round the unit. `counting`: how many pieces of a size a unit can give at most.
 */
export type BoundMethod = 'area' | 'saw' | 'counting';

/** What pieces take, and how sure that is. */
export interface Nested {
  readonly unitsUsed: number;
  /** With straight cuts right through fewer units can't do. Never more than the units used. */
  readonly lowerBound: number;
  readonly boundBy: BoundMethod;
  /** The units used are as few as can be: they equal the bound, or every other nesting has been tried. */
  readonly proven: boolean;
  /** Every piece is in it once. */
  readonly plan: readonly CuttingPattern[];
  /** Ways of putting pieces together that were tried. */
  readonly work: number;
}
