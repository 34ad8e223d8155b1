import type { Line } from '../../drawing/drawing.ts';
import type { Loop, Point } from '../../geometry/index.ts';
import { heading } from '../../geometry/moved-side.ts';
import { ground } from './page.ts';
import type { PlanArea } from './plan-input.ts';
import { isOnSheet, type Surroundings } from './surroundings.ts';

/** Half the length of a tick, which shows past an edging, and free room about it, mm on paper. */
const HALF = 2.2;
const ROOM = 0.6;

/** The cosine of an angle at which a curve and what follows it still meet without a corner. */
const SMOOTH = 0.9999;

/** Short lines across an outline where a curve begins or ends without a corner, as far as there is room. */
export function tangentTicks(areas: readonly PlanArea[], { sheet, taken }: Surroundings): Line[] {
  const half = ground(sheet, HALF);
  return areas.flatMap(({ key, outline }) =>
    tangentsOf(outline).flatMap(({ index, at, way }): Line[] => {
      const turn = Math.atan2(way.y, way.x) + Math.PI / 2;
      const box = { at, width: 2 * half, height: ground(sheet, ROOM), turn };
      if (!taken.isFree(box) || !isOnSheet(box, sheet)) return [];
      taken.add(box);
      const across = { x: -way.y * half, y: way.x * half };
      const side = { from: { x: at.x - across.x, y: at.y - across.y }, to: { x: at.x + across.x, y: at.y + across.y } };
      return [
        { kind: 'line', key: `${key}/tangent-${index + 1}`, ink: 'tick', sides: [side], says: 'curve begins or ends' }
      ];
    })
  );
}

function tangentsOf(outline: Loop): { index: number; at: Point; way: Point }[] {
  return outline.flatMap((side, index) => {
    const before = outline.at(index - 1)!;
    if (before === side || (before.arc === undefined && side.arc === undefined)) return [];
    const [arrives, way] = [heading(before, side.from), heading(side, side.from)];
    return arrives.x * way.x + arrives.y * way.y < SMOOTH ? [] : [{ index, at: side.from, way }];
  });
}

/** Whether an area has a place for a tick. */
export function hasTangents({ outline }: PlanArea): boolean {
  return tangentsOf(outline).length > 0;
}
