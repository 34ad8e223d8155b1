import { columnsOf, coursesOf } from './courses.ts';
import { inFrame, isLayable, shiftOf, type UnitGrid } from './grid-frame.ts';
import { lengthAtLevel, runsOf } from './level-line.ts';
import { type Edge, type Path, pathOf } from './path-clip.ts';
import type { Loop, Region, Side } from './shapes.ts';
import { MOST_UNITS, unitsAbout } from './unit-grid.ts';

/**
 * Metres of joint inside a region, along the middle of the joints: course joints and cross joints, where they meet
 * counted in both. The region's own edge is no joint; joints of no width have a length too. Undefined when the grid
 * cannot be laid or holds more units than are laid one by one.
 */
export function jointLength(region: Region, grid: UnitGrid): number | undefined {
  const about = unitsAbout(region, grid);
  if (!isLayable(grid) || !(about <= MOST_UNITS)) return undefined;
  const pitch = grid.length + grid.joint;
  const coursePitch = grid.width + grid.joint;
  const half = grid.joint / 2;
  const loops = inFrame(region, grid);
  const runs = runsOf(loops);
  let length = 0;
  let first = true;
  // Each course reaches from the middle of the joint before it to the middle of the joint after it.
  for (const course of coursesOf(loops.map(pathOf), coursePitch, -half)) {
    if (first) length += lengthAtLevel(runs, course.bottom);
    first = false;
    length += lengthAtLevel(runs, course.top);
    // Cells reach from middle to middle of the units, so that a cross joint runs up the middle of each.
    columnsOf(course, pitch, shiftOf(course.number, grid) - half - pitch / 2, {
      full: count => {
        length += count * coursePitch;
      },
      partial: (left, paths) => {
        length += lengthAtLevel(runsOf(paths.map(onItsSide)), left + pitch / 2);
      }
    });
  }
  return length;
}

/** A path with x and y changed over, so that an upright line becomes a level. */
function onItsSide(path: Path): Loop {
  return path.map(edgeOnItsSide);
}

function edgeOnItsSide({ x0, y0, x1, y1, radius, centreX, centreY, turn }: Edge): Side {
  const ends = { from: { x: y0, y: x0 }, to: { x: y1, y: x1 } };
  return radius > 0 ? { ...ends, arc: { centre: { x: centreY, y: centreX }, turn: -turn } } : ends;
}
