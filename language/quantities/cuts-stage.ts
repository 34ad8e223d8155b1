import type { Key } from '../job/job.ts';
import type { CutGroup, CutList } from '../laying/cut-list.ts';
import type { LaidArea } from '../laying/lay-area.ts';
import { makeCutList } from '../laying/make-cut-list.ts';
import type { UnitShape } from '../laying/unit-shape.ts';

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
}

/** All cuts of an area as one list, in steps: those of the field first. */
export function* cutsStage({ laid, shapes }: CutsInputs): Generator<void, AreaCuts> {
  const byKey = new Map(shapes.map(shape => [shape.key, shape]));
  const cuts = laid.parts.flatMap(part => part.laid.cuts);
  const list = yield* makeCutList(cuts, unit => byKey.get(unit)!);
  return { list, units: shapes.map(({ key }) => unitCuts(key, list)) };
}

function unitCuts(unit: Key, { groups }: CutList): UnitCuts {
  const own = groups.filter(group => group.unit === unit);
  const sum = (of: (group: CutGroup) => number): number =>
    own.reduce((total, group) => total + group.count * of(group), 0);
  const pieces = own.flatMap(group => group.pieces);
  return {
    unit,
    cut: sum(() => 1),
    straightCuts: sum(group => group.straightCuts),
    sawLength: sum(group => group.sawLength),
    ...(pieces.length === 0
      ? {}
      : {
          smallestPiece: Math.min(...pieces.map(({ area }) => area)),
          smallestShare: Math.min(...pieces.map(({ share }) => share)),
          narrowestPiece: Math.min(...pieces.map(({ narrowest }) => narrowest))
        })
  };
}
