import { distance } from '../../../geometry/index.ts';
import type { Placement } from '../../../laying/laid.ts';
import type { PlanArea } from '../plan-input.ts';

/** m, radians: what lies nearer is laid in the same place. */
const SAME_PLACE = 0.0005;

/** Whether all units of an area lie as they lay; the keys of units may be others. */
export function areLaidAlike({ parts: old }: PlanArea, { parts: now }: PlanArea): boolean {
  return (
    old.length === now.length &&
    old.every(({ laid: was }, index) => {
      const { laid: is } = now[index]!;
      return (
        areAlike(was.wholes, is.wholes, (one, other) => one.count === other.count && isAt(one.first, other.first)) &&
        areAlike(was.cuts, is.cuts, (one, other) => one.pieces.length === other.pieces.length && isAt(one.at, other.at))
      );
    })
  );
}

function areAlike<Thing>(
  old: readonly Thing[],
  now: readonly Thing[],
  alike: (old: Thing, now: Thing) => boolean
): boolean {
  return old.length === now.length && old.every((one, index) => alike(one, now[index]!));
}

function isAt(old: Placement, now: Placement): boolean {
  return distance(old, now) <= SAME_PLACE && Math.abs(Math.sin((old.direction - now.direction) / 2)) <= SAME_PLACE;
}
