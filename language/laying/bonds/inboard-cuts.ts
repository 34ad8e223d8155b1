import {
  boxShape,
  boundsOf,
  CUTTING_TOLERANCE,
  inFrame,
  type Path,
  pathOf,
  pathsArea,
  type Region
} from '../../geometry/index.ts';
import { cutToColumns, cutToRows } from '../../geometry/courses.ts';
import { isNoWiderThan, piecesOf } from '../../geometry/pieces.ts';
import { columnAt, type CourseRow, courseRows, hasWhole, takeUp } from './course-rows.ts';
import { inboardJoint } from './inboard-joint.ts';
import type { CutUnit, LaidUnits, WholeRun } from '../laid.ts';
import { ownFrame } from './lay-pattern.ts';
import { inOwnFrame, placementOf } from './own-frame.ts';
import type { BondPattern, UnitLattice } from './pattern.ts';
import { pieceOf } from './unit-cut.ts';

/** In metres: what a piece may miss of its unit's end and still begin there. */
const AT_END = CUTTING_TOLERANCE + 1e-9;

/** In metres and square metres. */
const ROUNDING = 1e-6;

/**
 * Courses laid so that none ends in a piece shorter along it than `least`, m: the unit before it is cut as well, and two
 * pieces of about the same length lie there with a joint between them. Where they would still be shorter the course stays
 * as it is. Yields once a course that ends so.
 */
export function* withInboardCuts(
  region: Region,
  pattern: BondPattern,
  laid: LaidUnits,
  least: number
): Generator<void, LaidUnits> {
  const [lattice] = pattern.units;
  if (lattice === undefined || pattern.units.length > 1 || !(least > 0)) return laid;
  const paths = inFrame(region, pattern.frame).map(pathOf);
  const totals = { unitArea: laid.unitArea, jointArea: laid.jointArea, clipped: laid.clipped };
  const wholes: WholeRun[] = [];
  const cuts: CutUnit[] = [];
  for (const row of courseRows(laid, pattern, lattice)) {
    const ends = [...row.cuts].flatMap(([column, cut]) => shortEnd(cut, column, lattice, least) ?? []);
    if (ends.length > 0) {
      const bottom = lattice.y + row.number * lattice.acrossPitch;
      const course = { paths: cutToRows(paths, bottom, bottom + lattice.width), bottom, row };
      for (const end of ends) {
        const two = twoPieces(course, end, pattern, lattice, least);
        if (two === undefined) continue;
        totals.unitArea += two.unitArea;
        totals.jointArea += two.jointArea;
        totals.clipped += 2;
        takeUp(row, end.neighbour);
        row.cuts.set(end.column, two.end);
        row.cuts.set(end.neighbour, two.before);
      }
      yield;
    }
    wholes.push(...row.wholes.map(({ unit, first, step, count }) => ({ unit, first, step, count })));
    cuts.push(...[...row.cuts].sort(([one], [other]) => one - other).map(([, cut]) => cut));
  }
  return { ...laid, ...totals, wholes, cuts };
}

/** A course that ends in a short piece. */
interface ShortEnd {
  readonly column: number;
  /** Column of the unit before it. */
  readonly neighbour: number;
  /** How long the piece is along the course, m. */
  readonly length: number;
}

function shortEnd({ pieces }: CutUnit, column: number, lattice: UnitLattice, least: number): ShortEnd | undefined {
  const [piece, another] = pieces;
  if (piece === undefined || another !== undefined) return undefined;
  const { left, right } = boundsOf(piece.outline);
  const length = right - left;
  const [meetsBefore, meetsAfter] = [left <= AT_END, right >= lattice.length - AT_END];
  if (length >= least - ROUNDING || meetsBefore === meetsAfter) return undefined;
  return { column, neighbour: column + (meetsBefore ? -1 : 1), length };
}

/** A course with what lies in it of the region. */
interface Course {
  readonly row: CourseRow;
  readonly bottom: number;
  readonly paths: readonly Path[];
}

/** The two units in the place of a short piece and the unit before it, and by how much the areas change. */
interface TwoPieces {
  readonly before: CutUnit;
  readonly end: CutUnit;
  readonly unitArea: number;
  readonly jointArea: number;
}

function twoPieces(
  { row, bottom, paths }: Course,
  { column, neighbour, length }: ShortEnd,
  { frame }: BondPattern,
  lattice: UnitLattice,
  least: number
): TwoPieces | undefined {
  if (!isFullLength(row, neighbour, lattice)) return undefined;
  const joint = lattice.alongPitch - lattice.length;
  const endsAfter = column > neighbour;
  const left = columnAt(lattice, row.number, Math.min(column, neighbour));
  const right = left + lattice.alongPitch + lattice.length;
  const [from, to] = endsAfter ? [left, right - lattice.length + length] : [left + lattice.length - length, right];
  const middle = inboardJoint({ from, to, joint, least }, jointsBeside(row.number, lattice, left, right));
  if (middle === undefined) return undefined;
  const both = cutToColumns(paths, left, right);
  const within = (start: number, end: number): Path[] => cutToColumns(both, start, end);
  const areaIn = (start: number, end: number): number => pathsArea(within(start, end));
  const [one, other] = [middle - joint / 2, middle + joint / 2];
  const jointBefore = { start: left + lattice.length, end: left + lattice.alongPitch };
  const cutFrom = (start: number, end: number, unitAt: number): CutUnit | undefined => {
    const paths = within(start, end);
    // Nothing there would be taken for all of it.
    if (pathsArea(paths) <= ROUNDING) return undefined;
    const own = ownFrame(lattice, frame.mirrored, unitAt, bottom);
    const box = boxShape({ left: start - unitAt, right: end - unitAt, bottom: 0, top: lattice.width });
    const [piece, ...others] = piecesOf(inOwnFrame(paths, own), box);
    if (piece === undefined || others.length > 0 || isNoWiderThan(piece, AT_END)) return undefined;
    return { unit: lattice.unit, at: placementOf(own, frame), pieces: [pieceOf(piece)] };
  };
  // Each keeps the end that it has at the unit before it; the other end is sawn.
  const first = cutFrom(left, one, endsAfter ? left : one - lattice.length);
  const last = cutFrom(other, right, endsAfter ? other : right - lattice.length);
  if (first === undefined || last === undefined) return undefined;
  const [before, end] = endsAfter ? [first, last] : [last, first];
  return {
    before,
    end,
    unitArea:
      areaIn(left, one) + areaIn(other, right) - areaIn(left, jointBefore.start) - areaIn(jointBefore.end, right),
    jointArea: areaIn(one, other) - areaIn(jointBefore.start, jointBefore.end)
  };
}

/** Whether what lies in a column reaches from joint to joint, and has not been cut for another end. */
function isFullLength(row: CourseRow, column: number, lattice: UnitLattice): boolean {
  if (hasWhole(row, column)) return true;
  const [piece, another] = row.cuts.get(column)?.pieces ?? [];
  if (piece === undefined || another !== undefined) return false;
  const { left, right } = boundsOf(piece.outline);
  return left <= AT_END && right >= lattice.length - AT_END;
}

/** Middles of the joints of the courses above and below, metres along the course. */
function jointsBeside(row: number, lattice: UnitLattice, left: number, right: number): number[] {
  const { alongPitch, length, offset } = lattice;
  // In stack bond the joint that is given up would count, and the course beside gives it up as well.
  if (offset % 1 === 0) return [];
  return [row - 1, row + 1].flatMap(beside => {
    const joint = columnAt(lattice, beside, 0) - (alongPitch - length) / 2;
    const first = Math.ceil((left - joint) / alongPitch);
    const last = Math.floor((right - joint) / alongPitch);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => joint + (first + index) * alongPitch);
  });
}
