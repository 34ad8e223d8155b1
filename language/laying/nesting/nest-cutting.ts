import type { PieceSet } from './nest-sets.ts';

/** A piece's place in a unit: turned by degrees about nought of the unit's frame, then moved, metres. */
export interface PlacedKind {
  readonly kind: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

/** How pieces can be cut from one unit. */
export interface Cutting {
  /** Whether a way is found to cut a set of pieces from a unit. If so, there is one for all that is in the set. */
  fits(set: PieceSet): boolean;
  /** That way; no places where none is found. */
  layout(set: PieceSet): readonly PlacedKind[];
  /** Whether not finding a way has always meant that there is none. */
  isExact(): boolean;
}

/** A counter of ways tried, and the most there may be. */
export interface Work {
  spent: number;
  readonly limit: number;
}

export function isOver({ spent, limit }: Work): boolean {
  return spent >= limit;
}
