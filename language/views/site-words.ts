import { type LevelStyle, printDrop } from '../measures/print-level.ts';
import { deepestCut } from '../quantities/boxes.ts';
import type { BoxQuantities } from '../quantities/site-contract.ts';

/** What is to be done with a box: `raise the lid by 7/8 in`; nothing where that is not known. */
export function boxWorkText(box: BoxQuantities, style: LevelStyle): string {
  if (box.lid === undefined) return '';
  if (box.buried) return cutText(box, style);
  return box.change === undefined ? '' : changeText(box.change, style);
}

function cutText(box: BoxQuantities, style: LevelStyle): string {
  const by = deepestCut(box) ?? 0;
  const bottom = by > (box.cutDown ?? 0) ? 'soft spot' : 'dig';
  return `cut down by at least ${printDrop(by, style)}, to the bottom of the ${bottom}`;
}

function changeText(change: number, style: LevelStyle): string {
  const size = printDrop(Math.abs(change), style);
  if (Number.parseFloat(size) === 0) return 'flush as it is';
  return `${change > 0 ? 'raise' : 'lower'} the lid by ${size}`;
}

/** `step of 3 in up to the sill` */
export function stepText(step: number, style: LevelStyle): string {
  const size = printDrop(Math.abs(step), style);
  if (Number.parseFloat(size) === 0) return 'sill level with the finish';
  return step > 0 ? `step of ${size} up to the sill` : `sill ${size} below the finish`;
}
