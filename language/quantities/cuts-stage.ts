import type { Key } from '../job/job.ts';
import type { CutGroup, CutList } from '../laying/cut-list/cut-list.ts';
import type { LaidArea } from '../laying/lay-area.ts';
import { makeCutList } from '../laying/cut-list/make-cut-list.ts';
import { sliversIn } from '../laying/cut-list/slivers.ts';
import type { UnitShape } from '../laying/cut-list/unit-shape.ts';

/** What the cut list reads: what is laid, and the shape of each kind of unit. */
export interface CutsInputs {
  readonly laid: LaidArea;
  readonly shapes: readonly KindOfUnit[];
}

export interface KindOfUnit extends UnitShape {
  readonly key: Key;
}

/** The cut list of one area, and what it comes to by kind of unit. */
export interface AreaCuts {
  readonly list: CutList;
  readonly units: readonly UnitCuts[];
}

/** m, m2. */
export interface UnitCuts {
  readonly unit: Key;
  readonly cut: number;
  readonly straightCuts: number;
  readonly sawLength: number;
  readonly smallestPiece?: number;
  /** Share of a whole unit. */
  readonly smallestShare?: number;
  readonly narrowestPiece?: number;
  /** Pieces by their share of a whole unit. */
  readonly underThird: number;
  readonly underQuarter: number;
  /** Pieces narrow for all of one side of their unit, and the narrowest of them. */
  readonly slivers: number;
  readonly narrowestSliver?: number;
}

/** A share met exactly passes, whatever rounding makes of it. */
const HAIR = 1e-9;

/** All cuts of an area as one list, in steps: those of the field first. */
export function* cutsStage({ laid, shapes }: CutsInputs): Generator<void, AreaCuts> {
  const byKey = new Map(shapes.map(shape => [shape.key, shape]));
  const cuts = laid.parts.flatMap(part => part.laid.cuts);
  const list = yield* makeCutList(cuts, unit => byKey.get(unit)!);
  return { list, units: shapes.map(shape => unitCuts(shape, list)) };
}

function unitCuts(shape: KindOfUnit, { groups }: CutList): UnitCuts {
  const { key: unit } = shape;
  const own = groups.filter(group => group.unit === unit);
  const sum = (of: (group: CutGroup) => number): number =>
    own.reduce((total, group) => total + group.count * of(group), 0);
  const pieces = own.flatMap(group => group.pieces);
  const under = (share: number): number =>
    sum(group => group.pieces.filter(piece => piece.share < share - HAIR).length);
  const slivers = own.map(group => ({ count: group.count, all: sliversIn(group.pieces, shape) }));
  const widths = slivers.flatMap(({ all }) => all.map(({ narrowest }) => narrowest));
  return {
    unit,
    cut: sum(() => 1),
    straightCuts: sum(group => group.straightCuts),
    sawLength: sum(group => group.sawLength),
    underThird: under(1 / 3),
    underQuarter: under(1 / 4),
    slivers: slivers.reduce((total, { count, all }) => total + count * all.length, 0),
    ...(widths.length === 0 ? {} : { narrowestSliver: Math.min(...widths) }),
    ...(pieces.length === 0
      ? {}
      : {
          smallestPiece: Math.min(...pieces.map(({ area }) => area)),
          smallestShare: Math.min(...pieces.map(({ share }) => share)),
          narrowestPiece: Math.min(...pieces.map(({ narrowest }) => narrowest))
        })
  };
}
