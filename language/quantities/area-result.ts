import type { Loop } from '../geometry/index.ts';
import type { Area } from '../job/job.ts';
import type { LayersNumbers } from './layers-stage.ts';
import type { OutlineNumbers } from './outline-stage.ts';
import type { PairNumbers } from './pair-stage.ts';

/** All that one area came to. */
export interface AreaResult {
  readonly area: Area;
  readonly shapes: OutlineNumbers;
  readonly layers: LayersNumbers;
  readonly laid: boolean;
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
