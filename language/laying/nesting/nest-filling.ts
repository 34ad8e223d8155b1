import type { Search } from './nest-search.ts';
import { countOf, demandLeft, type Filled, type PieceSet, setOf, unitsOf, withOne } from './nest-sets.ts';
import { isOver } from './nest-cutting.ts';
import type { PieceKind } from './nest-kinds.ts';

/** Orders in which pieces are put into units: what is hardest to place goes first. */
const MEASURES: readonly ((kind: PieceKind) => number)[] = [
  ({ share }) => share,
  ({ blank }) => Math.max(blank.length, blank.width),
  ({ blank }) => Math.min(blank.length, blank.width)
];

/** Kinds tried in all units together, about, and in each unit at least. */
const TRIES = 20_000;
const FEWEST_TRIED = 10;

/** The best filling of units with a demand that one of some orders leads to; stops at the bound, or at the limit of work. */
export function* bestFilled(search: Search, demand: readonly number[], bound: number): Generator<void, Filled[]> {
  let best: Filled[] | undefined;
  for (const measure of MEASURES) {
    const order = search.kinds
      .map((kind, index) => ({ index, size: measure(kind) }))
      .sort((one, two) => two.size - one.size || one.index - two.index);
    const filled = yield* filledInOrder(
      search,
      demand,
      order.map(({ index }) => index)
    );
    if (!best || unitsOf(filled) < unitsOf(best)) best = filled;
    if (unitsOf(best) <= bound || isOver(search.work)) break;
  }
  return best ?? [];
}

/** Fills a unit with the first pieces in an order that fit, as many units so as there are pieces for, and so on. */
function* filledInOrder(
  search: Search,
  demand: readonly number[],
  order: readonly number[]
): Generator<void, Filled[]> {
  const filled: Filled[] = [];
  let left: readonly number[] = demand;
  for (const first of order) {
    while (left[first]! > 0) {
      const set = yield* setFrom(search, left, first, order);
      const units = Math.min(...set.map(({ kind, count }) => Math.floor(left[kind]! / count)));
      filled.push({ set, units });
      left = demandLeft(left, set, units);
    }
  }
  return filled;
}

/** A piece with all that fits beside it, in an order; where there are many kinds only some of them are tried. */
function* setFrom(
  { cutting, kinds, work }: Search,
  left: readonly number[],
  first: number,
  order: readonly number[]
): Generator<void, PieceSet> {
  let set = setOf(first, 1);
  let share = kinds[first]!.share;
  const hasRoom = (kind: number): boolean => countOf(set, kind) < left[kind]! && share + kinds[kind]!.share <= 1;
  const most = isOver(work) ? FEWEST_TRIED : Math.max(FEWEST_TRIED, TRIES / order.length);
  for (const kind of spread(order.filter(hasRoom), most)) {
    while (hasRoom(kind)) {
      yield;
      const more = withOne(set, kind);
      if (!cutting.fits(more)) break;
      set = more;
      share += kinds[kind]!.share;
    }
  }
  return set;
}

/** So many of a list, evenly spread over it, the first among them. */
function spread<T>(all: readonly T[], most: number): readonly T[] {
  const step = Math.max(1, all.length / most);
  return Array.from({ length: Math.ceil(all.length / step) }, (_, place) => all[Math.floor(place * step)]!);
}
