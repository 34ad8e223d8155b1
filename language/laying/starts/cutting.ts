import { narrowestWidthOf, perimeterOf } from '../../geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../area-to-lay.ts';
import type { LaidArea } from '../lay-area.ts';
import { isOnUnitSide } from '../cut-list/saw-lines.ts';
import { sliversIn } from '../cut-list/slivers.ts';
import { type UnitOutline, unitOutline } from '../cut-list/unit-shape.ts';

/** What laying an area asks of whoever cuts. */
export interface Cutting {
  /** Units that are cut. */
  readonly cutUnits: number;
  /** Pieces narrow for all of one side of their unit. */
  readonly slivers: number;
  /** Width of the narrowest piece, m; absent where nothing is cut. */
  readonly narrowest?: number;
  /** Metres sawn. */
  readonly sawLength: number;
}

/** Counts the cuts of all parts of an area. */
export function cuttingOf({ parts }: LaidArea, area: AreaToLay): Cutting {
  const outlines = unitOutlines(area);
  let [cutUnits, slivers, sawLength, narrowest] = [0, 0, 0, Infinity];
  for (const { unit, pieces } of parts.flatMap(({ laid }) => laid.cuts)) {
    cutUnits++;
    const outline = outlines.get(unit)!;
    const wide = pieces.map(piece => ({ ...piece, narrowest: narrowestWidthOf(piece.outline) }));
    slivers += sliversIn(wide, outline).length;
    narrowest = Math.min(narrowest, ...wide.map(piece => piece.narrowest));
    const sides = pieces.flatMap(piece => [...piece.outline, ...piece.holes.flat()]);
    sawLength += perimeterOf(sides.filter(side => !isOnUnitSide(side, outline)));
  }
  return { cutUnits, slivers, sawLength, ...(narrowest === Infinity ? {} : { narrowest }) };
}

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
