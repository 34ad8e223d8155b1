import {
  baseOut,
  boundsOf,
  type Ground,
  type Loop,
  reversedLoop,
  sharedWithAny,
  signedAreaOf
} from '../../geometry/index.ts';
import type { Area } from '../../job/job.ts';
import type { Stage } from '../../job/log.ts';
import type { AreaQuantities } from '../../quantities/contract.ts';

export type AreaStage = Exclude<Stage, 'edging'>;

/** What lies on the bed reaches to the outline, what lies under it to the edge of the base. */
const TO_THE_OUTLINE: ReadonlySet<AreaStage> = new Set(['bed', 'paving', 'joints']);

/** The ground that a stage of an area takes up. */
export function groundOf(area: Area, { edges }: AreaQuantities, stage: AreaStage): Ground {
  const keptOut = area.keptOut.map(({ outline }) => outline);
  if (TO_THE_OUTLINE.has(stage)) return { loops: [anticlockwise(area.outline)], keptOut };
  const { loops } = baseOut(
    area.outline,
    edges.map(({ overhang }) => overhang ?? 0)
  );
  return { loops, keptOut };
}

function anticlockwise(loop: Loop): Loop {
  return signedAreaOf(loop) < 0 ? reversedLoop(loop) : loop;
}

/** Area of one ground, m2. */
export function sizeOf(ground: Ground): number {
  return sharedWithAny(ground, [ground]);
}

/** Area that a ground shares with others, m2; those that are apart from it are not asked. */
export function sharedSize(ground: Ground, others: readonly Ground[]): number {
  const near = others.filter(other => touches(ground, other));
  return near.length === 0 ? 0 : sharedWithAny(ground, near);
}

function touches(one: Ground, other: Ground): boolean {
  return one.loops.some(loop => {
    const box = boundsOf(loop);
    return other.loops.some(otherLoop => {
      const otherBox = boundsOf(otherLoop);
      return (
        box.left < otherBox.right && otherBox.left < box.right && box.bottom < otherBox.top && otherBox.bottom < box.top
      );
    });
  });
}
