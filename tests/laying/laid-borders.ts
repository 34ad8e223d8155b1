import { Clipper, FillRule } from 'clipper2-ts';
import { layBorders } from '../../language/laying/borders/borders.ts';
import type {
  BandCourse,
  BorderCourse,
  BorderFault,
  CourseOfUnits,
  JointLimits,
  LaidBorders,
  LaidCourse
} from '../../language/laying/borders/border.ts';
import { onPlan } from '../../language/geometry/frame.ts';
import { type Loop, rectangleLoop, type Region, regionArea } from '../../language/geometry/index.ts';
import { pointAlong } from '../../language/geometry/outline.ts';
import type { Placement } from '../../language/laying/laid.ts';

/** 200 by 100 mm. */
export const BLOCK = { key: 'block', length: 0.2, width: 0.1 };

export function exactly(joint: number): JointLimits {
  return { least: joint, usual: joint, most: joint };
}

export function allRound(outer: Loop): boolean[] {
  return outer.map(() => true);
}

/** What laying comes to: borders and bands, or why there are none. */
export function toTheEnd(region: Region, courses: readonly BorderCourse[], bands: readonly BandCourse[] = []) {
  const laying = layBorders(region, courses, bands);
  for (let step = laying.next(); ; step = laying.next()) if (step.done) return step.value;
}

export function laidBorders(
  region: Region,
  courses: readonly BorderCourse[],
  bands: readonly BandCourse[] = []
): LaidBorders {
  const laid = toTheEnd(region, courses, bands);
  if ('tooMany' in laid) throw new Error(`about ${laid.tooMany} units`);
  if ('fault' in laid) throw new Error(JSON.stringify(laid));
  return laid;
}

export function faultOf(region: Region, courses: readonly BorderCourse[], bands: readonly BandCourse[] = []) {
  const laid = toTheEnd(region, courses, bands);
  return 'fault' in laid ? (laid satisfies BorderFault) : undefined;
}

export function counts({ laid }: LaidCourse): { whole: number; cut: number } {
  return { whole: laid.wholes.reduce((sum, { count }) => sum + count, 0), cut: laid.cuts.length };
}

/** Square metres of field, units and joints together. */
export function laidArea({ borders, bands, field }: LaidBorders): number {
  const courses = [...borders, ...bands].reduce((sum, { laid }) => sum + laid.unitArea + laid.jointArea, 0);
  return courses + field.reduce((sum, region) => sum + regionArea(region), 0);
}

/** Outlines on the plan of every piece of every unit, a course at a time. */
export function laidShapes({ laid }: LaidCourse, { unit }: CourseOfUnits): Region[] {
  const whole = { outer: rectangleLoop(unit.length, unit.width, { x: 0, y: 0 }, 0), holes: [] };
  return [
    ...laid.wholes.flatMap(({ first, step, count }) =>
      Array.from({ length: count }, (_, place) =>
        placed(whole, { ...first, x: first.x + place * step.x, y: first.y + place * step.y })
      )
    ),
    ...laid.cuts.flatMap(({ at, pieces }) => pieces.map(({ outline, holes }) => placed({ outer: outline, holes }, at)))
  ];
}

function placed({ outer, holes }: Region, at: Placement): Region {
  const point = ({ x, y }: { x: number; y: number }) => onPlan(at, { x, y, direction: 0 });
  const loop = (sides: Loop): Loop =>
    sides.map(({ from, to, arc }) => ({
      from: point(from),
      to: point(to),
      ...(arc && { arc: { centre: point(arc.centre), turn: arc.turn } })
    }));
  return { outer: loop(outer), holes: holes.map(loop) };
}

const NANOMETRE = 1e-9;
const CHORDS = 200;

function paths(region: Region) {
  return [region.outer, ...region.holes].map(loop =>
    loop
      .flatMap(side =>
        side.arc ? Array.from({ length: CHORDS }, (_, part) => pointAlong(side, part / CHORDS)) : [side.from]
      )
      .map(({ x, y }) => ({ x: Math.round(x / NANOMETRE), y: Math.round(y / NANOMETRE) }))
  );
}

function area(found: { x: number; y: number }[][]): number {
  return Math.abs(Clipper.areaPaths(found)) * NANOMETRE * NANOMETRE;
}

/** By an independent library on chords: square metres that shapes cover more than once, or outside a region. */
export function misplaced(shapes: readonly Region[], within: Region): { twice: number; outside: number } {
  const all = shapes.map(shape => Clipper.union(paths(shape), FillRule.EvenOdd));
  const sum = all.reduce((total, shape) => total + area(shape), 0);
  const union = Clipper.union(all.flat(), FillRule.NonZero);
  const ground = Clipper.union(paths(within), FillRule.EvenOdd);
  return { twice: sum - area(union), outside: area(Clipper.difference(union, ground, FillRule.NonZero)) };
}
