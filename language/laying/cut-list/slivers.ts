import { CUTTING_TOLERANCE, distance, distanceToSide, type Loop } from '../../geometry/index.ts';
import { type UnitOutline, type UnitShape, unitOutline } from './unit-shape.ts';

/** No piece as wide as this is a sliver, m: 2 in, to whoever measures in millimetres 50. */
const SLIVER = 0.05;

/** A piece, and metres across its narrowest direction. */
export interface WidePiece {
  readonly outline: Loop;
  readonly narrowest: number;
}

/**
 * Of the pieces of one unit, those that are slivers: narrow, narrower also than half of it, and as long as a whole side of
 * it. The tips that slanted and curved cuts leave of a corner are none: they are left out, and the joint is filled.
 */
export function sliversIn<T extends WidePiece>(pieces: readonly T[], shape: UnitShape): readonly T[] {
  const narrow = pieces.filter(({ narrowest }) => narrowest < Math.min(SLIVER, shape.width / 2, shape.length / 2));
  if (narrow.length === 0) return [];
  const unit = unitOutline(shape);
  return narrow.filter(piece => keepsSide(piece, unit));
}

function keepsSide({ outline }: WidePiece, { sides }: UnitOutline): boolean {
  return sides.some(side => {
    const on = outline.filter(
      ({ from, to, arc }) => !arc && [from, to].every(end => distanceToSide(side, end) <= CUTTING_TOLERANCE)
    );
    const kept = on.reduce((sum, { from, to }) => sum + distance(from, to), 0);
    return kept >= distance(side.from, side.to) - 2 * CUTTING_TOLERANCE;
  });
}
