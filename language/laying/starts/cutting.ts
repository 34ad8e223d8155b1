import { narrowestWidthOf, perimeterOf } from '../../geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../area-to-lay.ts';
import type { LaidArea } from '../lay-area.ts';
import { isOnUnitSide } from '../cut-list/saw-lines.ts';
import { type UnitOutline, unitOutline } from '../cut-list/unit-shape.ts';

/** What laying an area asks of whoever cuts. */
export interface Cutting {
  /** Units that are cut. */
  readonly cutUnits: number;
  /** Pieces narrower than the limit. */
  readonly slivers: number;
  /** Width of the narrowest piece, m; absent where nothing is cut. */
  readonly narrowest?: number;
  /** Metres sawn. */
  readonly sawLength: number;
}

/** Counts the cuts of all parts of an area; a piece narrower than `leastPiece`, m, is a sliver. */
export function cuttingOf({ parts }: LaidArea, area: AreaToLay, leastPiece: number): Cutting {
  const outlines = unitOutlines(area);
  let [cutUnits, slivers, sawLength, narrowest] = [0, 0, 0, Infinity];
  for (const { unit, pieces } of parts.flatMap(({ laid }) => laid.cuts)) {
    cutUnits++;
    for (const piece of pieces) {
      const width = narrowestWidthOf(piece.outline);
      if (width < leastPiece - ROUNDING) slivers++;
      narrowest = Math.min(narrowest, width);
      const outline = outlines.get(unit)!;
      const sides = [...piece.outline, ...piece.holes.flat()];
      sawLength += perimeterOf(sides.filter(side => !isOnUnitSide(side, outline)));
    }
  }
  return { cutUnits, slivers, sawLength, ...(narrowest === Infinity ? {} : { narrowest }) };
}

/** In metres: a piece of just the limit is none narrower. */
const ROUNDING = 1e-6;

function unitOutlines({ field, insets, borders, bands }: AreaToLay): Map<string, UnitOutline> {
  const rectangles = [...borders, ...bands].map(({ unit }) => unit);
  const shapeIn = ({ bond }: FieldToLay) => (bond.way === 'hexagons' ? 'hexagon' : 'rectangle');
  return new Map([
    ...rectangles.map(unit => [unit.key, unitOutline({ shape: 'rectangle', ...unit })] as const),
    ...[field, ...insets.map(inset => inset.field)].flatMap(one =>
      one.units.map(unit => [unit.key, unitOutline({ shape: shapeIn(one), ...unit })] as const)
    )
  ]);
}
