import { cheapestPacks } from './cheapest-packs.ts';
import { sureBound, wholesIn } from './order-problem.ts';
import type { PricedPack, PricedProblem } from './priced-problem.ts';
import { costAt, rangeFor } from './price-ranges.ts';
import { packsOnLoad, type ReckonedOrder, reckonedOrder } from './reckoned-order.ts';
import type { Work } from './work.ts';

/** An order, and what no order costs less than, in hundredths. */
export interface OrderFound {
  readonly order?: ReckonedOrder;
  readonly bound: number;
}

/** Of more suppliers that deliver not every choice of them is tried: six make 64 choices, and each more twice as many. */
const MOST_SUPPLIERS = 6;

/** Suppliers of whom something may be bought, each of them delivering. */
interface Choice {
  readonly open: ReadonlySet<number>;
  /** What can be bought, by its place in the problem. */
  readonly packs: readonly number[];
  /** Hundredths: no order from all of these suppliers costs less. */
  readonly bound: number;
}

/**
 * A good order where deliveries couple the items: for every choice of suppliers the cheapest packs, delivery not counted,
 * with what bringing them then costs; brought up to a least order, or to where bringing is free, where that pays. The
 * bound is that of the same packs with the least deliveries that they can need. The choice that can cost least comes
 * first; those that can't cost less than what was found, and those for which no steps are left, count by their bound.
 */
export function* chosenSuppliers(problem: PricedProblem, work: Work): Generator<void, OrderFound> {
  const choices = (yield* choicesOf(problem, work)).sort((a, b) => a.bound - b.bound);
  let [best, bound]: [ReckonedOrder | undefined, number] = [undefined, Infinity];
  for (const [at, choice] of choices.entries()) {
    if (best !== undefined && (work.left === 0 || sureBound(choice.bound) > Number(best.cost))) {
      bound = Math.min(bound, choice.bound);
      break;
    }
    const found: OrderFound = yield* work.sharing(1 / (choices.length - at), chosen(problem, choice, work));
    bound = Math.min(bound, found.bound);
    const { order } = found;
    if (order !== undefined && (best === undefined || isBetter(order, best, problem))) best = order;
    yield;
  }
  return { ...(best === undefined ? {} : { order: best }), bound };
}

/** The best order found of one choice of suppliers. */
function* chosen(problem: PricedProblem, choice: Choice, work: Work): Generator<void, OrderFound> {
  const packs = choice.packs.map(index => problem.packs[index]!);
  // Half the steps, so that some are left for bringing it.
  const found = yield* work.sharing(1 / 2, cheapestPacks(problem.needs, packs, work));
  const bound = Math.max(choice.bound, boundOf(problem, choice, found.bound));
  if (found.counts === undefined) return { bound };
  const counts = problem.packs.map(() => 0);
  choice.packs.forEach((index, at) => (counts[index] = found.counts![at]!));
  let best: ReckonedOrder | undefined;
  let tried = 0;
  for (const those of broughtUp(problem, counts, work)) {
    const order = reckonedOrder(problem, those);
    if (order !== undefined && (best === undefined || isBetter(order, best, problem))) best = order;
    const lines = those.filter(count => count > 0).length;
    if (++tried >= MOST_TRIED || !work.take(lines)) break;
    if (work.isDue()) yield;
  }
  return { ...(best === undefined ? {} : { order: best }), bound };
}

/** Cheaper, or as cheap with less left over. */
function isBetter(one: ReckonedOrder, other: ReckonedOrder, { needs }: PricedProblem): boolean {
  if (one.cost !== other.cost) return one.cost < other.cost;
  const share = ({ left }: ReckonedOrder): number => left.reduce((sum, amount, item) => sum + amount / needs[item]!, 0);
  return share(one) < share(other);
}

/** Every choice of suppliers, or all and each by itself; those of whom not all can be bought are left out. */
function* choicesOf(problem: PricedProblem, work: Work): Generator<void, Choice[]> {
  const { needs, packs, suppliers } = problem;
  const all = Array.from(suppliers.keys());
  const chosenOnes =
    all.length > MOST_SUPPLIERS ? [new Set(all), ...all.map(one => new Set([one])), new Set<number>()] : subsetsOf(all);
  const brought = packs.flatMap((pack, index) => (goesOnALoad(pack, problem) ? [index] : []));
  const choices: Choice[] = [];
  for (const open of chosenOnes) {
    work.take(packs.length);
    if (work.isDue()) yield;
    const own = brought.filter(index => isOpen(packs[index]!, open));
    const rates = needs.map(() => Infinity);
    for (const { holds, ranges } of own.map(index => packs[index]!)) {
      const each = Math.min(...ranges.map(range => range.each));
      for (const { item, amount } of holds) rates[item] = Math.min(rates[item]!, each / amount);
    }
    if (!rates.every(Number.isFinite)) continue;
    // Of items that share a pack the dearest alone.
    const costs = needs.map((need, item) => need * rates[item]!);
    const isMixed = own.some(index => packs[index]!.holds.length > 1);
    const goods = isMixed ? Math.max(...costs) : costs.reduce((sum, cost) => sum + cost, 0);
    const choice = { open, packs: own };
    choices.push({ ...choice, bound: boundOf(problem, choice, goods - own.length / 2) });
  }
  return choices;
}

function subsetsOf(all: readonly number[]): ReadonlySet<number>[] {
  return Array.from(
    { length: 2 ** all.length },
    (_, choice) => new Set(all.filter((_one, index) => Math.floor(choice / 2 ** index) % 2 === 1))
  );
}

function isOpen({ supplier }: PricedPack, open: ReadonlySet<number>): boolean {
  return supplier === undefined || open.has(supplier);
}

function goesOnALoad(pack: PricedPack, { suppliers }: PricedProblem): boolean {
  return pack.supplier === undefined || packsOnLoad(suppliers[pack.supplier]!, pack) > 0;
}

/** Hundredths: packs that cost so much at least, bought from these suppliers and each of them delivering. */
function boundOf(problem: PricedProblem, choice: Pick<Choice, 'open' | 'packs'>, goods: number): number {
  const { suppliers } = problem;
  // Not every choice is tried, so that of all suppliers stands for the others too.
  if (suppliers.length > MOST_SUPPLIERS) return goods;
  const loads = leastLoads(problem, choice);
  let [least, paid]: [number, number] = [0, 0];
  const free: { readonly from: number; readonly charge: number }[] = [];
  for (const index of choice.open) {
    const { load, leastGoods = 0n, freeGoods } = suppliers[index]!;
    const charge = Number(costAt(load, loads[index]!));
    least += Number(leastGoods);
    if (freeGoods === undefined) paid += charge;
    else free.push({ from: Math.max(0, Number(freeGoods - leastGoods)), charge });
  }
  // Whether a supplier's charge is paid, or so much ordered that it brings for nothing.
  return Math.min(
    ...subsetsOf(Array.from(free.keys())).map(those => {
      const ordered = free.reduce((sum, { from }, index) => (those.has(index) ? sum + from : sum), least);
      const charges = free.reduce((sum, { charge }, index) => (those.has(index) ? sum : sum + charge), paid);
      return Math.max(goods, ordered) + charges;
    })
  );
}

/** By supplier, loads that it brings at least: of items that none of the others has, the lightest packs. */
function leastLoads({ needs, packs, suppliers }: PricedProblem, choice: Pick<Choice, 'packs'>): number[] {
  const sold: PricedPack[][] = needs.map(() => []);
  for (const pack of choice.packs.map(index => packs[index]!))
    for (const { item } of pack.holds) sold[item]!.push(pack);
  const brought = suppliers.map(() => ({ mass: 0, volume: 0 }));
  needs.forEach((need, item) => {
    const supplier = sold[item]![0]?.supplier;
    if (supplier === undefined) return;
    if (!sold[item]!.every(pack => pack.supplier === supplier && pack.holds.length === 1)) return;
    const lightest = (size: 'mass' | 'volume'): number =>
      Math.min(...sold[item]!.map(pack => pack[size] / pack.holds[0]!.amount));
    brought[supplier]!.mass += need * lightest('mass');
    brought[supplier]!.volume += need * lightest('volume');
  });
  return suppliers.map(({ loadMass, loadVolume }, index) =>
    Math.max(
      1,
      loadMass === undefined ? 0 : wholesIn(brought[index]!.mass / loadMass),
      loadVolume === undefined ? 0 : wholesIn(brought[index]!.volume / loadVolume)
    )
  );
}

/** Orders tried of one choice: more of one pack or another hardly ever beats the first few that suffice. */
const MOST_TRIED = 256;

/**
 * The same order, and with more of one pack for each supplier whose least order, or free delivery, it does not come up
 * to. One after the other: what is not asked for is never made.
 */
function* broughtUp(
  problem: PricedProblem,
  counts: readonly number[],
  work: Work,
  from = 0
): Generator<readonly number[]> {
  if (from === problem.suppliers.length) {
    yield counts;
    return;
  }
  yield* broughtUp(problem, counts, work, from + 1);
  for (const more of withMoreFrom(problem, from, counts, work)) yield* broughtUp(problem, more, work, from + 1);
}

function* withMoreFrom(
  { packs, suppliers }: PricedProblem,
  supplier: number,
  counts: readonly number[],
  work: Work
): Generator<readonly number[]> {
  const { leastGoods, freeGoods, leastMass } = suppliers[supplier]!;
  const own = packs.flatMap((pack, index) => (pack.supplier === supplier ? [{ pack, index }] : []));
  if (own.every(({ index }) => counts[index] === 0)) return;
  const paid = own.map(({ pack, index }) => (rangeFor(pack.ranges, counts[index]!)?.each ?? 0) * counts[index]!);
  const goods = paid.reduce((sum, cost) => sum + cost, 0);
  const mass = own.reduce((sum, { pack, index }) => sum + pack.mass * counts[index]!, 0);
  const amounts = [leastGoods, freeGoods].flatMap(amount =>
    amount !== undefined && Number(amount) > goods ? [Number(amount)] : []
  );
  for (const [at, { pack, index }] of own.entries()) {
    const old = counts[index]!;
    for (const range of pack.ranges) {
      if (!work.take()) return;
      const wanted = amounts.map(amount => (amount - goods + paid[at]!) / range.each);
      if (leastMass !== undefined && leastMass > mass) wanted.push(old + (leastMass - mass) / pack.mass);
      for (const count of new Set(wanted.map(some => Math.max(old, range.least, wholesIn(some)))))
        if (Number.isSafeInteger(count) && count > old && count <= range.most) yield counts.with(index, count);
    }
  }
}
