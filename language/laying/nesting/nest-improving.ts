import { gathered, packedInto, type Search } from './nest-search.ts';
import { demandLeft, type Filled, sizeOf, unitsOf } from './nest-sets.ts';

/** The fewest units found; `ended` when every way to fill fewer has been tried. */
export interface Searched {
  readonly filled: readonly Filled[];
  readonly ended: boolean;
}

/** The most pieces of the emptiest units that are put together anew: a search among so few mostly ends. */
const MOST_REFILLED = 16;

/** Share of the work left that goes to putting pieces together anew once. */
const REFILLING_SHARE = 1 / 4;

/** Looks for fewer units than those filled until there are none or the bound is reached. */
export function* searchedThrough(
  search: Search,
  demand: readonly number[],
  filled: readonly Filled[],
  bound: number
): Generator<void, Searched> {
  const { work } = search;
  let best = filled;
  while (unitsOf(best) > bound) {
    const sets = yield* packedInto(search, demand, unitsOf(best) - 1, work.limit);
    if (!sets) return { filled: best, ended: work.spent < work.limit };
    best = gathered(sets);
  }
  return { filled: best, ended: true };
}

/** Puts the pieces of the emptiest units together anew, as long as that takes fewer units. */
export function* refilled(
  search: Search,
  filled: readonly Filled[],
  bound: number
): Generator<void, readonly Filled[]> {
  const { kinds, work } = search;
  let best = filled;
  while (unitsOf(best) > bound) {
    const { emptiest, others } = partedByShare(search, best);
    // One unit can't become fewer.
    if (unitsOf(emptiest) < 2) return best;
    const demand = emptiest.reduce(
      (sum, { set, units }) => demandLeft(sum, set, -units),
      kinds.map(() => 0)
    );
    const limit = work.spent + REFILLING_SHARE * (work.limit - work.spent);
    const sets = yield* packedInto(search, demand, unitsOf(emptiest) - 1, limit);
    if (!sets) return best;
    best = [...others, ...gathered(sets)];
  }
  return best;
}

/** The emptiest units, with no more pieces than are put together anew, and the others. */
function partedByShare({ kinds }: Search, filled: readonly Filled[]): { emptiest: Filled[]; others: Filled[] } {
  const shareOf = ({ set }: Filled): number =>
    set.reduce((sum, { kind, count }) => sum + count * kinds[kind]!.share, 0);
  const emptiest: Filled[] = [];
  const others: Filled[] = [];
  let pieces = 0;
  for (const one of [...filled].sort((a, b) => shareOf(a) - shareOf(b))) {
    const size = sizeOf(one.set);
    const taken = Math.min(one.units, Math.floor((MOST_REFILLED - pieces) / size));
    pieces += taken * size;
    if (taken > 0) emptiest.push({ ...one, units: taken });
    if (taken < one.units) others.push({ ...one, units: one.units - taken });
  }
  return { emptiest, others };
}
