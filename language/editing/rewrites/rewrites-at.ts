import type { Evaluation, Look } from '../../paving.ts';
import { extractLet } from './extract-let.ts';
import { inlineLet } from './inline-let.ts';
import { inOtherSystem } from './other-system.ts';
import { rectangleToPoints } from './rectangle-points.ts';
import type { Rewrite } from './rewrite.ts';
import { declareMaterial } from './supplier-figures.ts';

/**
 * Other ways to write what stands at the cursor (`start` and `end` the same) or in the selection, by offsets. What each
 * leads to is still to be worked out and held against what was: see `holds`. Without an evaluation what hangs on the job
 * is left out.
 */
export function rewritesAt(look: Look, evaluation: Evaluation | undefined, start: number, end: number): Rewrite[] {
  const at = { start, end };
  return [
    ...declareMaterial(look, at, evaluation),
    ...inOtherSystem(look, at, evaluation?.job?.system),
    ...extractLet(look, at),
    ...inlineLet(look, at),
    ...rectangleToPoints(look, at)
  ];
}
