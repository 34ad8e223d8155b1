import { cellsOf, type Course, coursesOf, cutToColumns, cutToRows } from '../../geometry/courses.ts';
import { boxShape } from '../../geometry/convex.ts';
import { type CourseFrame, inFrame } from '../../geometry/grid-frame.ts';
import { CUTTING_TOLERANCE, MOST_UNITS, type Region, unitsAbout } from '../../geometry/index.ts';
import { jointLengthOf } from '../../geometry/joint-length.ts';
import { boxRound, pathOf, pathsArea } from '../../geometry/path-clip.ts';
import type { LaidUnits, TooManyUnits } from '../laid.ts';
import type { OwnFrame } from './own-frame.ts';
import {
  type CourseOrder,
  cellsOfOrder,
  firstOrder,
  lengthAt,
  type MixedLengths,
  nextOrder
} from './random-courses-order.ts';
import { type Gathering, gathering, NOTHING_LAID, type UnitKind } from './unit-cut.ts';

/** Courses of one width and several lengths, in an order drawn by a seed. Metres. */
export interface RandomCourses extends CourseFrame {
  /** The units: each has the same share of every course. */
  readonly units: readonly { readonly unit: string; readonly length: number }[];
  readonly width: number;
  readonly joint: number;
  /** A whole number. The same one gives the same courses, whatever the region. */
  readonly seed: number;
  /** The least from a cross joint to one of the next course, middle to middle. */
  readonly jointsApart: number;
}

/** The lengths leave no way to keep the cross joints apart: the first course, counted from the start, without one. */
export interface NoOrder {
  readonly noOrderFor: number;
}

/** Units put in order for each one laid out, at most: a start far from the region has many courses on the way to it. */
const MOST_ORDERED = 10 * MOST_UNITS;

/**
 * Lays courses of mixed lengths over a region. The first course from the start begins with a whole unit there; every
 * other follows from its neighbour nearer the start. Yields after each course; the tolerance is in metres. A pattern or
 * region that holds no area, or no numbers, takes no units.
 */
export function* layRandomCourses(
  region: Region,
  pattern: RandomCourses,
  tolerance = CUTTING_TOLERANCE
): Generator<void, LaidUnits | TooManyUnits | NoOrder> {
  const { units, width, joint } = pattern;
  const mean = units.reduce((sum, { length }) => sum + length, 0) / units.length;
  const about = unitsAbout(region, { ...pattern, length: mean, offset: 0 });
  if (!isLayable(pattern) || !Number.isFinite(about)) return NOTHING_LAID;
  if (about > MOST_UNITS) return { tooMany: about };

  const loops = inFrame(region, pattern);
  const paths = loops.map(pathOf);
  const pitch = width + joint;
  const { bottom, top } = boxRound(paths);
  const orders = yield* ordersBetween(pattern, Math.floor(bottom / pitch), Math.ceil(top / pitch));
  if (!('orderOf' in orders)) return orders;

  const laid = gathering(pattern, tolerance);
  const kinds = units.map(({ unit, length }) => ({
    unit,
    shape: boxShape({ left: 0, right: length, bottom: 0, top: width })
  }));
  for (const course of coursesOf(paths, pitch, 0)) {
    const unitTop = course.bottom + width;
    laid.joints(pathsArea(cutToRows(course.paths, unitTop, course.top)));
    const inUnits = { ...course, top: unitTop, paths: cutToRows(course.paths, course.bottom, unitTop) };
    layCourse(inUnits, orders.orderOf(course.number), { pattern, kinds, laid });
    yield;
  }
  const jointLength = jointLengthOf(loops, pitch, joint, course => cellsOfOrder(orders.orderOf(course)));
  return { ...laid.laid(), jointLength };
}

function isLayable({ origin, direction, units, width, joint, seed, jointsApart }: RandomCourses): boolean {
  const numbers = [origin.x, origin.y, direction, joint, seed, jointsApart];
  const sizes = [width, ...units.map(({ length }) => length)];
  return (
    units.length > 0 && [...numbers, ...sizes].every(Number.isFinite) && sizes.every(size => size > 0) && joint >= 0
  );
}

interface Orders {
  /** The order of a course, by its number. */
  readonly orderOf: (course: number) => CourseOrder;
}

/** The orders of the courses from one to another, each found from its neighbour nearer the first. */
function* ordersBetween(
  { units, joint, seed, jointsApart }: RandomCourses,
  from: number,
  to: number
): Generator<void, Orders | TooManyUnits | NoOrder> {
  const mix: MixedLengths = { pitches: units.map(({ length }) => length + joint), seed, jointsApart };
  const start = firstOrder(mix);
  const ordered = (Math.max(0, to) - Math.min(0, from)) * start.lengths.length;
  if (ordered > MOST_ORDERED) return { tooMany: ordered };
  const orders = new Map([[0, start]]);
  for (const way of [1, -1]) {
    let neighbour = start;
    for (let course = way; way * course <= Math.max(way * from, way * to); course += way) {
      const order = nextOrder(mix, course, neighbour);
      if (!order) return { noOrderFor: course };
      orders.set(course, order);
      neighbour = order;
      yield;
    }
  }
  return { orderOf: course => orders.get(course) ?? start };
}

interface Laying {
  readonly pattern: RandomCourses;
  readonly kinds: readonly UnitKind[];
  readonly laid: Gathering;
}

/** Lays what of the region lies between the two sides of one course of units. */
function layCourse(course: Course, order: CourseOrder, { pattern, kinds, laid }: Laying): void {
  const { width, joint, mirrored } = pattern;
  const cells = cellsOfOrder(order);
  const kindOf = (cell: number): UnitKind | undefined => kinds[lengthAt(order, cell)];
  const lengthOf = (cell: number): number => pattern.units[lengthAt(order, cell)]?.length ?? 0;
  const ownFrame = (cell: number): OwnFrame => ({
    x: cells.at(cell),
    y: mirrored ? course.top : course.bottom,
    ux: 1,
    uy: 0,
    mirrored
  });
  cellsOf(course, cells, {
    full: (first, end) => {
      laid.joints((end - first) * joint * width);
      for (let cell = first, next = first; cell < end; cell = next) {
        const kind = kindOf(cell);
        while (next < end && kindOf(next) === kind) next++;
        if (kind) laid.wholes(kind, ownFrame(cell), { count: next - cell, stepX: lengthOf(cell) + joint, stepY: 0 });
      }
    },
    partial: (cell, paths) => {
      const kind = kindOf(cell);
      if (kind) laid.clip(kind, ownFrame(cell), paths);
      laid.joints(pathsArea(cutToColumns(paths, cells.at(cell) + lengthOf(cell), cells.at(cell + 1))));
    }
  });
}
