import type { Key } from '../job/job.ts';
import type { CutList } from '../laying/cut-list/cut-list.ts';
import { nested } from '../laying/nesting/nest.ts';
import {
  type BoundMethod,
  type CuttingPattern,
  type DemandedPieces,
  USUAL_NESTING_WORK
} from '../laying/nesting/nested.ts';
import type { KindOfUnit } from './cuts-stage.ts';

/** Cut lists whose pieces may come out of one and the same unit, and the width of the saw's cut, m. */
export interface NestingStageInputs {
  readonly lists: readonly CutList[];
  readonly shapes: readonly KindOfUnit[];
  readonly sawCut: number;
}

/** Units that the pieces of one kind of unit take. */
export interface UnitsForCuts {
  readonly unit: Key;
  readonly used: number;
  readonly lowerBound: number;
  readonly boundBy: BoundMethod;
  readonly proven: boolean;
  /** How they are cut; the pieces by their place in `pieces`. */
  readonly plan: readonly CuttingPattern[];
  readonly pieces: readonly NestedPiece[];
}

/** A piece of a plan: of which list, the number of its cut, and which piece of it. */
export interface NestedPiece {
  readonly list: number;
  readonly number: number;
  readonly piece: number;
}

/** What pieces of several areas come out of: their cut lists in the order of `areas`, by key. */
export interface NestedTogether {
  readonly areas: readonly Key[];
  /** The kinds of units that more than one area cuts. */
  readonly units: readonly UnitsForCuts[];
}

/** Pieces put into as few units as can be found, kind by kind, in steps. */
export function* nestingStage({ lists, shapes, sawCut }: NestingStageInputs): Generator<void, UnitsForCuts[]> {
  const all: UnitsForCuts[] = [];
  for (const shape of shapes) {
    const pieces: NestedPiece[] = [];
    const demanded: DemandedPieces[] = [];
    for (const [list, { groups }] of lists.entries())
      for (const { unit, number, count, pieces: own } of groups) {
        if (unit !== shape.key) continue;
        own.forEach((piece, index) => {
          demanded.push({ group: pieces.length, piece, count });
          pieces.push({ list, number, piece: index });
        });
      }
    const { unitsUsed, lowerBound, boundBy, proven, plan } = yield* nested({
      unit: shape,
      pieces: demanded,
      sawCut,
      finishedEdge: shape.finishedEdge === true,
      workLimit: USUAL_NESTING_WORK
    });
    all.push({ unit: shape.key, used: unitsUsed, lowerBound, boundBy, proven, plan, pieces });
  }
  return all;
}
