import { rounded } from '../money/money.ts';
import type { Work } from './cheapest-cover.ts';
import { cheapestPacks } from './cheapest-packs.ts';
import { type OrderProblem, type Pack, type Terms, wholesIn } from './order-problem.ts';
import { packsOnLoad, type ReckonedOrder, reckonedOrder } from './reckoned-order.ts';
import { priceRanges } from './price-ranges.ts';

/** An order, and what no order costs less than, in hundredths. */
export interface OrderFound {
  readonly order?: ReckonedOrder;
  readonly bound: number;
}

/** Of more suppliers that deliver not every choice of them is tried. */
const MOST_SUPPLIERS = 6;

/**
 * A good order where deliveries couple the items: for every choice of suppliers the cheapest packs, delivery not counted,
 * with what bringing them then costs; brought up to a least order, or to where bringing is free, where that pays. The
 * bound is that of the same packs with the least deliveries that they can need.
 */
export function chosenSuppliers(problem: OrderProblem, work: Work): OrderFound {
  let [best, bound]: [ReckonedOrder | undefined, number] = [undefined, Infinity];
  for (const open of choicesOf(problem.suppliers.length)) {
    const packs = problem.packs
      .map((pack, index) => ({ pack, index }))
      .filter(({ pack }) => isOpen(pack, open) && goesOnALoad(pack, problem));
    const found = cheapestPacks(
      problem.needs,
      packs.map(({ pack }) => pack),
      work
    );
    bound = Math.min(bound, boundOf(problem, open, found.bound));
    if (found.counts === undefined) continue;
    const counts = problem.packs.map(() => 0);
    packs.forEach(({ index }, at) => (counts[index] = found.counts![at]!));
    for (const tried of broughtUp(problem, counts)) {
      const order = reckonedOrder(problem, tried);
      if (order !== undefined && (best === undefined || isBetter(order, best, problem))) best = order;
    }
  }
  return { ...(best === undefined ? {} : { order: best }), bound };
}

/** Cheaper, or as cheap with less left over. */
function isBetter(one: ReckonedOrder, other: ReckonedOrder, { needs }: OrderProblem): boolean {
  if (one.cost !== other.cost) return one.cost < other.cost;
  const share = ({ left }: ReckonedOrder): number => left.reduce((sum, amount, item) => sum + amount / needs[item]!, 0);
  return share(one) < share(other);
}

/** Which suppliers deliver: every choice of them, or all and each by itself. */
function choicesOf(count: number): ReadonlySet<number>[] {
  const all = Array.from({ length: count }, (_, index) => index);
  if (count > MOST_SUPPLIERS) return [new Set(all), ...all.map(one => new Set([one])), new Set<number>()];
  return Array.from(
    { length: 2 ** count },
    (_, choice) => new Set(all.filter(index => Math.floor(choice / 2 ** index) % 2 === 1))
  );
}

function isOpen({ supplier }: Pack, open: ReadonlySet<number>): boolean {
  return supplier === undefined || open.has(supplier);
}

function goesOnALoad(pack: Pack, { suppliers }: OrderProblem): boolean {
  return pack.supplier === undefined || packsOnLoad(suppliers[pack.supplier]!, pack) > 0;
}

/** Hundredths: packs that cost so much at least, bought from these suppliers and each of them delivering. */
function boundOf(problem: OrderProblem, open: ReadonlySet<number>, goods: number): number {
  const { suppliers } = problem;
  if (suppliers.length > MOST_SUPPLIERS) return open.size === suppliers.length ? goods : Infinity;
  let [least, paid]: [number, number] = [0, 0];
  const free: { readonly from: number; readonly charge: number }[] = [];
  for (const index of open) {
    const terms = suppliers[index]!;
    const order = terms.leastOrder === undefined ? 0 : hundredths(terms.leastOrder.valueOf());
    const charge = Number(rounded(terms.charge.mul(leastLoads(problem, open, index))));
    least += order;
    if (terms.freeFrom === undefined) paid += charge;
    else free.push({ from: Math.max(0, hundredths(terms.freeFrom.valueOf()) - order), charge });
  }
  // Whether a supplier's charge is paid, or so much ordered that it brings for nothing.
  return Math.min(
    ...choicesOf(free.length).map(those => {
      const ordered = free.reduce((sum, { from }, index) => (those.has(index) ? sum + from : sum), least);
      const charges = free.reduce((sum, { charge }, index) => (those.has(index) ? sum : sum + charge), paid);
      return Math.max(goods, ordered) + charges;
    })
  );
}

function hundredths(amount: number): number {
  return amount * 100;
}

/** Loads that a supplier brings at least: of items that none of the others has, the lightest packs. */
function leastLoads({ needs, packs, suppliers }: OrderProblem, open: ReadonlySet<number>, supplier: number): number {
  const { loadMass, loadVolume } = suppliers[supplier]!;
  const of = (size: 'mass' | 'volume'): number =>
    needs.reduce((sum, need, item) => {
      const sold = packs.filter(pack => isOpen(pack, open) && pack.holds.some(hold => hold.item === item));
      const own = sold.every(pack => pack.supplier === supplier && pack.holds.length === 1);
      return own && sold.length > 0
        ? sum + need * Math.min(...sold.map(pack => pack[size] / pack.holds[0]!.amount))
        : sum;
    }, 0);
  return Math.max(
    1,
    loadMass === undefined ? 0 : wholesIn(of('mass') / loadMass),
    loadVolume === undefined ? 0 : wholesIn(of('volume') / loadVolume)
  );
}

/** Orders tried to bring suppliers up to what they ask for. */
const MOST_TRIED = 256;

/** The same order with more of one pack, for each supplier whose least order, or free delivery, it does not come up to. */
function broughtUp(problem: OrderProblem, counts: readonly number[]): (readonly number[])[] {
  let tried: (readonly number[])[] = [counts];
  problem.suppliers.forEach((terms, supplier) => {
    tried = tried.flatMap(one => [one, ...withMoreFrom(problem.packs, terms, supplier, one)]).slice(0, MOST_TRIED);
  });
  return tried;
}

function withMoreFrom(packs: readonly Pack[], terms: Terms, supplier: number, counts: readonly number[]): number[][] {
  const own = packs.flatMap((pack, index) => (pack.supplier === supplier ? [index] : []));
  if (own.every(index => counts[index] === 0)) return [];
  const { leastOrder, freeFrom, leastMass } = terms;
  const amounts = [leastOrder, freeFrom].flatMap(amount =>
    amount === undefined ? [] : [hundredths(amount.valueOf())]
  );
  return own.flatMap(index => {
    const pack = packs[index]!;
    const others = own.filter(other => other !== index);
    const goods = others.reduce((sum, other) => sum + costInDoubles(packs[other]!, counts[other]!), 0);
    const mass = others.reduce((sum, other) => sum + packs[other]!.mass * counts[other]!, 0);
    return priceRanges(pack).flatMap(range => {
      const wanted = [
        ...amounts.map(amount => (amount - goods) / range.each),
        ...(leastMass === undefined ? [] : [(leastMass - mass) / pack.mass])
      ];
      return wanted
        .map(count => Math.max(counts[index]!, range.least, wholesIn(count)))
        .filter(count => Number.isSafeInteger(count) && count <= range.most && count > counts[index]!)
        .map(count => counts.map((old, at) => (at === index ? count : old)));
    });
  });
}

function costInDoubles(pack: Pack, count: number): number {
  const range = priceRanges(pack).find(({ least, most }) => count >= least && count <= most);
  return range === undefined ? 0 : range.each * count;
}
