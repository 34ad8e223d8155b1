import type { Minor } from '../money/money.ts';
import { covers, HAIR, type Pack, type Terms, wholesIn } from './order-problem.ts';
import type { PricedProblem, PricedTerms } from './priced-problem.ts';
import { costAt, costOfPacks } from './price-ranges.ts';

/** What an order comes to: the packs line by line, and bringing them. */
export interface ReckonedOrder {
  /** By pack. */
  readonly counts: readonly number[];
  readonly costs: readonly Minor[];
  /** By supplier. */
  readonly deliveries: readonly ReckonedDelivery[];
  readonly cost: Minor;
  /** By item, what there is more than needed. */
  readonly left: readonly number[];
}

export interface ReckonedDelivery {
  readonly goods: Minor;
  /** kg and m3 of what has a known mass or volume. */
  readonly mass: number;
  readonly volume: number;
  readonly loads: number;
  readonly cost: Minor;
}

/** What an order comes to; undefined where it covers some need not wholly, or no supplier would take it. */
export function reckonedOrder(problem: PricedProblem, counts: readonly number[]): ReckonedOrder | undefined {
  const { needs, packs, suppliers } = problem;
  const costs = packs.map((pack, index) => costOfPacks(pack.ranges, counts[index]!));
  if (!costs.every(cost => cost !== undefined)) return undefined;
  const had = amountsOf(problem, counts);
  if (needs.some((need, item) => !covers(had[item]!, need))) return undefined;
  const ordered: Ordered[][] = suppliers.map(() => []);
  packs.forEach((pack, index) => {
    if (pack.supplier === undefined || counts[index] === 0) return;
    ordered[pack.supplier]!.push({ pack, count: counts[index]!, cost: costs[index]! });
  });
  const deliveries = suppliers.map((terms, supplier) => deliveryOf(terms, ordered[supplier]!));
  if (!deliveries.every(delivery => delivery !== undefined)) return undefined;
  return {
    counts,
    costs,
    deliveries,
    cost: [...costs, ...deliveries.map(({ cost }) => cost)].reduce((sum, cost) => sum + cost, 0n),
    left: needs.map((need, item) => (covers(need, had[item]!) ? 0 : Math.max(0, had[item]! - need)))
  };
}

/** By item, what so many packs hold. */
export function amountsOf({ needs, packs }: PricedProblem, counts: readonly number[]): number[] {
  const had = needs.map(() => 0);
  packs.forEach(({ holds }, index) => holds.forEach(({ item, amount }) => (had[item]! += amount * counts[index]!)));
  return had;
}

interface Ordered {
  readonly pack: Pack;
  readonly count: number;
  readonly cost: Minor;
}

const NOTHING: ReckonedDelivery = { goods: 0n, mass: 0, volume: 0, loads: 0, cost: 0n };

/** What one supplier brings; undefined where that is less than the least order, or a pack is too much for any load. */
export function deliveryOf(terms: PricedTerms, ordered: readonly Ordered[]): ReckonedDelivery | undefined {
  if (ordered.every(({ count }) => count === 0)) return NOTHING;
  const goods = ordered.reduce((sum, { cost }) => sum + cost, 0n);
  const mass = ordered.reduce((sum, { pack, count }) => sum + pack.mass * count, 0);
  const volume = ordered.reduce((sum, { pack, count }) => sum + pack.volume * count, 0);
  const loads = loadsOf(terms, { mass, volume }, ordered);
  if (!Number.isFinite(loads)) return undefined;
  if (terms.leastGoods !== undefined && goods < terms.leastGoods) return undefined;
  if (terms.leastMass !== undefined && !covers(mass, terms.leastMass)) return undefined;
  const isFree = terms.freeGoods !== undefined && goods >= terms.freeGoods;
  return { goods, mass, volume, loads, cost: isFree ? 0n : costAt(terms.load, loads) };
}

/** Why an order is not brought: it is less than the least, or a pack of it is too much for any load. */
export type Refusal = 'least-order' | 'load';

/** Of an order that {@link deliveryOf} has nothing for. */
export function refusalOf(terms: Terms, ordered: readonly Pick<Ordered, 'pack'>[]): Refusal {
  return ordered.some(({ pack }) => packsOnLoad(terms, pack) === 0) ? 'load' : 'least-order';
}

/**
 * Loads that it takes: by mass and by volume of all together, and of each kind of pack by how many whole ones go on one
 * load. How packs of several kinds share a load is not worked out.
 */
function loadsOf(
  load: Pick<Terms, 'loadMass' | 'loadVolume'>,
  { mass, volume }: { readonly mass: number; readonly volume: number },
  ordered: readonly Pick<Ordered, 'pack' | 'count'>[] = []
): number {
  const { loadMass, loadVolume } = load;
  const byPack = ordered.map(({ pack, count }) => {
    if (count === 0) return 0;
    const onOne = packsOnLoad(load, pack);
    return onOne === 0 ? Infinity : Math.ceil(count / onOne);
  });
  return Math.max(
    1,
    loadMass === undefined ? 0 : wholesIn(mass / loadMass),
    loadVolume === undefined ? 0 : wholesIn(volume / loadVolume),
    ...byPack
  );
}

/** How many packs of one kind go on a load; loose goods share it as they come. */
export function packsOnLoad(
  { loadMass, loadVolume }: Pick<Terms, 'loadMass' | 'loadVolume'>,
  { loose, mass, volume }: Pack
): number {
  if (loose) return Infinity;
  const most = (limit: number | undefined, one: number): number =>
    limit === undefined || one === 0 ? Infinity : Math.floor((limit / one) * (1 + HAIR));
  return Math.min(most(loadMass, mass), most(loadVolume, volume));
}
