import { boundsOf } from '../../language/geometry/bounds.ts';
import { coursesOf, cutToColumns, cutToRows } from '../../language/geometry/courses.ts';
import { inFrame, shiftOf } from '../../language/geometry/grid-frame.ts';
import type { Loop, Region, UnitGrid } from '../../language/geometry/index.ts';
import { alongRim, filling, type Path, pathOf, pathsArea } from '../../language/geometry/path-clip.ts';
import { piecesOf } from '../../language/geometry/pieces.ts';
import type { CutUnit, LaidUnits, Placement, WholeRun } from '../../language/laying/laid.ts';

type Box = Parameters<typeof filling>[1];

/** Units of one size in courses over a region, for drawings to show; areas of units and joints are not worked out. */
export function layGrid(region: Region, grid: UnitGrid, unit: string): LaidUnits {
  const wholes: WholeRun[] = [];
  const cuts: CutUnit[] = [];
  const loops = inFrame(region, grid);
  const { left, right } = boundsOf(loops[0]!);
  const pitch = grid.length + grid.joint;
  const step = { x: pitch * Math.cos(grid.direction), y: pitch * Math.sin(grid.direction) };
  for (const { number, bottom, paths } of coursesOf(loops.map(pathOf), grid.width + grid.joint, 0)) {
    const shift = shiftOf(number, grid);
    let run: WholeRun | undefined;
    for (let column = Math.floor((left - shift) / pitch); shift + column * pitch < right; column++) {
      const x = shift + column * pitch;
      const box = { left: x, right: x + grid.length, bottom, top: bottom + grid.width };
      const inUnit = cutToColumns(cutToRows(paths, box.bottom, box.top), box.left, box.right);
      const fills = inUnit.length === 0 ? 'empty' : filling(inUnit, box);
      const at = placed(x, bottom, grid);
      if (fills === 'full') run = run ? { ...run, count: run.count + 1 } : { unit, first: at, step, count: 1 };
      if (fills !== 'full' || x + pitch >= right) {
        if (run) wholes.push(run);
        run = undefined;
      }
      if (fills === 'partial') cuts.push(...cutUnit(unit, at, inUnit, box));
    }
  }
  return { wholes, cuts, unitArea: 0, jointArea: 0, clipped: cuts.length };
}

function placed(x: number, y: number, { origin, direction }: UnitGrid): Placement {
  const cosine = Math.cos(direction);
  const sine = Math.sin(direction);
  return { x: origin.x + x * cosine - y * sine, y: origin.y + x * sine + y * cosine, direction };
}

function cutUnit(unit: string, at: Placement, inUnit: readonly Path[], box: Box): CutUnit[] {
  const holes = inUnit.filter(path => !path.some(edge => alongRim(edge, box)) && pathsArea([path]) < 0);
  const pieces = piecesOf(inUnit, box)
    .filter(({ area }) => area > 1e-6)
    .map(({ rim, area }, index) => ({
      outline: loopIn(rim, box),
      holes: index === 0 ? holes.map(path => loopIn(path, box)) : [],
      area
    }));
  return pieces.length === 0 ? [] : [{ unit, at, pieces }];
}

/** In the unit's own frame. */
function loopIn(path: Path, { left, bottom }: Box): Loop {
  return path.map(({ x0, y0, x1, y1, centreX, centreY, radius, turn }) => {
    const ends = { from: { x: x0 - left, y: y0 - bottom }, to: { x: x1 - left, y: y1 - bottom } };
    return radius === 0 ? ends : { ...ends, arc: { centre: { x: centreX - left, y: centreY - bottom }, turn } };
  });
}

/** Numbers as a cut list gives them: equal pieces, to a tenth of a millimetre, have equal numbers. */
export function numbersOf(laid: LaidUnits, known = new Map<string, number>()): number[] {
  return laid.cuts.map(({ unit, pieces }) => {
    const mm = (value: number): number => Math.round(value * 1e4) + 0;
    const shape = pieces.map(({ outline, area }) => {
      const { left, right, bottom, top } = boundsOf(outline);
      return [mm(right - left), mm(top - bottom), Math.round(area * 1e6)];
    });
    const key = JSON.stringify([unit, shape]);
    const number = known.get(key) ?? known.size + 1;
    known.set(key, number);
    return number;
  });
}
