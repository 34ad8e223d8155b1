import { areaOf, boundsOf, hullOf, type Loop, type Point, type Side } from '../../geometry/index.ts';
import type { Bounds } from '../../geometry/bounds.ts';
import { turnedAbout } from '../../geometry/outline.ts';
import type { UnitShape } from '../cut-list/unit-shape.ts';

/** A convex outline, corners anticlockwise, in metres. */
export type Corners = readonly Point[];

/** What straight cuts right through can free a piece to: notches, curves and holes are cut out of it afterwards. */
export interface Blank {
  /** The box round it, in the unit's frame. */
  readonly left: number;
  readonly bottom: number;
  readonly length: number;
  readonly width: number;
  /** It fills its box. */
  readonly isBox: boolean;
  /** Its corners after no, one, two and three quarter turns, each time from the lower left corner of the box. */
  readonly turned: readonly [Corners, Corners, Corners, Corners];
}

/** In metres: how far the straight sides that are cut round an arc may stand off it. */
const STAND_OFF = 1e-4;

/** Share of an area that rounding may make up. */
const AREA_ROUNDING = 1e-9;

/** In metres: a side shorter than this, or off the box by less, is rounding. */
const ROUNDING = 1e-9;

/**
 * The blank of a piece. One with a notch or an inward curve that reaches over the whole unit both ways is cut from a
 * whole unit: what comes out of it is no offcut of use.
 */
export function blankOf(outline: Loop, unit: UnitShape): Blank {
  const box = boundsOf(outline);
  const length = box.right - box.left;
  const width = box.top - box.bottom;
  const hull = within(hullOf(outline.flatMap(cornersRound), ROUNDING), box);
  const area = areaOfCorners(hull);
  const isHollow = area - areaOf(outline) > STAND_OFF * (length + width);
  const isAsLarge = length >= unit.length - ROUNDING && width >= unit.width - ROUNDING;
  const isBox = (isHollow && isAsLarge && unit.shape === 'rectangle') || area >= length * width * (1 - AREA_ROUNDING);
  const corners = isBox ? boxCorners(length, width) : hull.map(({ x, y }) => ({ x: x - box.left, y: y - box.bottom }));
  return {
    left: box.left,
    bottom: box.bottom,
    length,
    width,
    isBox,
    turned: [
      corners,
      corners.map(({ x, y }) => ({ x: width - y, y: x })),
      corners.map(({ x, y }) => ({ x: length - x, y: width - y })),
      corners.map(({ x, y }) => ({ x: y, y: length - x }))
    ]
  };
}

/** Size of a blank's box after so many quarter turns, in metres. */
export function turnedSize({ length, width }: Blank, quarterTurns: number): { length: number; width: number } {
  return quarterTurns % 2 === 0 ? { length, width } : { length: width, width: length };
}

/**
 * The move, after a turn about nought of the unit's frame by so many degrees, a multiple of 90, that brings the lower
 * left corner of a blank's turned box to a point.
 */
export function moveTo({ left, bottom, length, width }: Blank, degrees: number, { x, y }: Point): Point {
  const right = left + length;
  const top = bottom + width;
  if (degrees === 0) return { x: x - left, y: y - bottom };
  if (degrees === 90) return { x: x + top, y: y - left };
  if (degrees === 180) return { x: x + right, y: y + top };
  return { x: x - bottom, y: y + right };
}

function boxCorners(length: number, width: number): Corners {
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width }
  ];
}

/** Corners whose hull has a side of an outline within it: of an outward arc those where tangents meet. */
function cornersRound({ from, to, arc }: Side): Point[] {
  if (!arc || arc.turn < 0) return [from];
  const radius = Math.hypot(from.x - arc.centre.x, from.y - arc.centre.y);
  const parts = Math.ceil(arc.turn / (2 * Math.acos(radius / (radius + STAND_OFF))));
  const half = arc.turn / parts / 2;
  const reach = 1 / Math.cos(half);
  const outer = {
    x: arc.centre.x + reach * (from.x - arc.centre.x),
    y: arc.centre.y + reach * (from.y - arc.centre.y)
  };
  const met = Array.from({ length: parts }, (_, part) => turnedAbout(outer, arc.centre, (2 * part + 1) * half));
  return [from, ...met, to];
}

/** What of a convex outline lies in a box: tangents may meet outside the one that the arc itself keeps to. */
function within(corners: Corners, { left, right, bottom, top }: Bounds): Corners {
  const ahead = [
    ({ x }: Point) => x - left,
    ({ x }: Point) => right - x,
    ({ y }: Point) => y - bottom,
    ({ y }: Point) => top - y
  ];
  return ahead.reduce(keptAhead, corners);
}

function keptAhead(corners: Corners, ahead: (point: Point) => number): Corners {
  return corners.flatMap((point, index) => {
    const next = corners[(index + 1) % corners.length]!;
    const [here, there] = [ahead(point), ahead(next)];
    const kept = here >= -ROUNDING ? [point] : [];
    if (!((here > ROUNDING && there < -ROUNDING) || (here < -ROUNDING && there > ROUNDING))) return kept;
    const share = here / (here - there);
    return [...kept, { x: point.x + share * (next.x - point.x), y: point.y + share * (next.y - point.y) }];
  });
}

function areaOfCorners(corners: Corners): number {
  const [first] = corners;
  if (!first) return 0;
  const twice = corners.reduce((sum, { x, y }, index) => {
    const next = corners[(index + 1) % corners.length]!;
    return sum + (x - first.x) * (next.y - first.y) - (y - first.y) * (next.x - first.x);
  }, 0);
  return twice / 2;
}
