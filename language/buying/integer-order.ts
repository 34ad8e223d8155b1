import type { IntegerModel, IntegerRow, IntegerSolver, SolverLimit } from './integer-solver.ts';
import { HAIR, wholesIn } from './order-problem.ts';
import type { PricedProblem } from './priced-problem.ts';
import { isRounded, type PriceRange } from './price-ranges.ts';
import { packsOnLoad, type ReckonedOrder, reckonedOrder } from './reckoned-order.ts';
import type { OrderFound } from './supplier-choice.ts';

/** Enough for any job that was tried; where it is not, the order stands as not proven. */
const LIMIT: SolverLimit = { nodes: 50_000, seconds: 10 };

/** Hundredths that the solver's doubles may be off by. */
const SOLVER_ROUNDING = 1e-3;

/**
 * The order by an integer programme, which knows of prices that fall with the count, loads, least orders and free
 * delivery. What it finds is reckoned again from the counts alone: only then does it count. `known` is an order to beat.
 */
export function integerOrder(problem: PricedProblem, known: ReckonedOrder, solver: IntegerSolver): OrderFound {
  const model = new OrderModel(problem, known);
  const cheapest = solver(model.with(), LIMIT);
  // The order that is known keeps to the model: a solver that finds none at all goes wrong, and its word does not count.
  if (cheapest.bound === Infinity || Number.isNaN(cheapest.bound)) return { order: known, bound: 0 };
  const bound = cheapest.bound - model.rounding - SOLVER_ROUNDING;
  const found = model.orderOf(cheapest.values);
  const order = found === undefined || found.cost > known.cost ? known : found;
  if (bound <= Number(order.cost) - 1) return { order, bound };
  // Of orders as dear the one that leaves least over, and of those the one of the fewest packs.
  const lessLeft = solver(model.with({ cost: Number(order.cost) }), LIMIT);
  const tidier = model.orderOf(lessLeft.values);
  if (tidier === undefined || tidier.cost > order.cost) return { order, bound };
  const fewer = solver(model.with({ cost: Number(order.cost), left: model.leftOf(tidier.counts) }), LIMIT);
  const fewest = model.orderOf(fewer.values);
  const isFewer =
    fewest !== undefined &&
    fewest.cost <= tidier.cost &&
    model.leftOf(fewest.counts) <= model.leftOf(tidier.counts) + LEFT_ROUNDING;
  return { order: isFewer ? fewest : tidier, bound };
}

/** Share of needs that doubles may be off by. */
const LEFT_ROUNDING = 1e-7;

/** Rows are scaled up so that what the solver takes for met is met by a billionth. */
const COVER_SCALE = 1000;

interface Column {
  readonly cost: number;
  readonly most: number;
  readonly whole: boolean;
}

/** The columns of a pack at one price: how many, and whether any. */
interface PricedColumn {
  readonly pack: number;
  readonly range: PriceRange;
  readonly count: number;
}

class OrderModel {
  /** What rounding each line may make an order cheaper than its model. */
  readonly rounding: number;
  readonly #problem: PricedProblem;
  readonly #columns: Column[] = [];
  readonly #rows: IntegerRow[] = [];
  readonly #priced: PricedColumn[] = [];

  constructor(problem: PricedProblem, known: ReckonedOrder) {
    this.#problem = problem;
    const lines = problem.packs.filter(pack => isRounded(pack.ranges)).length;
    this.rounding = (lines + problem.suppliers.filter(({ load }) => load.lower !== 1n).length) / 2;
    problem.packs.forEach((_, index) => this.#addPack(index, Number(known.cost)));
    this.#addCovers();
    problem.suppliers.forEach((_, index) => this.#addSupplier(index));
  }

  /** The model; with limits it looks for what leaves less over, or for fewer packs. */
  with(limits: { readonly cost?: number; readonly left?: number } = {}): IntegerModel {
    const rows = [...this.#rows];
    const costs = this.#columns.map(({ cost }) => cost);
    const left = this.#columns.map(() => 0);
    const packs = this.#columns.map(() => 0);
    for (const { pack, count } of this.#priced) {
      left[count] = this.#shareOf(pack);
      packs[count] = 1;
    }
    const atMost = (by: readonly number[], most: number): IntegerRow => ({
      least: -Infinity,
      most,
      terms: by.flatMap((factor, column) => (factor === 0 ? [] : [{ column, by: factor }]))
    });
    if (limits.cost !== undefined) rows.push(atMost(costs, limits.cost + this.rounding));
    if (limits.left !== undefined) rows.push(atMost(left, limits.left + LEFT_ROUNDING / 10));
    const aim = limits.left !== undefined ? packs : limits.cost !== undefined ? left : costs;
    return { columns: this.#columns.map((column, index) => ({ ...column, cost: aim[index]! })), rows };
  }

  /** The order that a solution stands for; undefined where it is none that anyone would take. */
  orderOf(values: readonly number[] | undefined): ReckonedOrder | undefined {
    if (values === undefined) return undefined;
    const counts = this.#problem.packs.map(() => 0);
    for (const { pack, count } of this.#priced) counts[pack]! += Math.round(values[count]!);
    return reckonedOrder(this.#problem, counts);
  }

  /** What of each item there is, as a share of its need, all items together. */
  leftOf(counts: readonly number[]): number {
    return counts.reduce((sum, count, pack) => sum + count * this.#shareOf(pack), 0);
  }

  #shareOf(pack: number): number {
    const { needs, packs } = this.#problem;
    return packs[pack]!.holds.reduce((sum, { item, amount }) => sum + amount / needs[item]!, 0);
  }

  #column(column: Column): number {
    this.#columns.push(column);
    return this.#columns.length - 1;
  }

  #row(least: number, most: number, terms: readonly (readonly [number, number])[]): void {
    const all = terms.filter(([, by]) => by !== 0).map(([column, by]) => ({ column, by }));
    this.#rows.push({ least, most, terms: all });
  }

  /** A pack is bought at one of its prices, whose range its count keeps to. */
  #addPack(pack: number, worth: number): void {
    const { packs, needs } = this.#problem;
    const covering = Math.max(...packs[pack]!.holds.map(({ item, amount }) => wholesIn(needs[item]! / amount)));
    const used: number[] = [];
    const { ranges } = packs[pack]!;
    for (const range of ranges) {
      // More of it would cost more than the whole of the order that is known.
      const affordable = range.each > 0 ? Math.floor((worth + 1) / range.each) : Infinity;
      const most = Math.min(range.most, affordable, range.each > 0 ? Infinity : Math.max(covering, range.least));
      if (most < range.least) continue;
      const count = this.#column({ cost: range.each, most, whole: true });
      this.#priced.push({ pack, range, count });
      if (range.least === 1 && ranges.length === 1) continue;
      const any = this.#column({ cost: 0, most: 1, whole: true });
      used.push(any);
      this.#row(0, Infinity, [
        [count, 1],
        [any, -range.least]
      ]);
      this.#row(-Infinity, 0, [
        [count, 1],
        [any, -most]
      ]);
    }
    if (used.length > 1)
      this.#row(
        -Infinity,
        1,
        used.map(any => [any, 1])
      );
  }

  #addCovers(): void {
    this.#problem.needs.forEach((need, item) => {
      const terms = this.#priced.flatMap(({ pack, count }) =>
        this.#problem.packs[pack]!.holds.filter(hold => hold.item === item).map(({ amount }): [number, number] => [
          count,
          (COVER_SCALE * amount) / need
        ])
      );
      this.#row(COVER_SCALE * (1 - HAIR), Infinity, terms);
    });
  }

  #addSupplier(supplier: number): void {
    const terms = this.#problem.suppliers[supplier]!;
    const { load, loadMass, loadVolume, leastOrder, leastMass, freeFrom } = terms;
    const own = this.#priced
      .filter(({ pack }) => this.#problem.packs[pack]!.supplier === supplier)
      .map(one => ({ ...one, sold: this.#problem.packs[one.pack]! }));
    const open = this.#column({ cost: 0, most: 1, whole: true });
    const mostLoads = Math.max(1, this.#mostLoads(supplier));
    const loads = this.#column({ cost: 0, most: mostLoads, whole: true });
    const paid = this.#column({ cost: load.each, most: mostLoads, whole: false });
    for (const { count } of own)
      this.#row(-Infinity, 0, [
        [count, 1],
        [open, -this.#columns[count]!.most]
      ]);
    this.#row(0, Infinity, [
      [loads, 1],
      [open, -1]
    ]);
    const holdsAtMost = (limit: number | undefined, size: 'mass' | 'volume'): void => {
      if (limit === undefined) return;
      const sizes = own.map(({ count, sold }): [number, number] => [count, (sold[size] / limit) * (1 - HAIR)]);
      this.#row(-Infinity, HAIR, [...sizes, [loads, -1]]);
    };
    holdsAtMost(loadMass, 'mass');
    holdsAtMost(loadVolume, 'volume');
    for (const index of new Set(own.map(({ pack }) => pack))) {
      const onOne = packsOnLoad(terms, this.#problem.packs[index]!);
      const counts = own.filter(({ pack }) => pack === index).map(({ count }): [number, number] => [count, 1]);
      if (Number.isFinite(onOne)) this.#row(-Infinity, 0, [...counts, [loads, -onOne]]);
    }
    const goods = own.map(({ count, range }): [number, number] => [count, range.each]);
    const masses = own.map(({ count, sold }): [number, number] => [count, sold.mass]);
    if (leastOrder !== undefined) this.#row(-this.rounding, Infinity, [...goods, [open, -leastOrder.valueOf() * 100]]);
    if (leastMass !== undefined) this.#row(-leastMass * HAIR, Infinity, [...masses, [open, -leastMass]]);
    const free = this.#column({ cost: 0, most: freeFrom === undefined ? 0 : 1, whole: true });
    if (freeFrom !== undefined) this.#row(-this.rounding, Infinity, [...goods, [free, -freeFrom.valueOf() * 100]]);
    this.#row(0, Infinity, [
      [paid, 1],
      [free, mostLoads],
      [loads, -1]
    ]);
  }

  /** Loads that all that could be bought of a supplier comes to. */
  #mostLoads(supplier: number): number {
    const { packs, suppliers } = this.#problem;
    const terms = suppliers[supplier]!;
    const { loadMass, loadVolume } = terms;
    if (loadMass === undefined && loadVolume === undefined) return 1;
    return this.#priced.reduce((sum, { pack, count }) => {
      const sold = packs[pack]!;
      if (sold.supplier !== supplier) return sum;
      const { most } = this.#columns[count]!;
      const onOne = packsOnLoad(terms, sold);
      const byPack = Number.isFinite(onOne) ? (onOne === 0 ? 0 : Math.ceil(most / onOne)) : 0;
      const byMass = loadMass === undefined ? 0 : (most * sold.mass) / loadMass;
      const byVolume = loadVolume === undefined ? 0 : (most * sold.volume) / loadVolume;
      return sum + Math.ceil(Math.max(byPack, byMass, byVolume));
    }, 0);
  }
}
