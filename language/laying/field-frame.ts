import {
  type Arc,
  around,
  type Bounds,
  boundsOf,
  distance,
  type CourseFrame,
  inFrame,
  type Loop,
  outOfFrame,
  type Point,
  pointAlong,
  radiusOf,
  type Region,
  type Side,
  sideLength,
  signedAreaOf,
  turnedAbout
} from '../geometry/index.ts';

/** How the first unit lies, as said: metres and radians; sides count from nought. */
export interface StartSaid {
  readonly along?: number;
  readonly whole: readonly number[];
  readonly equalCuts: boolean;
  readonly from?: Point;
  readonly shifted?: Point;
  readonly turned?: number;
  readonly jointLine?: { readonly at: Point; readonly side: number };
  /** Joint lines go on from a field laid like this. */
  readonly carriedOn?: CourseFrame;
}

/** The sizes that a start goes by: of the unit in the corner and of the step to the next, along and across the courses. */
export interface Steps {
  readonly length: number;
  readonly width: number;
  readonly alongPitch: number;
  readonly acrossPitch: number;
}

/** Cosine of the angle to the courses from which on a side counts as running along them: half a right angle, and a hair. */
const ALONG = Math.SQRT1_2 - 1e-9;

/**
 * Where a field's courses begin and run. `reach` tells how far the field's edge lies within each side of the outline
 * (borders stand there), metres. Without a start the first unit lies in the outline's first corner and the courses run
 * along its first straight side; in an outline of arcs alone, in the corner of the box round it.
 */
export function fieldFrame(
  outline: Loop,
  reach: readonly number[],
  field: readonly Region[],
  start: StartSaid,
  steps: Steps,
  turn: number
): CourseFrame {
  const base = start.carriedOn ?? besideSide(outline, reach, start);
  const turned = (turn + (start.turned ?? 0)) * (base.mirrored ? -1 : 1);
  let frame: CourseFrame = { ...base, direction: base.direction + turned };
  if (start.jointLine !== undefined) frame = onJointLine(frame, outline, start.jointLine, steps);
  for (const side of start.whole) frame = wholeAlong(frame, lineWithin(outline, reach, side), steps);
  if (start.equalCuts) frame = { ...frame, origin: outOfFrame(frame, { x: centred(frame, field, steps), y: 0 }) };
  return start.shifted === undefined ? frame : { ...frame, origin: outOfFrame(frame, start.shifted) };
}

/** A straight line on the plan that an outline's side lies on, moved in as far as the field begins. */
export interface Line {
  readonly at: Point;
  readonly direction: number;
  /** Of length one, towards the inside. */
  readonly inward: Point;
}

export function lineWithin(outline: Loop, reach: readonly number[], side: number): Line {
  const { from, to } = outline[side]!;
  const direction = Math.atan2(to.y - from.y, to.x - from.x);
  const way = signedAreaOf(outline) < 0 ? -1 : 1;
  const inward = { x: -way * Math.sin(direction), y: way * Math.cos(direction) };
  const by = reach[side] ?? 0;
  return { at: { x: from.x + by * inward.x, y: from.y + by * inward.y }, direction, inward };
}

/** The corner where a side's courses begin, and the way they run; from its other end they run back. */
function besideSide(outline: Loop, reach: readonly number[], start: StartSaid): CourseFrame {
  const side = start.along ?? start.whole[0] ?? outline.findIndex(({ arc }) => arc === undefined);
  const one = outline[side];
  if (one === undefined) {
    const { left, bottom } = boundsOf(outline);
    return { origin: { x: left, y: bottom }, direction: 0, mirrored: false };
  }
  const clockwise = signedAreaOf(outline) < 0;
  const line = lineWithin(outline, reach, side);
  const { from } = start;
  const back = from !== undefined && distance(from, one.to) < distance(from, one.from);
  const beside = (side + (back ? 1 : outline.length - 1)) % outline.length;
  const frame = {
    origin: line.at,
    direction: line.direction + (back ? Math.PI : 0),
    mirrored: clockwise !== back
  };
  const corner = meet(line, lineWithin(outline, reach, beside)) ?? (back ? one.to : line.at);
  const atCorner = from === undefined || Math.min(distance(from, one.from), distance(from, one.to)) < NEAR_CORNER;
  if (atCorner) return { ...frame, origin: corner };
  return { ...frame, origin: foot(line, from) };
}

/** A start from within this distance of a corner is from the corner, m. */
const NEAR_CORNER = 1e-6;

function meet(one: Line, other: Line): Point | undefined {
  const sine = Math.sin(other.direction - one.direction);
  // Nearly in one line they meet far away or nowhere.
  if (Math.abs(sine) < 1e-3) return undefined;
  const [x, y] = [other.at.x - one.at.x, other.at.y - one.at.y];
  const along = (x * Math.sin(other.direction) - y * Math.cos(other.direction)) / sine;
  return { x: one.at.x + along * Math.cos(one.direction), y: one.at.y + along * Math.sin(one.direction) };
}

function foot({ at, direction }: Line, { x, y }: Point): Point {
  const along = (x - at.x) * Math.cos(direction) + (y - at.y) * Math.sin(direction);
  return { x: at.x + along * Math.cos(direction), y: at.y + along * Math.sin(direction) };
}

/** A point of the plan as seen in a frame. */
export function placeIn(frame: CourseFrame, point: Point): Point {
  const { x, y } = turnedAbout(point, frame.origin, -frame.direction);
  const across = y - frame.origin.y;
  return { x: x - frame.origin.x, y: frame.mirrored ? -across : across };
}

/** Moves a frame so that units end right at a line: at its near side they begin there, at its far side they end. */
function wholeAlong(frame: CourseFrame, line: Line, { alongPitch, acrossPitch, length, width }: Steps): CourseFrame {
  const { x, y } = placeIn(frame, line.at);
  const along = { x: Math.cos(frame.direction), y: Math.sin(frame.direction) };
  const onward = frame.mirrored ? { x: along.y, y: -along.x } : { x: -along.y, y: along.x };
  const across = Math.abs(Math.cos(line.direction - frame.direction)) >= ALONG;
  const way = across ? onward : along;
  const near = way.x * line.inward.x + way.y * line.inward.y > 0;
  const move = across
    ? { x: 0, y: near ? y : y + acrossPitch - width }
    : { x: near ? x : x + alongPitch - length, y: 0 };
  return { ...frame, origin: outOfFrame(frame, move) };
}

/** In radians: sides no further out of parallel face each other squarely. */
const PARALLEL = 1e-6;

/** Whether a straight side counts as running along the courses; else it runs across them. */
export function runsAlong({ from, to }: Side, { direction }: CourseFrame): boolean {
  return Math.abs(Math.cos(Math.atan2(to.y - from.y, to.x - from.x) - direction)) >= ALONG;
}

/** How far apart two sides that face each other are, m, and whether across the courses or along them. */
export function widthBetween(
  outline: Loop,
  reach: readonly number[],
  [one, other]: readonly [number, number],
  frame: CourseFrame
): { readonly way: 'along' | 'across'; readonly width: number } | undefined {
  if (outline[one]?.arc !== undefined || outline[other]?.arc !== undefined) return undefined;
  const [first, second] = [lineWithin(outline, reach, one), lineWithin(outline, reach, other)];
  const facing = first.inward.x * second.inward.x + first.inward.y * second.inward.y;
  if (facing > -1 + PARALLEL * PARALLEL) return undefined;
  const width = (second.at.x - first.at.x) * first.inward.x + (second.at.y - first.at.y) * first.inward.y;
  return width > 0 ? { way: runsAlong(outline[one]!, frame) ? 'across' : 'along', width } : undefined;
}

/** Moves a frame so that one of its joints lies on a joint line that crosses a side. */
function onJointLine(
  frame: CourseFrame,
  outline: Loop,
  { at, side }: { readonly at: Point; readonly side: number },
  { alongPitch, acrossPitch, length, width }: Steps
): CourseFrame {
  const place = placeIn(frame, at);
  const move = runsAlong(outline[side]!, frame)
    ? { x: place.x + (alongPitch - length) / 2, y: 0 }
    : { x: 0, y: place.y + (acrossPitch - width) / 2 };
  return { ...frame, origin: outOfFrame(frame, move) };
}

/** Along the courses to where a unit begins, so that both ends of the field are cut alike: the larger cut of two ways. */
function centred(frame: CourseFrame, field: readonly Region[], { length, alongPitch }: Steps): number {
  const { left, right } = boundsIn(frame, field);
  const middle = (left + right) / 2;
  const gap = alongPitch - length;
  const half = (right - left) / 2;
  const piece = (beginsAt: number): number => {
    const over = (((half - beginsAt) % alongPitch) + alongPitch) % alongPitch;
    return over >= length - WHOLE || over <= WHOLE ? length : over;
  };
  // A joint in the middle, or the middle of a unit.
  return piece(gap / 2) >= piece(-length / 2) ? middle + gap / 2 : middle - length / 2;
}

/** The box round regions as a frame sees them, m. */
export function boundsIn(frame: CourseFrame, regions: readonly Region[]): Bounds {
  return regions
    .map(region => boundsOf(inFrame(region, frame)[0] ?? []))
    .reduce((all, box) => around(all, box), NOWHERE);
}

const NOWHERE: Bounds = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };

/** A cut narrower than this is none, nor is one that leaves less, m. */
const WHOLE = 0.0005;

/** The line square to a side of an outline at so many metres along it, as far as the outline reaches. */
export function acrossFrom(outline: Loop, side: number, at: number): { readonly from: Point; readonly to: Point } {
  const one = outline[side]!;
  const start = pointAlong(one, at / sideLength(one));
  const inward =
    one.arc === undefined ? lineWithin(outline, [], side).inward : towardsInside(outline, one, one.arc, start);
  const { left, right, bottom, top } = boundsOf(outline);
  const reach = Math.hypot(right - left, top - bottom);
  return { from: start, to: { x: start.x + reach * inward.x, y: start.y + reach * inward.y } };
}

/** Square to an arc at a point of it, of length one. */
function towardsInside(outline: Loop, side: Side, arc: Arc, { x, y }: Point): Point {
  const way = Math.sign(arc.turn) * (signedAreaOf(outline) < 0 ? -1 : 1);
  const radius = radiusOf(side, arc);
  return { x: (way * (arc.centre.x - x)) / radius, y: (way * (arc.centre.y - y)) / radius };
}
