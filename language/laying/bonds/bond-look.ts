import { type Cell, kindsOf } from './cell-bond.ts';

/** How the units of a bond lie to each other, in the trade's words. */
export const BOND_LOOKS = [
  'stack',
  'running',
  'herringbone',
  'basket-weave',
  'several-sizes',
  'random-courses',
  'hexagons',
  'rings'
] as const;
export type BondLook = (typeof BOND_LOOKS)[number];

/**
 * What a drawn bond is, whatever its name: of one size and way `stack` or `running`, of one size both ways herringbone
 * where no joint runs straight through, else basket weave.
 */
export function lookOfCell(cell: Cell): BondLook {
  if (kindsOf(cell).length > 1) return 'several-sizes';
  const ways = new Set(cell.slots.map(({ across, up }) => Math.sign(across - up)));
  const through = [runsThrough(cell, 'along'), runsThrough(cell, 'across')];
  if (ways.size === 1) return through.includes(false) ? 'running' : 'stack';
  return through.includes(true) ? 'basket-weave' : 'herringbone';
}

/** Whether some joint runs straight through the whole bond, along its courses or across them. */
function runsThrough({ columns, rows, slots }: Cell, way: 'along' | 'across'): boolean {
  const lines = way === 'along' ? rows : columns;
  const crossed = new Set<number>();
  for (const { column, row, across, up } of slots) {
    const [first, covered] = way === 'along' ? [row, up] : [column, across];
    for (let line = first + 1; line < first + covered; line++) crossed.add(line % lines);
  }
  return crossed.size < lines;
}
