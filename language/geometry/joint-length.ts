import { boundsOfSide } from './bounds.ts';
import { type Cells, type Course, coursesOf, evenCells } from './courses.ts';
import { inFrame, isLayable, shiftOf, type UnitGrid } from './grid-frame.ts';
import { crossedOddly, lengthAtLevel, runsOf } from './level-line.ts';
import { type Edge, pathOf, RIM_TOLERANCE } from './path-clip.ts';
import type { Loop, Region, Side } from './shapes.ts';
import { MOST_UNITS, unitsAbout } from './unit-grid.ts';

/** In metres: a joint this near to an edge is measured against it, so that one along an edge is found to be no joint. */
const NEAR_EDGE = 1e-9;

/**
 * Metres of joint inside a region, along the middle of the joints: course joints and cross joints, where they meet
 * counted in both. The region's own edge is no joint; joints of no width have a length too. Undefined when the grid
 * cannot be laid or holds more units than are laid one by one.
 */
export function jointLength(region: Region, grid: UnitGrid): number | undefined {
  const about = unitsAbout(region, grid);
  if (!isLayable(grid) || !(about <= MOST_UNITS)) return undefined;
  const pitch = grid.length + grid.joint;
  return jointLengthOf(inFrame(region, grid), grid.width + grid.joint, grid.joint, course =>
    evenCells(pitch, shiftOf(course, grid))
  );
}

/**
 * The same for courses whose units, each a cell with the joint after it, are any: outlines as seen along the courses, the
 * width of a course with its joint, and of a joint, in metres.
 */
export function jointLengthOf(
  loops: readonly Loop[],
  pitch: number,
  joint: number,
  cellsIn: (course: number) => Cells
): number {
  const half = joint / 2;
  const runs = runsOf(loops);
  let length = 0;
  let first = true;
  // Each course reaches from the middle of the joint before it to the middle of the joint after it.
  for (const course of coursesOf(loops.map(pathOf), pitch, -half)) {
    if (first) length += lengthAtLevel(runs, course.bottom);
    first = false;
    length += lengthAtLevel(runs, course.top);
    length += crossJoints(course, cellsIn(course.number), half);
  }
  return length;
}

/** Metres of cross joints in one course, in the middle of the joint before each cell. Only those near an edge need measuring. */
function crossJoints(course: Course, cells: Cells, half: number): number {
  const { bottom, top, paths } = course;
  const sides = paths.flatMap(path => path.filter(edge => !runsAlongRim(edge, course)).map(sideOf));
  const across = runsOf([sides]);
  const upright = runsOf([paths.flatMap(path => path.map(edgeOnItsSide))]);
  const near = stretches(sides);
  let length = 0;
  let from = 0;
  near.forEach(({ left, right }, index) => {
    if (index > 0 && crossedOddly(across, { x: (from + left) / 2, y: (bottom + top) / 2 }))
      length += (cells.firstFrom(left + half) - 1 - cells.lastFrom(from + half)) * (top - bottom);
    const last = cells.lastFrom(right + half);
    for (let joint = cells.firstFrom(left + half); joint <= last; joint++)
      length += lengthAtLevel(upright, cells.at(joint) - half);
    from = right;
  });
  return length;
}

/** Stretches along the course, in order and apart, over which a side of the region runs. */
function stretches(sides: readonly Side[]): { left: number; right: number }[] {
  const all = sides
    .map(boundsOfSide)
    .map(({ left, right }) => ({ left: left - NEAR_EDGE, right: right + NEAR_EDGE }))
    .sort((a, b) => a.left - b.left);
  const merged: { left: number; right: number }[] = [];
  for (const { left, right } of all) {
    const last = merged.at(-1);
    if (last !== undefined && left <= last.right) last.right = Math.max(last.right, right);
    else merged.push({ left, right });
  }
  return merged;
}

function runsAlongRim({ y0, y1, radius }: Edge, { bottom, top }: Course): boolean {
  const on = (level: number): boolean => Math.abs(y0 - level) < RIM_TOLERANCE && Math.abs(y1 - level) < RIM_TOLERANCE;
  return radius === 0 && (on(bottom) || on(top));
}

function sideOf({ x0, y0, x1, y1, radius, centreX, centreY, turn }: Edge): Side {
  const ends = { from: { x: x0, y: y0 }, to: { x: x1, y: y1 } };
  return radius > 0 ? { ...ends, arc: { centre: { x: centreX, y: centreY }, turn } } : ends;
}

/** An edge with x and y changed over, so that an upright line becomes a level. */
function edgeOnItsSide(edge: Edge): Side {
  const { from, to, arc } = sideOf(edge);
  const ends = { from: { x: from.y, y: from.x }, to: { x: to.y, y: to.x } };
  return arc ? { ...ends, arc: { centre: { x: arc.centre.y, y: arc.centre.x }, turn: -arc.turn } } : ends;
}
