import type { Piece } from '../laid.ts';
import type { CutKind, Marking } from './marking-out.ts';

/** Everything cut in one stretch of laying: equal cuts together, and what they come to. */
export interface CutList {
  readonly groups: readonly CutGroup[];
  /** One for each unit that came in, in that order. */
  readonly places: readonly CutPlace[];
  readonly totals: CutTotals;
}

/** Units cut alike within the cutting tolerance, up to turns that lay the unit on itself; never mirrored. */
export interface CutGroup {
  /** From 1, unit by unit in the order in which these come. */
  readonly number: number;
  /** Key of the unit. */
  readonly unit: string;
  readonly count: number;
  /** What is laid of each unit, in the unit's own frame, turned to lie left and near. */
  readonly pieces: readonly MarkedPiece[];
  /** Of the pieces of one unit, the mean of the group: square metres, as a share of the unit, metres sawn. */
  readonly area: number;
  readonly share: number;
  readonly sawLength: number;
  /** Told by the hardest cut; straight only with a single one. */
  readonly kind: CutKind;
  /** Straight cuts right through each unit: as many as it needs where it needs no other kind, else nought. */
  readonly straightCuts: number;
  /** Metres across the narrowest direction of the narrowest piece. */
  readonly narrowest: number;
  /** The same of what falls off, of a unit cut once and straight. */
  readonly offcutNarrowest?: number;
}

export interface MarkedPiece extends Piece {
  /** Square metres as a share of the whole unit. */
  readonly share: number;
  /** Metres across the narrowest direction. */
  readonly narrowest: number;
  readonly kind: CutKind;
  readonly markings: readonly Marking[];
}

/** Where a cut unit stands in the list. */
export interface CutPlace {
  /** Number of its group. */
  readonly group: number;
  /** The how manieth of the group it is, from 1. */
  readonly index: number;
  /** Turn of the group's pieces about the middle of the unit that lays them on this one's, radians anticlockwise. */
  readonly turn: number;
}

/** What all cuts of a list come to. */
export interface CutTotals {
  /** Units that are cut. */
  readonly units: number;
  readonly pieces: number;
  /** Square metres. */
  readonly area: number;
  /** Metres of sawn outline: a cut that goes on beyond the piece is counted along the piece. */
  readonly sawLength: number;
  /** Straight cuts right through a unit that needs no other kind, and metres of them: a splitter can make these. */
  readonly straightCuts: number;
  readonly straightLength: number;
  /** Square metres of the smallest piece, and the number of its group. */
  readonly smallest?: Extreme;
  /** Metres across the narrowest piece in its narrowest direction, and the number of its group. */
  readonly narrowest?: Extreme;
}

export interface Extreme {
  readonly value: number;
  readonly group: number;
}
