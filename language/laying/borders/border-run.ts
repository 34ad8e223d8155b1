import { boundsOf } from '../../geometry/bounds.ts';
import { type Frame, onPlan, seenFrom } from '../../geometry/frame.ts';
import { CUTTING_TOLERANCE, type Loop, type Point, rectangleLoop, type Side } from '../../geometry/index.ts';
import { intersectionOf } from '../../geometry/loop-clip.ts';
import { angleBetween, SAME_POINT } from '../../geometry/moved-side.ts';
import { distance, pointAlong } from '../../geometry/outline.ts';
import { angleOfJoint, type Curve, jointAngles, jointOfAngle, openingAt } from './border-curve.ts';
import { type Ground, groundOf, type Tally, unitAt } from './border-ground.ts';
import { type Row, rowOver, rowRound } from './border-row.ts';
import { type CourseOfUnits, type CourseRun, sizeOf } from './border.ts';

/** A strip to lay units on in a row. */
export interface StripOfUnits {
  /** The edge the units lie along, with their ground on its left. */
  readonly edge: Side;
  /** How they lie round an arc; absent on a straight edge. */
  readonly curve?: Curve;
  /** The strip from end to end, and whether it closes round a circle without any. */
  readonly shape: readonly Loop[];
  readonly closed: boolean;
  /** What of it is not kept out. */
  readonly ground: readonly Loop[];
}

/** Lays a strip, adding to what has been laid. */
export function layStrip(course: CourseOfUnits, strip: StripOfUnits, tally: Tally): Omit<CourseRun, 'sides'> {
  return strip.curve ? layCurve(course, strip, strip.curve, tally) : layStraight(course, strip, tally);
}

function layStraight(course: CourseOfUnits, strip: StripOfUnits, tally: Tally): Omit<CourseRun, 'sides'> {
  const { from, to } = strip.edge;
  const { along, across } = sizeOf(course);
  const frame = { ...from, direction: Math.atan2(to.y - from.y, to.x - from.x) };
  const onLevel = (side: Side, level: number): boolean =>
    !side.arc && Math.abs(side.from.y - level) < SAME_POINT && Math.abs(side.to.y - level) < SAME_POINT;
  const isRim = (side: Side): boolean => onLevel(side, 0) || onLevel(side, across);
  const ground = groundOf(course, frame, strip.ground, isRim, tally);
  const { left, right } = boundsOf(strip.shape.flatMap(loop => seenFrom(frame, loop)));
  const row = rowOver(right - left, along, course.joint, CUTTING_TOLERANCE);
  const start = (place: number): number => left + row.first + place * row.pitch;
  let whole = 0;
  // One more at either end takes up what a misfit within the tolerance leaves.
  for (let place = -1; place <= row.count; place++) {
    const x = start(place);
    if (row.joint > 0) {
      const joint = rectangleLoop(row.joint, across, { x: x - row.joint, y: 0 }, 0);
      ground.joint(joint, { x: x - row.joint / 2, y: across / 2 });
    }
    if (ground.unit(unitAt(course, { x, y: 0 }, 0))) whole++;
    else whole = closeRun(whole, place);
  }
  closeRun(whole, row.count + 1);
  return { length: right - left, units: row.count, joint: row.joint, fits: row.fits };

  function closeRun(count: number, end: number): 0 {
    if (count > 0) {
      const first = onPlan(frame, unitAt(course, { x: start(end - count), y: 0 }, 0));
      const step = { x: row.pitch * Math.cos(frame.direction), y: row.pitch * Math.sin(frame.direction) };
      tally.wholes.push({ unit: course.unit.key, first, step, count });
    }
    return 0;
  }
}

function layCurve(course: CourseOfUnits, strip: StripOfUnits, curve: Curve, tally: Tally): Omit<CourseRun, 'sides'> {
  const { edge, closed } = strip;
  const centre = edge.arc?.centre ?? edge.from;
  const inwards = (edge.arc?.turn ?? 0) > 0;
  const frame = { ...centre, direction: 0 };
  const isRim = (side: Side): boolean => runsRound(side, curve.inner) || runsRound(side, curve.outer);
  const groundIn = (loops: readonly Loop[]): Ground => groundOf(course, frame, loops, isRim, tally);
  const ground = groundIn(strip.ground);
  const [startGround, endGround] = closed ? [ground, ground] : halvesOf(strip).map(groundIn);
  const { start, row } = rowOnCurve(course, strip, curve);
  const angleOf = (place: number): number => start + row.first + curve.nearAngle + place * row.pitch;
  // Without ends there is one joint for each unit; otherwise one more unit at either end takes up what is left there.
  const [first, last] = closed ? [0, row.count - 1] : [-1, row.count];
  for (let place = first; place <= last; place++) {
    const angle = angleOf(place);
    const at = unitOnCurve(course, curve, angle, inwards);
    const here = (place <= 0 ? startGround : place >= row.count - 1 ? endGround : ground) ?? ground;
    if (here.unit(at))
      tally.wholes.push({ unit: course.unit.key, first: onPlan(frame, at), step: { x: 0, y: 0 }, count: 1 });
    layBehind(here, curve, angle);
    if (closed || place < row.count) layBetween(here, curve, angle, row.pitch);
  }
  const widest = openingAt(curve, row.pitch);
  return {
    units: row.count,
    joint: jointOfAngle(curve, row.joint),
    fits: row.fits,
    opening: { widest, tooWide: widest > course.joint.most + SAME_POINT }
  };
}

/** The ground near either end of a strip, where both ends of it come near each other. */
function halvesOf({ edge, ground }: StripOfUnits): (readonly Loop[])[] {
  const { arc } = edge;
  if (!arc || Math.abs(arc.turn) < Math.PI) return [ground, ground];
  const middle = pointAlong(edge, 0.5);
  const frame = { ...arc.centre, direction: Math.atan2(middle.y - arc.centre.y, middle.x - arc.centre.x) };
  const size = 4 * Math.max(...ground.flat().map(({ from }) => distance(from, arc.centre)), 0);
  if (size === 0) return [ground, ground];
  return [-size, 0].map(bottom => {
    const half = rectangleLoop(2 * size, size, { x: -size, y: bottom }, 0).map(({ from, to }) => ({
      from: onPlan(frame, { ...from, direction: 0 }),
      to: onPlan(frame, { ...to, direction: 0 })
    }));
    return intersectionOf([half], ground);
  });
}

function runsRound({ from, arc }: Side, radius: number): boolean {
  if (!arc) return false;
  const origin = { x: 0, y: 0 };
  return distance(arc.centre, origin) < SAME_POINT && Math.abs(distance(from, arc.centre) - radius) < SAME_POINT;
}

/** Units as angles round the centre, anticlockwise, and the angle at which the row starts. */
function rowOnCurve(course: CourseOfUnits, strip: StripOfUnits, curve: Curve): { start: number; row: Row } {
  const { edge, closed, shape } = strip;
  const centre = edge.arc?.centre ?? edge.from;
  const unit = 2 * curve.nearAngle;
  const limits = jointAngles(curve, course.joint);
  const middle = pointAlong(edge, 0.5);
  const towards = Math.atan2(middle.y - centre.y, middle.x - centre.x);
  if (closed) {
    const row = rowRound(2 * Math.PI, unit, limits);
    if (row) return { start: towards + Math.PI, row };
  }
  const reach = shape.flat().map(({ from }) => angleBetween(centre, middle, from));
  const isRing = shape.length > 1;
  const [low, high] = isRing ? [-Math.PI, Math.PI] : [Math.min(...reach), Math.max(...reach)];
  const row = rowOver(high - low, unit, limits, angleOfJoint(curve, CUTTING_TOLERANCE));
  return { start: towards + low, row };
}

/** Whether whole units close round a full circle. */
export function closesRound(course: CourseOfUnits, curve: Curve): boolean {
  return rowRound(2 * Math.PI, 2 * curve.nearAngle, jointAngles(curve, course.joint)) !== undefined;
}

/** A unit whose middle is seen from the centre, the frame's nought, at an angle. */
function unitOnCurve(course: CourseOfUnits, curve: Curve, angle: number, inwards: boolean): Frame {
  const along = inwards ? angle + Math.PI / 2 : angle - Math.PI / 2;
  const edge = polar(inwards ? curve.far : curve.inner, angle);
  const corner = { x: edge.x - curve.half * Math.cos(along), y: edge.y - curve.half * Math.sin(along) };
  return unitAt(course, corner, along);
}

function polar(radius: number, angle: number): Point {
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}

/** The corner of a unit, so far from the centre, on the side of larger angles (1) or smaller ones (-1). */
function cornerOfUnit({ half }: Curve, off: number, angle: number, way: number): Point {
  const middle = polar(off, angle);
  return { x: middle.x - way * half * Math.sin(angle), y: middle.y + way * half * Math.cos(angle) };
}

function arcAbout(from: Point, to: Point, turn: number): Side {
  return { from, to, arc: { centre: { x: 0, y: 0 }, turn } };
}

/** The joint between a unit's far side and the outer circle. */
function layBehind(ground: Ground, curve: Curve, angle: number): void {
  const { outer, far, farAngle } = curve;
  const [from, to] = [cornerOfUnit(curve, far, angle, -1), cornerOfUnit(curve, far, angle, 1)];
  ground.joint([arcAbout(from, to, 2 * farAngle), { from: to, to: from }], polar((far + outer) / 2, angle));
}

/** The joint between a unit and the next, from circle to circle. */
function layBetween(ground: Ground, curve: Curve, angle: number, pitch: number): void {
  const { inner, outer, far, farAngle } = curve;
  const next = angle + pitch;
  const touching = polar(inner, angle);
  const near = cornerOfUnit(curve, inner, angle, 1);
  const out = cornerOfUnit(curve, far, angle, 1);
  const nextOut = cornerOfUnit(curve, far, next, -1);
  const nextNear = cornerOfUnit(curve, inner, next, -1);
  const nextTouching = polar(inner, next);
  const shape = [
    { from: touching, to: near },
    { from: near, to: out },
    arcAbout(out, nextOut, pitch - 2 * farAngle),
    { from: nextOut, to: nextNear },
    { from: nextNear, to: nextTouching },
    arcAbout(nextTouching, touching, -pitch)
  ];
  ground.joint(shape, polar((inner + outer) / 2, angle + pitch / 2));
}
