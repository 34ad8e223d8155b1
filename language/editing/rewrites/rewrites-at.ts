import type { Evaluation, Look } from '../../paving.ts';
import { extractLet } from './extract-let.ts';
import { inlineLet } from './inline-let.ts';
import { writeInOtherSystem } from './other-system.ts';
import { rectangleToPoints } from './rectangle-points.ts';
import type { Rewrite } from './rewrite.ts';
import { declareMaterial } from './supplier-figures.ts';

/**
 * Other ways to write what stands at the cursor (`start` and `end` the same) or in the selection, by offsets, of the kinds
 * that are wanted. What each leads to is still to be worked out and held against what was: see `holds`. Without an
 * evaluation what hangs on the job is left out.
 */
export function rewritesAt(
  look: Look,
  evaluation: Evaluation | undefined,
  start: number,
  end: number,
  wants: (kind: Rewrite['kind']) => boolean = () => true
): Rewrite[] {
  const at = { start, end };
  const ways: readonly (readonly [Rewrite['kind'], () => Rewrite[]])[] = [
    ['rewrite', () => declareMaterial(look, at)],
    ['rewrite', () => writeInOtherSystem(look, at, evaluation?.job?.system)],
    ['extract', () => extractLet(look, at)],
    ['inline', () => inlineLet(look, at)],
    ['rewrite', () => rectangleToPoints(look, at)]
  ];
  return ways.flatMap(([kind, make]) => (wants(kind) ? make() : []));
}
