import { apart, boundsOf } from '../../geometry/bounds.ts';
import { isDegenerate, type Loop, MOST_UNITS, perimeterOf, type Region } from '../../geometry/index.ts';
import { differenceOf, intersectionOf } from '../../geometry/loop-clip.ts';
import { distance } from '../../geometry/outline.ts';
import { regionsOf, runAs } from '../../geometry/regions-of.ts';
import { bandStrips } from './band-strips.ts';
import { sumOf } from './border-cut.ts';
import { laidUnits, newTally } from './border-ground.ts';
import { type OutlineSide, outlineSides } from './border-outline.ts';
import { layStrip } from './border-run.ts';
import { type CourseStrips, stripsAlong } from './border-strips.ts';
import {
  type BandCourse,
  type BorderCourse,
  type BorderFault,
  type CourseOfUnits,
  type LaidBorders,
  type LaidCourse,
  sizeOf
} from './border.ts';
import type { TooManyUnits } from '../laid.ts';

/**
 * Lays borders, from the outside to the inside, and bands over paving: courses along its outline first, then those round
 * what is kept out, then bands, each within what the ones before it leave. Units, joints and field together are the
 * paving less what is kept out. Yields after each run of units, so that a caller can abandon it.
 */
export function* layBorders(
  paving: Region,
  courses: readonly BorderCourse[],
  bands: readonly BandCourse[]
): Generator<void, LaidBorders | BorderFault | TooManyUnits> {
  const fault = faultOfSizes(courses, bands);
  if (fault) return fault;
  const about = unitsAbout(paving, courses, bands);
  if (about > MOST_UNITS) return { tooMany: about };
  const borders = courses.map(noCourse);
  if (isDegenerate(paving.outer)) return { borders, bands: bands.map(noCourse), field: [] };

  const keptOut = paving.holes.map(hole => runAs(hole, 'outer'));
  let outline = outlineSides(paving.outer, 'inside', alikeTo(courses));
  for (const [place, course] of courses.entries()) {
    const { along } = course;
    if ('hole' in along) continue;
    const strips = stripsAlong(outline, course, ({ sides: [side] }) => side !== undefined && along[side] === true);
    if ('fault' in strips) return { ...strips, of: 'borders', course: place };
    borders[place] = yield* layCourse(course, strips, loops => without(loops, keptOut));
    outline = [...strips.inner];
  }

  let field = without([runAs(loopOf(outline), 'outer')], keptOut);
  for (const [hole, loop] of paving.holes.entries()) {
    let around = outlineSides(loop, 'outside', () => true);
    for (const [place, course] of courses.entries()) {
      if (!('hole' in course.along) || course.along.hole !== hole) continue;
      const strips = stripsAlong(around, course, ({ sides }) => sides.length > 0);
      if ('fault' in strips) return { ...strips, of: 'borders', course: place, hole };
      const ground = field;
      borders[place] = yield* layCourse(course, strips, loops => intersectionOf(loops, ground), hole);
      around = [...strips.inner];
      field = without(field, [runAs(loopOf(around), 'outer')]);
    }
  }

  const laidBands: LaidCourse[] = [];
  for (const band of bands) {
    const laid = yield* layBand(field, band);
    laidBands.push(laid.course);
    field = laid.left;
  }
  return { borders, bands: laidBands, field: regionsOf(field) };
}

function noCourse(): LaidCourse {
  return { laid: laidUnits(newTally()), runs: [] };
}

function loopOf(outline: readonly OutlineSide[]): Loop {
  return outline.map(({ side }) => side);
}

/** Whether every course along the outline runs along both of two sides or along neither. */
function alikeTo(courses: readonly BorderCourse[]): (side: number, other: number) => boolean {
  return (side, other) => courses.every(({ along }) => 'hole' in along || along[side] === along[other]);
}

/** What of areas is not kept out. */
function without(loops: readonly Loop[], keptOut: readonly Loop[]): Loop[] {
  let left = [...loops];
  for (const loop of keptOut)
    if (left.some(other => !apart(boundsOf(other), boundsOf(loop), 0))) left = differenceOf(left, [loop]);
  return left;
}

function* layCourse(
  course: BorderCourse,
  { strips, joints }: CourseStrips,
  ground: (loops: readonly Loop[]) => readonly Loop[],
  hole?: number
): Generator<void, LaidCourse> {
  const tally = newTally();
  const runs = [];
  for (const { sides, edge, curve, closed, units, joint } of strips) {
    const strip = { edge, ...(curve && { curve }), closed, shape: units, ground: ground(units) };
    runs.push({ sides, ...(hole !== undefined && { hole }), ...layStrip(course, strip, tally) });
    tally.jointArea += sumOf(ground(joint));
    yield;
  }
  for (const joint of joints) tally.jointArea += sumOf(ground([joint]));
  return { laid: laidUnits(tally), runs };
}

function* layBand(field: readonly Loop[], band: BandCourse): Generator<void, { course: LaidCourse; left: Loop[] }> {
  const tally = newTally();
  const runs = [];
  let left = [...field];
  for (const { edge, all, units, joints } of bandStrips(field, band)) {
    if (units.length > 0)
      runs.push({ sides: [], ...layStrip(band, { edge, closed: false, shape: units, ground: units }, tally) });
    tally.jointArea += sumOf(joints);
    left = differenceOf(left, all);
    yield;
  }
  return { course: { laid: laidUnits(tally), runs }, left };
}

function faultOfSizes(courses: readonly BorderCourse[], bands: readonly BandCourse[]): BorderFault | undefined {
  const faulty = (course: CourseOfUnits): boolean => {
    const { along, across } = sizeOf(course);
    const { least, usual, most } = course.joint;
    return !(
      along > 0 &&
      across > 0 &&
      0 <= least &&
      least <= usual &&
      usual <= most &&
      along + across + most < Infinity
    );
  };
  const border = courses.findIndex(faulty);
  if (border >= 0) return { fault: 'not-a-size', of: 'borders', course: border };
  const band = bands.findIndex(course => faulty(course) || !(distance(course.from, course.to) > 0));
  return band >= 0 ? { fault: 'not-a-size', of: 'bands', course: band } : undefined;
}

/** About how many units all courses take, more rather than less. */
function unitsAbout({ outer, holes }: Region, courses: readonly BorderCourse[], bands: readonly BandCourse[]): number {
  const round = perimeterOf(outer);
  const lengths = [
    ...courses.map(course => ('hole' in course.along ? perimeterOf(holes[course.along.hole] ?? []) : round)),
    ...bands.map(() => round / 2)
  ];
  return [...courses, ...bands].reduce(
    (sum, course, place) => sum + Math.ceil((lengths[place] ?? 0) / sizeOf(course).along),
    0
  );
}
