// Outlines on a 50 mm raster, so that edges, corners and joints fall on each other: counted cell by cell.
import { expect, it } from 'vitest';
import { jointLength, rectangleLoop, type Loop, type Region, type UnitGrid } from '../../language/geometry/index.ts';
import { loopOf } from './feet.ts';
import { laid } from './laid.ts';
import { moved, movedRegion, seededNumbers } from './random-outlines.ts';

const CELL = 0.05;
const ACROSS = 40;

/** Columns of whole cells side by side, with three keep-outs of whole cells near the bottom. */
function rasterRegion(next: () => number): { region: Region; filled: (column: number, row: number) => boolean } {
  const heights: number[] = [];
  while (heights.length < ACROSS) {
    const height = 10 + Math.floor(20 * next());
    heights.push(...Array.from({ length: 1 + Math.floor(8 * next()) }, () => height));
  }
  heights.length = ACROSS;
  const corners: [number, number][] = [
    [0, 0],
    [ACROSS * CELL, 0]
  ];
  for (let column = ACROSS - 1; column >= 0; column--) {
    const height = (heights[column] ?? 0) * CELL;
    corners.push([(column + 1) * CELL, height], [column * CELL, height]);
  }
  const holes = [0, 1, 2].map(place => ({
    column: place * 12 + Math.floor(6 * next()),
    row: Math.floor(4 * next()),
    width: 1 + Math.floor(6 * next()),
    depth: 1 + Math.floor(6 * next())
  }));
  const filled = (column: number, row: number): boolean =>
    row >= 0 &&
    row < (heights[column] ?? 0) &&
    !holes.some(
      hole =>
        column >= hole.column && column < hole.column + hole.width && row >= hole.row && row < hole.row + hole.depth
    );
  const loops = holes.map(({ column, row, width, depth }): Loop => {
    return rectangleLoop(width * CELL, depth * CELL, { x: column * CELL, y: row * CELL }, 0);
  });
  return { region: { outer: loopOf(...corners), holes: loops }, filled };
}

it('units 200 by 100 mm in half bond, wholes, cuts, area and joints, turned anyhow (exact arithmetic)', () => {
  const next = seededNumbers(31);
  for (let round = 0; round < 100; round++) {
    const { region, filled } = rasterRegion(next);
    let whole = 0;
    let cut = 0;
    let cells = 0;
    let smallest = Infinity;
    let jointCells = 0;
    for (let course = 0; course < 16; course++) {
      for (let unit = -1; unit < ACROSS / 4; unit++) {
        const left = unit * 4 + (course % 2) * 2;
        let count = 0;
        for (let cell = 0; cell < 8; cell++) if (filled(left + (cell % 4), course * 2 + (cell >> 2))) count++;
        cells += count;
        if (count === 8) whole++;
        else if (count > 0) cut++;
        for (let row = course * 2; row < course * 2 + 2; row++) {
          if (filled(left - 1, row) && filled(left, row)) jointCells++;
        }
        for (let cell = left; cell < left + 4; cell++) {
          if (filled(cell, course * 2 - 1) && filled(cell, course * 2)) jointCells++;
        }
        if (count > 0) smallest = Math.min(smallest, count);
      }
    }
    const grid: UnitGrid = {
      origin: { x: 0, y: 0 },
      direction: 0,
      mirrored: false,
      length: 0.2,
      width: 0.1,
      joint: 0,
      offset: 0.5
    };
    const motion = { mirrored: false, turn: 6 * next(), move: { x: 500 * next(), y: 70 * next() } };
    const turned = { ...grid, origin: moved(grid.origin, motion), direction: motion.turn };
    for (const [place, how] of [[region, grid] as const, [movedRegion(region, motion), turned] as const]) {
      const units = laid(place, how);
      expect([units.whole, units.cut]).toEqual([whole, cut]);
      expect(units.unitArea).toBeCloseTo(cells * CELL * CELL, 8);
      expect(jointLength(place, how)).toBeCloseTo(jointCells * CELL, 7);
      // A unit may fall into several pieces, so that the smallest is no larger than the least filled unit.
      if (units.smallestPieceArea !== undefined) {
        expect(units.smallestPieceArea).toBeLessThan(smallest * CELL * CELL + 1e-9);
        expect(units.smallestPieceArea).toBeGreaterThan(CELL * CELL - 1e-9);
      }
    }
  }
});
