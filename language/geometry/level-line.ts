import { radiusOf } from './outline.ts';
import type { Arc, Loop, Point, Side } from './shapes.ts';

/** A stretch of a side that only rises or only falls; `bow` is 1 on the right half of its circle, -1 on the left. */
export interface Run {
  readonly from: Point;
  readonly to: Point;
  readonly centre?: Point;
  readonly radius: number;
  readonly bow: number;
}

/** In metres: a corner this near to a level lies on it, so that an edge along the level is an edge and no crossing. */
const ON_LEVEL = 1e-9;

/** The sides of outlines, arcs parted at their highest and lowest points. */
export function runsOf(loops: readonly Loop[]): Run[] {
  return loops.flatMap(loop => loop.flatMap(side => (side.arc ? arcRuns(side, side.arc) : [straightRun(side)])));
}

function straightRun(side: Side): Run {
  return { from: side.from, to: side.to, radius: 0, bow: 0 };
}

function arcRuns(side: Side, arc: Arc): Run[] {
  const { centre, turn } = arc;
  const radius = radiusOf(side, arc);
  const start = Math.atan2(side.from.y - centre.y, side.from.x - centre.x);
  const end = start + turn;
  const way = Math.sign(turn);
  const runs: Run[] = [];
  let from = side.from;
  let angle = start;
  // Highest and lowest points lie at a quarter turn and every half turn on from it.
  let quarter = way > 0 ? Math.floor(start / Math.PI + 0.5) + 0.5 : Math.ceil(start / Math.PI - 0.5) - 0.5;
  for (; way * (quarter * Math.PI - end) < 0; quarter += way) {
    const next = quarter * Math.PI;
    const to = { x: centre.x, y: centre.y + (Math.sin(next) > 0 ? radius : -radius) };
    runs.push({ from, to, centre, radius, bow: Math.sign(Math.cos((angle + next) / 2)) });
    from = to;
    angle = next;
  }
  runs.push({ from, to: side.to, centre, radius, bow: Math.sign(Math.cos((angle + end) / 2)) });
  return runs;
}

function reach(run: Run, level: number, start: number, end: number): number {
  if (start === level) return run.from.x;
  if (end === level) return run.to.x;
  if (run.centre) {
    const rise = level - run.centre.y;
    return run.centre.x + run.bow * Math.sqrt(Math.max(0, (run.radius - rise) * (run.radius + rise)));
  }
  return run.from.x + ((level - run.from.y) / (run.to.y - run.from.y)) * (run.to.x - run.from.x);
}

/** Where the outlines cross just above and just below a level, from left to right. */
function crossings(runs: readonly Run[], level: number): { above: number[]; below: number[] } {
  const above: number[] = [];
  const below: number[] = [];
  for (const run of runs) {
    const start = Math.abs(run.from.y - level) < ON_LEVEL ? level : run.from.y;
    const end = Math.abs(run.to.y - level) < ON_LEVEL ? level : run.to.y;
    const crossesAbove = start > level !== end > level;
    const crossesBelow = start < level !== end < level;
    if (!crossesAbove && !crossesBelow) continue;
    const x = reach(run, level, start, end);
    if (crossesAbove) above.push(x);
    if (crossesBelow) below.push(x);
  }
  return { above: above.sort((a, b) => a - b), below: below.sort((a, b) => a - b) };
}

/** Metres of a level line that lie inside the outlines, edges along the line left out. Inside a hole is outside. */
export function lengthAtLevel(runs: readonly Run[], level: number): number {
  const { above, below } = crossings(runs, level);
  let length = 0;
  let upper = 0;
  let lower = 0;
  // Both lists pair up as entering and leaving; what is inside on both sides of the line is inside on it.
  while (upper + 1 < above.length && lower + 1 < below.length) {
    const upperEnd = above[upper + 1] ?? 0;
    const lowerEnd = below[lower + 1] ?? 0;
    const from = Math.max(above[upper] ?? 0, below[lower] ?? 0);
    length += Math.max(0, Math.min(upperEnd, lowerEnd) - from);
    if (upperEnd <= lowerEnd) upper += 2;
    else lower += 2;
  }
  return length;
}

/** Whether a point off the outline lies inside it. */
export function crossedOddly(runs: readonly Run[], point: Point): boolean {
  let odd = false;
  for (const run of runs) {
    if (run.from.y > point.y === run.to.y > point.y) continue;
    if (reach(run, point.y, run.from.y, run.to.y) > point.x) odd = !odd;
  }
  return odd;
}
