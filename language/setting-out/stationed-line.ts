import type { Side } from '../geometry/index.ts';

/** An open path of straights and arcs. */
export interface StationedLine {
  readonly sides: readonly Side[];
}
