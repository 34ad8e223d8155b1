import type { Convex } from '../../geometry/convex.ts';
import { cutOf } from '../../geometry/cut-unit.ts';
import type { CourseFrame } from '../../geometry/grid-frame.ts';
import { joinedLoopOf } from '../../geometry/loop-of-path.ts';
import type { Path } from '../../geometry/path-clip.ts';
import type { Piece as CutPiece } from '../../geometry/pieces.ts';
import type { CutUnit, LaidUnits, Piece, WholeRun } from '../laid.ts';
import { inOwnFrame, onPlan, type OwnFrame, placementOf } from './own-frame.ts';

/** A kind of unit: its key, and its shape in its own frame. */
export interface UnitKind {
  readonly unit: string;
  readonly shape: Convex;
}

/** Units of one kind in a row, in the frame of their courses; a single one has a step of nought. */
export interface Row {
  readonly count: number;
  readonly stepX: number;
  readonly stepY: number;
}

const SINGLE: Row = { count: 1, stepX: 0, stepY: 0 };

/** Gathers what is laid of a region, unit by unit. Places are in the frame of the courses. */
export interface Gathering {
  readonly wholes: (kind: UnitKind, first: OwnFrame, row: Row) => void;
  /** Clips what of the region lies about a unit to it, and gathers what is laid of it. */
  readonly clip: (kind: UnitKind, own: OwnFrame, paths: readonly Path[]) => void;
  /** The same of what is clipped to the unit already. */
  readonly clipped: (kind: UnitKind, own: OwnFrame, paths: readonly Path[]) => void;
  readonly joints: (area: number) => void;
  readonly laid: () => LaidUnits;
}

/** Starts gathering; the cutting tolerance is in metres. */
export function gathering(courses: CourseFrame, tolerance: number): Gathering {
  const wholes: WholeRun[] = [];
  const cuts: CutUnit[] = [];
  let unitArea = 0;
  let jointArea = 0;
  let clipped = 0;
  const addWholes = ({ unit }: UnitKind, first: OwnFrame, { count, stepX, stepY }: Row): void => {
    wholes.push({ unit, first: placementOf(first, courses), step: onPlan(stepX, stepY, courses), count });
  };
  const cutUnit = (kind: UnitKind, own: OwnFrame, inUnit: readonly Path[]): void => {
    clipped++;
    const found = cutOf(inUnit, kind.shape, tolerance);
    if (!found) return;
    unitArea += found.area;
    if (found.isWhole) addWholes(kind, own, SINGLE);
    if (found.pieces.length === 0) return;
    cuts.push({ unit: kind.unit, at: placementOf(own, courses), pieces: found.pieces.map(pieceOf) });
  };
  return {
    wholes: (kind, first, row) => {
      unitArea += row.count * kind.shape.area;
      addWholes(kind, first, row);
    },
    clip: (kind, own, paths) => cutUnit(kind, own, kind.shape.clip(inOwnFrame(paths, own))),
    clipped: (kind, own, paths) => cutUnit(kind, own, inOwnFrame(paths, own)),
    joints: area => {
      jointArea += area;
    },
    laid: () => ({ wholes, cuts, unitArea, jointArea, clipped })
  };
}

/** A piece as it is told: in its unit's own frame. */
export function pieceOf({ rim, holes, area }: CutPiece): Piece {
  return { outline: joinedLoopOf(rim), holes: holes.map(joinedLoopOf), area };
}

/** What laying comes to where there is nothing to lay. */
export const NOTHING_LAID: LaidUnits = { wholes: [], cuts: [], unitArea: 0, jointArea: 0, clipped: 0 };
