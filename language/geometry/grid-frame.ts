import { reversedLoop, signedAreaOf } from './outline.ts';
import type { Loop, Point, Region } from './shapes.ts';

/** Where courses start and how they run. Metres on the plan. */
export interface CourseFrame {
  /** Where the first unit's corner lies. */
  readonly origin: Point;
  /** Direction the courses run, radians anticlockwise from the x axis. */
  readonly direction: number;
  /** The courses follow each other to the right of that direction instead of to the left. */
  readonly mirrored: boolean;
}

/** A field of rectangular units in courses. Lengths in metres. */
export interface UnitGrid extends CourseFrame {
  /** Of a unit, along the course. */
  readonly length: number;
  /** Of a unit, across the course. */
  readonly width: number;
  readonly joint: number;
  /** Share of length and joint by which each course is shifted on from the one before: 0 stack bond, 0.5 half bond. */
  readonly offset: number;
}

/** Outlines as seen along the courses, x along and y across them: the outer one anticlockwise, the holes clockwise. */
export function inFrame(region: Region, frame: CourseFrame): Loop[] {
  const cosine = Math.cos(frame.direction);
  const sine = Math.sin(frame.direction);
  const across = frame.mirrored ? -1 : 1;
  const place = (point: Point): Point => {
    const x = point.x - frame.origin.x;
    const y = point.y - frame.origin.y;
    return { x: x * cosine + y * sine, y: across * (y * cosine - x * sine) };
  };
  const turned = (loop: Loop, way: number): Loop => {
    const placed = loop.map(({ from, to, arc }) =>
      arc
        ? { from: place(from), to: place(to), arc: { centre: place(arc.centre), turn: across * arc.turn } }
        : { from: place(from), to: place(to) }
    );
    return signedAreaOf(placed) * way < 0 ? reversedLoop(placed) : placed;
  };
  return [turned(region.outer, 1), ...region.holes.map(hole => turned(hole, -1))];
}

/** A place of a frame, on the plan. */
export function outOfFrame({ origin, direction, mirrored }: CourseFrame, { x, y }: Point): Point {
  const cosine = Math.cos(direction);
  const sine = Math.sin(direction);
  const across = mirrored ? -y : y;
  return { x: origin.x + x * cosine - across * sine, y: origin.y + x * sine + across * cosine };
}

/** The shift of a course against the first, in metres along it: less than a unit and its joint. */
export function shiftOf(course: number, grid: UnitGrid): number {
  const pitches = course * grid.offset;
  return (pitches - Math.floor(pitches)) * (grid.length + grid.joint);
}

/** Whether a grid can be laid at all: lengths above nought, no joint below nought, and everything a number. */
export function isLayable({ origin, direction, length, width, joint, offset }: UnitGrid): boolean {
  const numbers = [origin.x, origin.y, direction, length, width, joint, offset];
  return numbers.every(Number.isFinite) && length > 0 && width > 0 && joint >= 0;
}
