import type { Minor } from '../money/money.ts';
import type { Work } from './cheapest-cover.ts';
import { cheapestPacks } from './cheapest-packs.ts';
import { integerOrder } from './integer-order.ts';
import type { IntegerSolver } from './integer-solver.ts';
import type { OrderProblem, Pack } from './order-problem.ts';
import { type ReckonedDelivery, type ReckonedOrder, reckonedOrder } from './reckoned-order.ts';
import { chosenSuppliers } from './supplier-choice.ts';

/** What to buy of everything, part by part: parts share no pack and no delivery. */
export interface Order {
  /** By pack. */
  readonly counts: readonly number[];
  readonly costs: readonly Minor[];
  /** By supplier. */
  readonly deliveries: readonly ReckonedDelivery[];
  /** By item. */
  readonly left: readonly number[];
  readonly cost: Minor;
  readonly parts: readonly OrderPart[];
  /** Steps of all searches: a count of work. */
  readonly steps: number;
}

/** Items that are bought together, by their indices. */
export interface OrderPart {
  readonly items: readonly number[];
  readonly packs: readonly number[];
  readonly suppliers: readonly number[];
  readonly cost: Minor;
  /** No order costs less than this. */
  readonly bound: Minor;
  /** No order costs less than this one. */
  readonly proven: boolean;
  /** No order meets what the suppliers ask for, or their loads hold: what stands here is the cheapest without bringing it. */
  readonly notBrought?: true;
}

/** Steps of the searches for one part: some tenths of a second. */
const MOST_STEPS = 200_000;

/**
 * The cheapest order that covers every need, delivery included; each item is sold in one pack at least. Packs alone are
 * searched through. Where deliveries couple items and the bound of their relaxation leaves it open whether something is
 * cheaper, the solver, if there is one, decides it or tells how far it came.
 */
export function cheapestOrder(problem: OrderProblem, solver?: IntegerSolver): Order {
  const counts = problem.packs.map(() => 0);
  const costs = problem.packs.map(() => 0n);
  const deliveries: ReckonedDelivery[] = problem.suppliers.map(() => NOT_DELIVERING);
  const left = problem.needs.map(() => 0);
  let steps = 0;
  const parts = partsOf(problem).map(part => {
    const work = { steps: 0, most: MOST_STEPS };
    const { order, ...found } = orderOfPart(partProblem(problem, part), work, solver);
    steps += work.steps;
    part.packs.forEach((pack, at) => {
      counts[pack] = order.counts[at]!;
      costs[pack] = order.costs[at]!;
    });
    part.suppliers.forEach((supplier, at) => (deliveries[supplier] = order.deliveries[at] ?? NOT_DELIVERING));
    part.items.forEach((item, at) => (left[item] = order.left[at]!));
    return { ...part, ...found, cost: order.cost };
  });
  const cost = parts.reduce((sum, part) => sum + part.cost, 0n);
  return { counts, costs, deliveries, left, cost, parts, steps };
}

const NOT_DELIVERING: ReckonedDelivery = { goods: 0n, mass: 0, volume: 0, loads: 0, cost: 0n };

type Together = Pick<OrderPart, 'items' | 'packs' | 'suppliers'>;

interface PartFound extends Pick<OrderPart, 'bound' | 'proven' | 'notBrought'> {
  readonly order: ReckonedOrder;
}

function orderOfPart(problem: OrderProblem, work: Work, solver: IntegerSolver | undefined): PartFound {
  if (problem.suppliers.length === 0) return withoutDelivery(problem, work);
  const { order, bound } = chosenSuppliers(problem, work);
  if (order === undefined) {
    const bare = withoutDelivery({ ...problem, suppliers: [], packs: problem.packs.map(unsupplied) }, work);
    return { ...bare, proven: false, notBrought: true };
  }
  if (provenBy(bound, order.cost) || solver === undefined) return known(order, bound);
  const solved = integerOrder(problem, order, solver);
  return known(solved.order ?? order, Math.max(bound, solved.bound));
}

function withoutDelivery(problem: OrderProblem, work: Work): PartFound {
  const { counts, bound, proven } = cheapestPacks(problem.needs, problem.packs, work);
  const order = counts && reckonedOrder(problem, counts);
  if (order === undefined) throw new Error('An item is sold in no pack');
  return proven ? { order, bound: order.cost, proven } : known(order, bound);
}

function unsupplied({ supplier: _supplier, ...pack }: Pack): Pack {
  return pack;
}

/** Hundredths are whole: an order is the cheapest where the bound leaves no whole hundredth below its cost. */
function provenBy(bound: number, cost: Minor): boolean {
  return wholeAbove(bound) >= cost;
}

function known(order: ReckonedOrder, bound: number): PartFound {
  const proven = provenBy(bound, order.cost);
  return { order, bound: proven ? order.cost : wholeAbove(bound), proven };
}

function wholeAbove(bound: number): Minor {
  return BigInt(Math.max(0, Math.ceil(bound - 1e-6 * Math.max(1, Math.abs(bound) * 1e-6))));
}

function partProblem({ needs, packs, suppliers }: OrderProblem, part: Together): OrderProblem {
  const places = new Map(part.items.map((item, at) => [item, at]));
  return {
    needs: part.items.map(item => needs[item]!),
    packs: part.packs.map(index => {
      const { supplier, ...pack } = packs[index]!;
      const holds = pack.holds.map(({ item, amount }) => ({ item: places.get(item)!, amount }));
      return { ...pack, holds, ...(supplier === undefined ? {} : { supplier: part.suppliers.indexOf(supplier) }) };
    }),
    suppliers: part.suppliers.map(supplier => suppliers[supplier]!)
  };
}

/** Items that share a pack or a supplier, directly or through others. */
function partsOf({ needs, packs }: OrderProblem): Together[] {
  const parts: Together[] = [];
  const taken = new Set<number>();
  for (const first of needs.keys()) {
    if (taken.has(first)) continue;
    const items = new Set([first]);
    const those = new Set<number>();
    const suppliers = new Set<number>();
    for (let before = -1; before !== items.size + those.size;) {
      before = items.size + those.size;
      packs.forEach(({ holds, supplier }, index) => {
        const isIn = holds.some(({ item }) => items.has(item)) || (supplier !== undefined && suppliers.has(supplier));
        if (!isIn) return;
        those.add(index);
        holds.forEach(({ item }) => items.add(item));
        if (supplier !== undefined) suppliers.add(supplier);
      });
    }
    items.forEach(item => taken.add(item));
    const inOrder = (all: ReadonlySet<number>): number[] => [...all].sort((a, b) => a - b);
    parts.push({ items: inOrder(items), packs: inOrder(those), suppliers: inOrder(suppliers) });
  }
  return parts;
}
