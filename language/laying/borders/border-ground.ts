import { boundsOf, type Bounds, boundsOfSide, apart } from '../../geometry/bounds.ts';
import type { Frame } from '../../geometry/frame.ts';
import { onPlan, seenFrom } from '../../geometry/frame.ts';
import type { Loop, Point, Side } from '../../geometry/index.ts';
import { crossedOddly, runsOf } from '../../geometry/level-line.ts';
import { intersectionOf } from '../../geometry/loop-clip.ts';
import { SAME_POINT } from '../../geometry/moved-side.ts';
import { cutTo, sumOf } from './border-cut.ts';
import type { CourseOfUnits } from './border.ts';
import type { CutUnit, LaidUnits, Placement, WholeRun } from '../laid.ts';

/** What has been laid so far. */
export interface Tally {
  readonly wholes: WholeRun[];
  readonly cuts: CutUnit[];
  unitArea: number;
  jointArea: number;
  clipped: number;
}

export function newTally(): Tally {
  return { wholes: [], cuts: [], unitArea: 0, jointArea: 0, clipped: 0 };
}

export function laidUnits({ wholes, cuts, unitArea, jointArea, clipped }: Tally): LaidUnits {
  return { wholes, cuts, unitArea, jointArea, clipped };
}

/** The ground of one row of units, seen in a frame of its own, on which units and joints are laid one by one. */
export interface Ground {
  /** Lays a unit given in the ground's frame, and tells whether it lies whole. */
  unit(at: Frame): boolean;
  /** Lays a joint; the point is one within it. */
  joint(shape: Loop, within: Point): void;
}

/**
 * @param loops where units may lie, on the plan: outer outlines anticlockwise, holes clockwise
 * @param isRim whether a side, seen in the frame, is one that no unit or joint of the row reaches across
 */
export function groundOf(
  course: CourseOfUnits,
  frame: Frame,
  loops: readonly Loop[],
  isRim: (side: Side) => boolean,
  tally: Tally
): Ground {
  const { length, width, key } = course.unit;
  const area = loops.map(loop => seenFrom(frame, loop));
  const runs = runsOf(area);
  const crossing = area
    .flat()
    .filter(side => !isRim(side))
    .map(boundsOfSide);
  const fills = (box: Bounds, within: Point): 'full' | 'empty' | 'partial' => {
    if (crossing.some(side => !apart(side, box, -SAME_POINT))) return 'partial';
    return crossedOddly(runs, within) ? 'full' : 'empty';
  };
  return {
    unit: at => {
      const corners = cornersOf(at, length, width);
      const fill = fills(boundsOf(corners), middleOf(corners));
      if (fill === 'full') tally.unitArea += length * width;
      if (fill !== 'partial') return fill === 'full';
      tally.clipped++;
      const cut = cutTo(
        area.map(loop => seenFrom(at, loop)),
        length,
        width
      );
      tally.unitArea += cut.area;
      if (cut.pieces.length > 0) tally.cuts.push({ unit: key, at: onPlan(frame, at), pieces: cut.pieces });
      return cut.whole;
    },
    joint: (shape, within) => {
      const fill = fills(boundsOf(shape), within);
      if (fill === 'full') tally.jointArea += sumOf([shape]);
      if (fill === 'partial') tally.jointArea += sumOf(intersectionOf([shape], area));
    }
  };
}

function cornersOf({ x, y, direction }: Frame, length: number, width: number): Loop {
  const cosine = Math.cos(direction);
  const sine = Math.sin(direction);
  const corner = (along: number, across: number): Point => ({
    x: x + along * cosine - across * sine,
    y: y + along * sine + across * cosine
  });
  const corners = [corner(0, 0), corner(length, 0), corner(length, width), corner(0, width)] as const;
  return corners.map((from, place) => ({ from, to: corners[(place + 1) % 4] ?? from }));
}

function middleOf([first, , third]: Loop): Point {
  const [one, other] = [first?.from ?? { x: NaN, y: NaN }, third?.from ?? { x: NaN, y: NaN }];
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}

/**
 * A unit of a course from its corner on the edge, the paving being on the left of the direction along the edge. The
 * unit's own frame keeps one of its long sides (sailor) or its end (soldier) on the edge.
 */
export function unitAt({ unit, lies }: CourseOfUnits, corner: Point, direction: number): Placement {
  if (lies === 'sailor') return { ...corner, direction };
  return {
    x: corner.x + unit.width * Math.cos(direction),
    y: corner.y + unit.width * Math.sin(direction),
    direction: direction + Math.PI / 2
  };
}
