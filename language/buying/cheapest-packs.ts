import type { Minor } from '../money/money.ts';
import { cheapestCover, type CoverFound, type Way, type Work } from './cheapest-cover.ts';
import { covers, type Pack, wholesIn } from './order-problem.ts';
import { costAt, isRounded, type PriceRange, priceRanges } from './price-ranges.ts';

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

/** The least that shares of needs differ by. */
const HAIR = 1e-9;

/**
 * The cheapest packs for several items. Items that share no pack are chosen by themselves; of packs of several sizes every
 * count is tried that could be of use, and what they leave of each item is covered by itself.
 */
export function cheapestPacks(needs: readonly number[], packs: readonly Pack[], work: Work): PacksFound {
  return new PackChoice(needs, packs, work).run();
}

class PackChoice {
  readonly #needs: readonly number[];
  readonly #packs: readonly Pack[];
  readonly #work: Work;
  readonly #ways: readonly (readonly (Way & { readonly index: number })[])[];
  readonly #mixed: readonly Mixed[];
  readonly #rates: readonly number[];
  readonly #counts: number[];
  readonly #known = new Map<string, CoverFound>();
  #best: Choice | undefined;

  constructor(needs: readonly number[], packs: readonly Pack[], work: Work) {
    this.#needs = needs;
    this.#packs = packs;
    this.#work = work;
    const sold = packs.map((pack, index) => ({ ...pack, index, ranges: priceRanges(pack) }));
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

  run(): PacksFound {
    this.#tryPlain();
    const complete = this.#from(0, this.#needs, 0n, 0);
    const best = this.#best;
    if (best === undefined) return { bound: complete ? Infinity : this.#relaxed(), proven: complete };
    return { counts: best.counts, bound: complete ? Number(best.cost) : this.#relaxed(), proven: complete };
  }

  /** Without packs of several sizes, and with as many of each as are of use, so that the search begins with something. */
  #tryPlain(): void {
    this.#rest(this.#needs, 0n, 0);
    for (const mixed of this.#mixed) {
      const range = mixed.ranges.at(-1);
      if (range === undefined) continue;
      const count = Math.max(range.least, usefulCount(mixed, this.#needs));
      this.#counts[mixed.index] = count;
      this.#rest(shortAfter(mixed, count, this.#needs), costAt(range, count), count);
      this.#counts[mixed.index] = 0;
    }
  }

  /** What no choice costs less than: of items that share a pack the dearest alone, else each by itself. */
  #relaxed(): number {
    const rounding = this.#packs.filter(pack => isRounded(priceRanges(pack))).length / 2;
    if (this.#mixed.length > 0) return this.#dearest(this.#needs) - rounding;
    return this.#needs.reduce((sum, need, item) => sum + this.#alone(item, need).bound, 0);
  }

  /** Over all items what one alone costs at least. */
  #dearest(short: readonly number[]): number {
    return Math.max(0, ...short.map((amount, item) => (amount > 0 ? amount * this.#rates[item]! : 0)));
  }

  /** Whether the search came to its end. */
  #from(at: number, short: readonly number[], cost: Minor, packs: number): boolean {
    const mixed = this.#mixed[at];
    if (mixed === undefined) return this.#rest(short, cost, packs);
    if (++this.#work.steps > this.#work.most) return false;
    const rounding = this.#packs.length / 2;
    if (this.#best !== undefined && Number(cost) + this.#dearest(short) - rounding > Number(this.#best.cost))
      return true;
    const useful = usefulCount(mixed, short);
    const tries: { readonly count: number; readonly range?: PriceRange }[] = [{ count: 0 }];
    for (const range of mixed.ranges)
      for (let count = range.least; count <= Math.min(range.most, Math.max(range.least, useful)); count++) {
        if (this.#work.steps + tries.length > this.#work.most) return false;
        tries.push({ count, range });
      }
    for (const { count, range } of tries.reverse()) {
      this.#counts[mixed.index] = count;
      const paid = range === undefined ? cost : cost + costAt(range, count);
      const complete = this.#from(at + 1, shortAfter(mixed, count, short), paid, packs + count);
      this.#counts[mixed.index] = 0;
      if (!complete) return false;
    }
    return true;
  }

  #rest(short: readonly number[], paid: Minor, packed: number): boolean {
    const counts = [...this.#counts];
    let [cost, left, packs, complete] = [paid, 0, packed, true];
    for (const [item, amount] of short.entries()) {
      const need = this.#needs[item]!;
      if (covers(need - amount, need)) {
        left += Math.max(0, -amount) / need;
        continue;
      }
      const { cover, proven } = this.#alone(item, amount);
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

  #alone(item: number, amount: number): CoverFound {
    const name = `${item} ${amount.toPrecision(12)}`;
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    const found = cheapestCover(amount, this.#ways[item]!, this.#work);
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
