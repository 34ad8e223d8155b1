import type { Loop } from '../geometry/index.ts';
import type { Area } from '../job/job.ts';
import type { LaidArea } from '../laying/lay-area.ts';
import type { AreaCuts } from './cuts-stage.ts';
import type { EdgeHeights } from './edge-heights-stage.ts';
import type { LevelsNumbers } from './levels-stage.ts';
import type { UnitsForCuts } from './nesting-stage.ts';
import type { LayersNumbers } from './layers-stage.ts';
import type { OutlineNumbers } from './outline-stage.ts';
import type { PairNumbers } from './pair-stage.ts';

/** Every unit of an area: where it lies, how it is cut, and what the pieces come out of. */
export interface AreaLaid {
  readonly laid: LaidArea;
  readonly cuts: AreaCuts;
  readonly nested?: readonly UnitsForCuts[];
}

/** All that one area came to. */
export interface AreaResult {
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  readonly edgeHeights: readonly EdgeHeights[];
  readonly levels?: LevelsNumbers;
  /** Absent where nothing is paved, or the units could not be laid. */
  readonly laid?: AreaLaid;
  /** What has no numbers because its units could not be laid. */
  readonly isLaid: boolean;
}

/** Two areas, by index, that share ground. */
export type Pair = PairNumbers & { readonly areas: readonly [number, number] };

/** The outlines of what is kept out of an area. */
export function outlinesOf({ keptOut }: Area): readonly Loop[] {
  return keptOut.map(shape => shape.outline);
}

/** Two indices, the smaller first. */
export function inOrder(a: number, b: number): [number, number] {
  return a < b ? [a, b] : [b, a];
}
