import type { AreaToLay } from './area-to-lay.ts';

/** How far borders and the joints inside them reach in from each side of the outline, m. */
export function reachOf({ outline, borders }: AreaToLay): number[] {
  return outline.map((_, side) =>
    borders
      .filter(({ along }) => 'sides' in along && along.sides.includes(side))
      .reduce((sum, { unit, soldier, joint }) => sum + (soldier ? unit.length : unit.width) + joint.width, 0)
  );
}
