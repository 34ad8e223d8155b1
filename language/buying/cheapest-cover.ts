import type { Minor } from '../money/money.ts';
import { covers, HAIR, sureBound, wholesIn } from './order-problem.ts';
import { costAt, isRounded, type PriceRange } from './price-ranges.ts';
import type { Work } from './work.ts';

/** One way in which one item is sold. */
export interface Way {
  /** What one pack holds, more than nought. */
  readonly holds: number;
  readonly ranges: readonly PriceRange[];
}

/** How many packs of each way, and what that comes to. */
export interface Cover {
  readonly counts: readonly number[];
  readonly cost: Minor;
  readonly left: number;
  readonly packs: number;
}

/** A cover and what no cover costs less than; no cover where nothing that is sold holds the item. */
export interface CoverFound {
  readonly cover?: Cover;
  /** Hundredths. */
  readonly bound: number;
  readonly proven: boolean;
}

/** The cheapest count of one way alone that covers a need, as large as it has to be for its price. */
export function cheapestAlone(need: number, { holds, ranges }: Way): Omit<Cover, 'counts'> | undefined {
  let best: Omit<Cover, 'counts'> | undefined;
  for (const range of ranges) {
    const packs = Math.max(range.least, wholesIn(need / holds));
    if (packs > range.most) continue;
    const cover = { cost: costAt(range, packs), left: Math.max(0, packs * holds - need), packs };
    if (best === undefined || isBetterCover(cover, best, need)) best = cover;
  }
  return best;
}

/**
 * The cheapest packs that cover a need; of equal cost those with less left over, then the fewest packs. Every count is
 * tried unless what is still to be covered would, even at the best rate of all that is left, cost more than what was found.
 */
export function* cheapestCover(need: number, ways: readonly Way[], work: Work): Generator<void, CoverFound> {
  const sorted = ways
    .map((way, index) => ({ ...way, index, rate: bestRate(way), rounding: isRounded(way.ranges) ? 0.5 : 0 }))
    .filter(({ ranges }) => ranges.length > 0)
    .sort((a, b) => a.rate - b.rate || b.holds - a.holds);
  const [first] = sorted;
  if (first === undefined) return { bound: Infinity, proven: true };
  const rest = restOf(sorted);
  const bound = need * first.rate - rest[0]!.rounding;
  const search = new Search(need, sorted, rest, grainsOf(need, sorted), work);
  search.tryAlone();
  const complete = yield* search.run();
  const { best } = search;
  if (best === undefined) return { bound: complete ? Infinity : bound, proven: complete };
  const counts = ways.map(() => 0);
  sorted.forEach(({ index }, at) => (counts[index] = best.counts[at]!));
  return { cover: { ...best, counts }, bound: complete ? Number(best.cost) : bound, proven: complete };
}

interface SortedWay extends Way {
  readonly rate: number;
  readonly rounding: number;
}

/** Of a way and all that come after it: the best rate, the largest pack, what rounding their lines may take off. */
interface Rest {
  readonly rate: number;
  readonly holds: number;
  readonly rounding: number;
}

const NOTHING_LEFT: Rest = { rate: Infinity, holds: 0, rounding: 0 };

function restOf(ways: readonly SortedWay[]): Rest[] {
  const rest: Rest[] = [NOTHING_LEFT];
  for (const way of [...ways].reverse()) {
    const after = rest[0]!;
    rest.unshift({
      rate: Math.min(way.rate, after.rate),
      holds: Math.max(way.holds, after.holds),
      rounding: way.rounding + after.rounding
    });
  }
  return rest;
}

function bestRate({ holds, ranges }: Way): number {
  return Math.min(...ranges.map(({ each }) => each / holds));
}

/** What every order comes to a multiple of. */
interface Grains {
  /** Hundredths. */
  readonly cost: number;
  /** The least that can be left over. */
  readonly left: number;
}

function grainsOf(need: number, ways: readonly SortedWay[]): Grains {
  const prices = ways.flatMap(({ ranges }) => ranges);
  const isWhole = prices.every(({ lower, upper }) => lower === 1n && upper > 0n);
  const holds = ways.map(way => way.holds).reduce(commonMeasure);
  return {
    cost: isWhole ? Number(prices.map(({ upper }) => upper).reduce(commonDivisor)) : 1,
    left: holds === 0 ? 0 : Math.max(0, wholesIn(need / holds) * holds - need)
  };
}

function commonDivisor(one: bigint, other: bigint): bigint {
  return other === 0n ? one : commonDivisor(other, one % other);
}

/** The largest amount that goes into both; nought where it is too small to matter. */
function commonMeasure(one: number, other: number): number {
  const hair = 1e-7 * Math.min(one, other);
  let [large, small] = [Math.max(one, other), Math.min(one, other)];
  const least = small / 1000;
  while (small > hair) [large, small] = [small, Math.abs(large - Math.round(large / small) * small)];
  return large < least ? 0 : large;
}

interface SoFar {
  readonly covered: number;
  readonly cost: Minor;
  readonly packs: number;
}

class Search {
  best: Cover | undefined;
  readonly #need: number;
  readonly #ways: readonly SortedWay[];
  readonly #rest: readonly Rest[];
  readonly #grains: Grains;
  readonly #work: Work;
  readonly #counts: number[];

  constructor(need: number, ways: readonly SortedWay[], rest: readonly Rest[], grains: Grains, work: Work) {
    this.#need = need;
    this.#ways = ways;
    this.#rest = rest;
    this.#grains = grains;
    this.#work = work;
    this.#counts = ways.map(() => 0);
  }

  /** Each way by itself, so that the search begins with something to beat. */
  tryAlone(): void {
    this.#ways.forEach((way, at) => {
      this.#work.take(way.ranges.length);
      const alone = cheapestAlone(this.#need, way);
      if (alone === undefined) return;
      this.#counts[at] = alone.packs;
      this.#keep(alone);
      this.#counts[at] = 0;
    });
  }

  /** Whether the search came to its end. */
  run(): Generator<void, boolean> {
    return this.#from(0, { covered: 0, cost: 0n, packs: 0 });
  }

  *#from(at: number, sofar: SoFar): Generator<void, boolean> {
    const way = this.#ways[at];
    if (covers(sofar.covered, this.#need)) this.#keep({ ...sofar, left: Math.max(0, sofar.covered - this.#need) });
    if (way === undefined || covers(sofar.covered, this.#need)) return true;
    const later = this.#rest[at + 1]!.rate;
    const isBetter = ({ each }: PriceRange): boolean => each <= way.holds * later;
    const down = way.ranges.filter(isBetter);
    const up = way.ranges.filter(range => !isBetter(range));
    for (const range of down) if (!(yield* this.#through(at, range, sofar, -1))) return false;
    if (!(yield* this.#with(at, 0, sofar))) return false;
    for (const range of up) if (!(yield* this.#through(at, range, sofar, 1))) return false;
    return true;
  }

  /** All counts of one price; what they can come to at best grows on the way, so the first that is too dear ends it. */
  *#through(at: number, range: PriceRange, sofar: SoFar, by: 1 | -1): Generator<void, boolean> {
    const { holds, rounding } = this.#ways[at]!;
    const wanted = wholesIn((this.#need - sofar.covered) / holds);
    const most = Math.min(range.most, Math.max(range.least, wanted));
    const least = at === this.#ways.length - 1 ? most : range.least;
    for (let count = by > 0 ? least : most; count >= least && count <= most; count += by) {
      const next = {
        covered: sofar.covered + count * holds,
        cost: sofar.cost + costAt(range, count),
        packs: sofar.packs + count
      };
      if (!this.#cannotBeat(at + 1, next)) {
        if (!(yield* this.#with(at, count, next))) return false;
      } else if (count < wanted && this.#isTooDear(at + 1, next, rounding)) return true;
      else if (!this.#work.take()) return false;
    }
    return true;
  }

  /** Goes on with so many packs of a way, which are counted in already. */
  *#with(at: number, count: number, sofar: SoFar): Generator<void, boolean> {
    if (!this.#work.take()) return false;
    if (this.#work.isDue()) yield;
    if (this.#cannotBeat(at + 1, sofar)) return true;
    this.#counts[at] = count;
    const complete = yield* this.#from(at + 1, sofar);
    this.#counts[at] = 0;
    return complete;
  }

  /** Whether it can't be better than what was found: dearer, or as dear with no less left over and no fewer packs. */
  #cannotBeat(at: number, sofar: SoFar): boolean {
    const { best } = this;
    const short = this.#short(sofar);
    const { holds } = this.#rest[at]!;
    if (short > 0 && holds === 0) return true;
    if (best === undefined) return false;
    const atLeast = this.#costAtLeast(at, sofar);
    if (atLeast > Number(best.cost)) return true;
    const isLeast = best.left <= this.#grains.left + HAIR * this.#need;
    return atLeast >= Number(best.cost) && isLeast && packsAtLeast(sofar.packs, short, holds) >= best.packs;
  }

  /** What is still to be covered, at the best rate of the ways from `at` on. */
  #costAtLeast(at: number, sofar: SoFar): number {
    const { rate, rounding } = this.#rest[at]!;
    const short = this.#short(sofar);
    const relaxed = Number(sofar.cost) + (short > 0 ? short * rate - rounding : 0);
    return Math.ceil(sureBound(relaxed) / this.#grains.cost) * this.#grains.cost;
  }

  #short({ covered }: SoFar): number {
    return covers(covered, this.#need) ? 0 : this.#need - covered;
  }

  /** Even if rounding its own line made it dearer. */
  #isTooDear(at: number, sofar: SoFar, rounding: number): boolean {
    return this.best !== undefined && this.#costAtLeast(at, sofar) - 2 * rounding > Number(this.best.cost);
  }

  #keep({ cost, left, packs }: Omit<Cover, 'counts'>): void {
    const cover = { counts: [...this.#counts], cost, left, packs };
    if (this.best === undefined || isBetterCover(cover, this.best, this.#need)) this.best = cover;
  }
}

function packsAtLeast(packs: number, short: number, holds: number): number {
  return packs + (short > 0 ? wholesIn(short / holds) : 0);
}

function isBetterCover(one: Omit<Cover, 'counts'>, other: Omit<Cover, 'counts'>, need: number): boolean {
  if (one.cost !== other.cost) return one.cost < other.cost;
  const [less, more] = [need + one.left, need + other.left];
  if (!covers(less, more)) return true;
  if (!covers(more, less)) return false;
  return one.packs < other.packs;
}
