import type { Cutting, Work } from './nest-cutting.ts';
import type { PieceKind } from './nest-kinds.ts';
import { countOf, demandLeft, type Filled, keyOf, type PieceSet, setOf, withOne } from './nest-sets.ts';

/** What a nesting is looked for with. */
export interface Search {
  readonly kinds: readonly PieceKind[];
  readonly cutting: Cutting;
  readonly work: Work;
}

/**
 * Sets of pieces, one a unit, that hold a demand in no more than so many units. Undefined when there is no such way, or
 * when the work spent has come to the limit. The first piece left always goes into the next unit, with as much as fits.
 */
export function* packedInto(
  search: Search,
  demand: readonly number[],
  units: number,
  limit: number
): Generator<void, PieceSet[] | undefined> {
  const { kinds, work } = search;
  /** Units that have proved too few for what was left, by what that was. */
  const tooFew = new Map<string, number>();

  function* packed(left: readonly number[], unitsLeft: number): Generator<void, PieceSet[] | undefined> {
    const first = left.findIndex(count => count > 0);
    if (first < 0) return [];
    const share = left.reduce((sum, count, kind) => sum + count * kinds[kind]!.share, 0);
    const key = left.join(' ');
    if (share > unitsLeft || (tooFew.get(key) ?? 0) >= unitsLeft || work.spent >= limit) return undefined;
    work.spent++;
    for (const set of yield* fullSets(search, left, first, limit)) {
      const others = yield* packed(demandLeft(left, set), unitsLeft - 1);
      if (others) return [set, ...others];
    }
    if (work.spent < limit) tooFew.set(key, unitsLeft);
    return undefined;
  }

  return yield* packed(demand, units);
}

/** Sets with a piece of a kind to which no piece that is left can be added, the fullest first. */
function* fullSets(
  { cutting, kinds, work }: Search,
  left: readonly number[],
  first: number,
  limit: number
): Generator<void, PieceSet[]> {
  const found: PieceSet[] = [];
  function* grow(set: PieceSet, from: number): Generator<void, void> {
    if (work.spent >= limit) return;
    yield;
    const kind = left.findIndex((count, index) => index >= from && count > countOf(set, index));
    if (kind < 0) {
      if (isFull(set)) found.push(set);
      return;
    }
    for (const larger of grown(set, kind).reverse()) yield* grow(larger, kind + 1);
  }
  /** The set with none more of a kind, one more, and so on as far as they fit. */
  const grown = (set: PieceSet, kind: number): PieceSet[] => {
    const sets = [set];
    for (let last = set; countOf(last, kind) < left[kind]!;) {
      work.spent++;
      last = withOne(last, kind);
      if (!cutting.fits(last)) break;
      sets.push(last);
    }
    return sets;
  };
  const isFull = (set: PieceSet): boolean =>
    left.every((count, kind) => count === countOf(set, kind) || !cutting.fits(withOne(set, kind)));
  yield* grow(setOf(first, 1), first);
  const shareOf = (set: PieceSet): number => set.reduce((sum, { kind, count }) => sum + count * kinds[kind]!.share, 0);
  return found
    .map(set => ({ set, share: shareOf(set) }))
    .sort((one, two) => two.share - one.share)
    .map(({ set }) => set);
}

/** Units one by one as filled ones, those with the same pieces together. */
export function gathered(sets: readonly PieceSet[]): Filled[] {
  const filled = new Map<string, Filled>();
  for (const set of sets) {
    const key = keyOf(set);
    filled.set(key, { set, units: (filled.get(key)?.units ?? 0) + 1 });
  }
  return [...filled.values()];
}
