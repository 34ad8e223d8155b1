import { areaBounds, yieldBound } from './nest-bounds.ts';
import type { Cutting } from './nest-cutting.ts';
import { bestFilled } from './nest-filling.ts';
import { hexagonCutting } from './nest-hexagon.ts';
import { refilled, searchedThrough } from './nest-improving.ts';
import { kindsOf, MOST_SEARCHED, type PieceKind } from './nest-kinds.ts';
import { rectangleCutting } from './nest-rectangle.ts';
import { type Filled, piecesIn, unitsOf } from './nest-sets.ts';
import type { CuttingPattern, Nested, NestingInputs } from './nested.ts';

/**
 * Nests pieces into as few units as it finds, and says how few there must be at least. One rule of cutting holds for
 * all of it, the bound too: a unit is parted by straight cuts that go right through what is in hand, along a side of a
 * piece, the saw's width apart; a notch, curve or hole is cut out of its part afterwards and nothing of it is used
 * again. Pieces may be turned by quarter turns (in a hexagon by sixths, about its middle, where each keeps its place),
 * never mirrored. The outer edge of a unit needs no cut. A cut may take the cutting tolerance from the pieces beside
 * it: their joints become that much wider.
 *
 * Yields between the units it fills. At the limit of work it stops looking for anything better than what it has.
 */
export function* nested(inputs: NestingInputs): Generator<void, Nested> {
  const kinds = kindsOf(inputs);
  const work = { spent: 0, limit: inputs.workLimit };
  const isRectangle = inputs.unit.shape === 'rectangle';
  const cutting = isRectangle ? rectangleCutting(inputs, kinds, work) : hexagonCutting(inputs, kinds, work);
  const search = { kinds, cutting, work };
  const demand = kinds.map(({ count }) => count);

  let bound = areaBounds(inputs, kinds);
  let filled: readonly Filled[] = yield* bestFilled(search, demand, bound.units);
  if (isRectangle && unitsOf(filled) > bound.units) bound = yield* yieldBound(search, bound);
  filled = yield* refilled(search, filled, bound.units);
  let proven = unitsOf(filled) === bound.units;
  if (!proven && piecesIn(demand) <= MOST_SEARCHED) {
    const searched = yield* searchedThrough(search, demand, filled, bound.units);
    filled = searched.filled;
    proven = unitsOf(filled) === bound.units || (searched.ended && cutting.isExact());
  }
  return {
    unitsUsed: unitsOf(filled),
    lowerBound: bound.units,
    boundBy: bound.by,
    proven,
    plan: filled.map(one => patternOf(one, kinds, cutting)),
    work: work.spent
  };
}

function patternOf({ set, units }: Filled, kinds: readonly PieceKind[], cutting: Cutting): CuttingPattern {
  const placed = cutting.layout(set);
  return { units, pieces: placed.map(({ kind, ...place }) => ({ group: kinds[kind]!.demanded.group, ...place })) };
}
