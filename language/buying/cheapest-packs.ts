import type { Minor } from '../money/money.ts';
import { cheapestCover, type CoverFound, type Way } from './cheapest-cover.ts';
import { covers, HAIR, wholesIn } from './order-problem.ts';
import type { PricedPack } from './priced-problem.ts';
import { costAt, isRounded, type PriceRange } from './price-ranges.ts';
import type { Work } from './work.ts';

/** What covers some needs at the least cost of the packs alone, delivery not counted. */
export interface PacksFound {
  /** By pack; absent where some need can't be covered. */
  readonly counts?: readonly number[];
  /** Hundredths: no packs that cover the needs cost less. */
  readonly bound: number;
  readonly proven: boolean;
}

interface Mixed {
  readonly index: number;
  readonly holds: ReadonlyMap<number, number>;
  readonly ranges: readonly PriceRange[];
}

/** A choice for all items, to be compared. */
interface Choice {
  readonly counts: readonly number[];
  readonly cost: Minor;
  /** Share of its need that is left over, of all items together. */
  readonly left: number;
  readonly packs: number;
}

/**
 * The cheapest packs for several items. Items that share no pack are chosen by themselves; of packs of several sizes every
 * count is tried that could be of use, and what they leave of each item is covered by itself.
 */
export function cheapestPacks(
  needs: readonly number[],
  packs: readonly PricedPack[],
  work: Work
): Generator<void, PacksFound> {
  return new PackChoice(needs, packs, work).run();
}

class PackChoice {
  readonly #needs: readonly number[];
  readonly #packs: readonly PricedPack[];
  readonly #work: Work;
  readonly #ways: readonly (readonly (Way & { readonly index: number })[])[];
  readonly #mixed: readonly Mixed[];
  readonly #rates: readonly number[];
  readonly #counts: number[];
  readonly #known = new Map<string, CoverFound>();
  #best: Choice | undefined;

  constructor(needs: readonly number[], packs: readonly PricedPack[], work: Work) {
    this.#needs = needs;
    this.#packs = packs;
    this.#work = work;
    const sold = packs.map((pack, index) => ({ ...pack, index }));
    this.#ways = needs.map((_, item) =>
      sold.flatMap(({ holds, ranges, index }) => {
        const [only, ...others] = holds;
        return others.length === 0 && only?.item === item ? [{ holds: only.amount, ranges, index }] : [];
      })
    );
    this.#mixed = sold
      .filter(({ holds }) => holds.length > 1)
      .map(({ holds, ranges, index }) => ({
        index,
        ranges,
        holds: new Map(holds.map(({ item, amount }) => [item, amount]))
      }));
    const rated = sold.flatMap(({ holds, ranges }) =>
      holds.map(({ item, amount }) => ({ item, rate: Math.min(...ranges.map(({ each }) => each / amount)) }))
    );
    this.#rates = needs.map((_, item) => Math.min(...rated.filter(one => one.item === item).map(({ rate }) => rate)));
    this.#counts = packs.map(() => 0);
  }

  *run(): Generator<void, PacksFound> {
    // An item that is sold in no pack.
    if (!this.#rates.every(Number.isFinite)) return { bound: Infinity, proven: true };
    yield* this.#tryPlain();
    const complete = yield* this.#from(0, this.#needs, 0n, 0);
    const best = this.#best;
    if (best === undefined) return { bound: complete ? Infinity : yield* this.#relaxed(), proven: complete };
    return { counts: best.counts, bound: complete ? Number(best.cost) : yield* this.#relaxed(), proven: complete };
  }

  /**
   * Without packs of several sizes, with as many of each as are of use, and with one kind of them after the other, which
   * covers all that they hold: so the search begins with something, and ends with something wherever it is stopped.
   */
  *#tryPlain(): Generator<void, void> {
    yield* this.#rest(this.#needs, 0n, 0);
    for (const mixed of this.#mixed) yield* this.#tryMany([mixed]);
    if (this.#mixed.length > 1) yield* this.#tryMany(this.#mixed);
  }

  /** As many of each kind as are of use behind those before it. */
  *#tryMany(kinds: readonly Mixed[]): Generator<void, void> {
    let [short, cost, packs]: [readonly number[], Minor, number] = [this.#needs, 0n, 0];
    for (const mixed of kinds) {
      const range = mixed.ranges.at(-1);
      const useful = usefulCount(mixed, short);
      if (range === undefined || useful === 0) continue;
      const count = Math.max(range.least, useful);
      this.#counts[mixed.index] = count;
      short = shortAfter(mixed, count, short);
      cost += costAt(range, count);
      packs += count;
    }
    yield* this.#rest(short, cost, packs);
    for (const { index } of kinds) this.#counts[index] = 0;
  }

  /** What no choice costs less than: of items that share a pack the dearest alone, else each by itself. */
  *#relaxed(): Generator<void, number> {
    const rounding = this.#packs.filter(({ ranges }) => isRounded(ranges)).length / 2;
    if (this.#mixed.length > 0) return this.#dearest(this.#needs) - rounding;
    let sum = 0;
    for (const [item, need] of this.#needs.entries()) sum += (yield* this.#alone(item, need, 1)).bound;
    return sum;
  }

  /** Over all items what one alone costs at least. */
  #dearest(short: readonly number[]): number {
    return Math.max(0, ...short.map((amount, item) => (amount > 0 ? amount * this.#rates[item]! : 0)));
  }

  /** Whether the search came to its end. */
  *#from(at: number, short: readonly number[], cost: Minor, packs: number): Generator<void, boolean> {
    const mixed = this.#mixed[at];
    if (mixed === undefined) return yield* this.#rest(short, cost, packs);
    if (!this.#work.take()) return false;
    const rounding = this.#packs.length / 2;
    if (this.#best !== undefined && Number(cost) + this.#dearest(short) - rounding > Number(this.#best.cost))
      return true;
    const useful = usefulCount(mixed, short);
    for (const range of [...mixed.ranges].reverse())
      for (let count = Math.min(range.most, Math.max(range.least, useful)); count >= range.least; count--) {
        this.#counts[mixed.index] = count;
        const paid = cost + costAt(range, count);
        const complete = yield* this.#from(at + 1, shortAfter(mixed, count, short), paid, packs + count);
        this.#counts[mixed.index] = 0;
        if (!complete) return false;
      }
    return yield* this.#from(at + 1, short, cost, packs);
  }

  *#rest(short: readonly number[], paid: Minor, packed: number): Generator<void, boolean> {
    const counts = [...this.#counts];
    let [cost, left, packs, complete] = [paid, 0, packed, this.#work.take(short.length)];
    if (this.#work.isDue()) yield;
    for (const [item, amount] of short.entries()) {
      const need = this.#needs[item]!;
      if (covers(need - amount, need)) {
        left += Math.max(0, -amount) / need;
        continue;
      }
      // Each item has its part of the steps that are left; where packs are mixed, others are still to be tried.
      const parts = (short.length - item) * (this.#mixed.length > 0 ? 2 : 1);
      const { cover, proven } = yield* this.#alone(item, amount, 1 / parts);
      complete &&= proven;
      if (cover === undefined) return complete;
      this.#ways[item]!.forEach(({ index }, way) => (counts[index] = cover.counts[way]!));
      cost += cover.cost;
      left += cover.left / need;
      packs += cover.packs;
    }
    const choice = { counts, cost, left, packs };
    if (this.#best === undefined || isBetter(choice, this.#best)) this.#best = choice;
    return complete;
  }

  *#alone(item: number, amount: number, part: number): Generator<void, CoverFound> {
    const name = `${item} ${amount.toPrecision(12)}`;
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    const found = yield* this.#work.sharing(part, cheapestCover(amount, this.#ways[item]!, this.#work));
    this.#known.set(name, found);
    return found;
  }
}

/** More of a pack than that cover nothing that is short. */
function usefulCount({ holds }: Mixed, short: readonly number[]): number {
  return Math.max(0, ...[...holds].map(([item, amount]) => wholesIn(Math.max(0, short[item]!) / amount)));
}

function shortAfter({ holds }: Mixed, count: number, short: readonly number[]): number[] {
  return short.map((amount, item) => amount - count * (holds.get(item) ?? 0));
}

function isBetter(one: Choice, other: Choice): boolean {
  if (one.cost !== other.cost) return one.cost < other.cost;
  if (Math.abs(one.left - other.left) > HAIR) return one.left < other.left;
  return one.packs < other.packs;
}
