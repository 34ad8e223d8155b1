import { areaOf } from '../../geometry/index.ts';
import { turnedSize } from './nest-blank.ts';
import { type Cutting, isOver, type Work } from './nest-cutting.ts';
import { gapOf, HAIR, type PieceKind, unitOutline } from './nest-kinds.ts';
import { setOf } from './nest-sets.ts';
import { MOST_OF_A_KIND } from './nest-rectangle.ts';
import type { BoundMethod, NestingInputs } from './nested.ts';

/** Units that pieces take at least, and how that is known. */
export interface Bound {
  readonly units: number;
  readonly by: BoundMethod;
}

/** Weight of a share of a unit: those of pieces that together take up no more than one unit sum up to no more than 1. */
type Weight = (share: number) => number;

/** The most pieces side by side that weights by whole parts look at: of smaller ones the area says as much. */
const MOST_PARTS = 6;

/** The most sizes that weights by size start from. */
const MOST_SIZES = 8;

/** The best bound from sizes alone: the simplest method that gives it. */
export function areaBounds(inputs: NestingInputs, kinds: readonly PieceKind[]): Bound {
  const unitArea = areaOf(unitOutline(inputs.unit));
  const shares = kinds.map(({ share }) => share);
  const methods: [BoundMethod, number][] = [
    ['area', sumOver(kinds, ({ demanded }) => (demanded.piece.area / unitArea) * (1 - HAIR))],
    ['saw', sumOver(kinds, ({ share }) => share)],
    ['counting', best(weightsFor(shares), weight => sumOver(kinds, ({ share }) => weight(share)))],
    ['counting', inputs.unit.shape === 'rectangle' ? sideBySide(inputs, kinds) : 0]
  ];
  return methods
    .map(([by, units]): Bound => ({ by, units: Math.ceil(units) }))
    .reduce((one, other) => (other.units > one.units ? other : one));
}

/** The bound raised where a unit yields so few pieces of one kind alone that they take more units. */
export function* yieldBound(
  { kinds, cutting, work }: { kinds: readonly PieceKind[]; cutting: Cutting; work: Work },
  bound: Bound
): Generator<void, Bound> {
  let raised = bound;
  for (const [kind, { blank, count }] of kinds.entries()) {
    if (!blank.isBox || count <= raised.units) continue;
    // As soon as a unit yields enough of them the bound stands.
    const enough = Math.ceil(count / raised.units);
    if (enough > MOST_OF_A_KIND) continue;
    let most = 1;
    for (; most < enough && cutting.fits(setOf(kind, most + 1)); most++) yield;
    if (isOver(work)) return raised;
    const units = Math.ceil(count / most);
    if (units > raised.units) raised = { units, by: 'counting' };
  }
  return raised;
}

/**
 * A bound from the lengths and widths of rectangles: the product of a weight of each is such a weight, too, whichever
 * way a piece is turned. Other pieces weigh nothing in it.
 */
function sideBySide(inputs: NestingInputs, kinds: readonly PieceKind[]): number {
  const { unit, finishedEdge } = inputs;
  const gap = gapOf(inputs);
  const ofUnit = (size: number, unitSize: number): number => ((size + gap) / (unitSize + gap)) * (1 - HAIR);
  const sized = kinds
    .filter(({ blank }) => blank.isBox)
    .map(({ blank, count }) => {
      const sizes = (finishedEdge ? [0] : [0, 1]).map(turn => turnedSize(blank, turn));
      const ways = sizes.map(({ length, width }) => ({
        along: ofUnit(length, unit.length),
        across: ofUnit(width, unit.width)
      }));
      return { count, ways: ways.filter(({ along, across }, turn) => turn === 0 || (along <= 1 && across <= 1)) };
    });
  const alongs = weightsFor(sized.flatMap(({ ways }) => ways.map(({ along }) => along)));
  const acrosses = weightsFor(sized.flatMap(({ ways }) => ways.map(({ across }) => across)));
  return best(alongs, byLength =>
    best(acrosses, byWidth =>
      sumOver(sized, ({ ways }) => Math.min(...ways.map(({ along, across }) => byLength(along) * byWidth(across))))
    )
  );
}

/**
 * Weights for pieces of these shares. By whole parts: a piece that is more than a third weighs a half, as there are
 * never three of them. By size: pieces smaller than some size are left out, and what leaves no room for that size is whole.
 */
function weightsFor(shares: readonly number[]): Weight[] {
  const parts = Array.from({ length: MOST_PARTS }, (_, index) => index + 1);
  const sizes = [...new Set(shares.filter(share => share <= 0.5))].sort((one, two) => two - one).slice(0, MOST_SIZES);
  return [
    share => share,
    ...parts.map(
      (most): Weight =>
        share =>
          Math.floor((most + 1) * share) / most
    ),
    ...sizes.map(
      (size): Weight =>
        share =>
          share > 1 - size ? 1 : share < size ? 0 : share
    )
  ];
}

function best<T>(all: readonly T[], value: (one: T) => number): number {
  return all.reduce((most, one) => Math.max(most, value(one)), 0);
}

function sumOver<T extends { readonly count: number }>(kinds: readonly T[], each: (kind: T) => number): number {
  return kinds.reduce((sum, kind) => sum + kind.count * each(kind), 0);
}
