import type { Minor } from '../money/money.ts';
import { cheapestPacks } from './cheapest-packs.ts';
import { integerOrder } from './integer-order.ts';
import type { IntegerSolver } from './integer-solver.ts';
import { covers, type OrderProblem, sureBound, wholesIn } from './order-problem.ts';
import { type PricedPack, pricedProblem, type PricedProblem } from './priced-problem.ts';
import { amountsOf, type ReckonedDelivery, type ReckonedOrder, reckonedOrder } from './reckoned-order.ts';
import { chosenSuppliers } from './supplier-choice.ts';
import { Work } from './work.ts';

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

/**
 * Steps of all that is searched and reckoned for one part, some tenths of a second: an editor works the order out again
 * after each pause in typing. What is left open then is told as not proven, with its bound.
 */
const MOST_STEPS = 200_000;

/**
 * The cheapest order that covers every need, delivery included. An item that is sold in no pack is left out, as what is
 * not brought. Gives way between steps, so that whoever waits can drop the rest. Packs alone are
 * searched through. Where deliveries couple items and the bound of their relaxation leaves it open whether something is
 * cheaper, the solver, if there is one, decides it or tells how far it came.
 */
export function* cheapestOrder(asked: OrderProblem, solver?: IntegerSolver): Generator<void, Order> {
  const problem = pricedProblem(asked);
  const counts = problem.packs.map(() => 0);
  const costs = problem.packs.map(() => 0n);
  const deliveries: ReckonedDelivery[] = problem.suppliers.map(() => NOT_DELIVERING);
  const left = problem.needs.map(() => 0);
  let steps = 0;
  const parts: OrderPart[] = [];
  for (const part of partsOf(problem)) {
    const work = new Work(MOST_STEPS);
    const { order, ...found } = yield* orderOfPart(partProblem(problem, part), work, solver);
    steps += work.steps;
    part.packs.forEach((pack, at) => {
      counts[pack] = order.counts[at]!;
      costs[pack] = order.costs[at]!;
    });
    part.suppliers.forEach((supplier, at) => (deliveries[supplier] = order.deliveries[at] ?? NOT_DELIVERING));
    part.items.forEach((item, at) => (left[item] = order.left[at]!));
    parts.push({ ...part, ...found, cost: order.cost });
    yield;
  }
  const cost = parts.reduce((sum, part) => sum + part.cost, 0n);
  return { counts, costs, deliveries, left, cost, parts, steps };
}

const NOT_DELIVERING: ReckonedDelivery = { goods: 0n, mass: 0, volume: 0, loads: 0, cost: 0n };

type Together = Pick<OrderPart, 'items' | 'packs' | 'suppliers'>;

interface PartFound extends Pick<OrderPart, 'bound' | 'proven' | 'notBrought'> {
  readonly order: ReckonedOrder;
}

function* orderOfPart(
  problem: PricedProblem,
  work: Work,
  solver: IntegerSolver | undefined
): Generator<void, PartFound> {
  if (problem.packs.length === 0) return { order: NOTHING, bound: 0n, proven: false, notBrought: true };
  if (problem.suppliers.length === 0) return yield* withoutDelivery(problem, work);
  const { order, bound } = yield* chosenSuppliers(problem, work);
  if (order === undefined) {
    const bare = yield* withoutDelivery({ ...problem, suppliers: [], packs: problem.packs.map(unsupplied) }, work);
    return { ...bare, proven: false, notBrought: true };
  }
  if (provenBy(bound, order.cost) || solver === undefined) return known(order, bound);
  const solved = integerOrder(problem, order, solver);
  return known(solved.order ?? order, Math.max(bound, solved.bound));
}

/** An item that is sold in no pack. */
const NOTHING: ReckonedOrder = { counts: [], costs: [], deliveries: [], cost: 0n, left: [0] };

function* withoutDelivery(problem: PricedProblem, work: Work): Generator<void, PartFound> {
  const {
    counts = problem.packs.map(() => 0),
    bound,
    proven
  } = yield* cheapestPacks(problem.needs, problem.packs, work);
  const order = reckonedOrder(problem, counts);
  if (order === undefined) return known(reckonedOrder(problem, enough(problem, counts))!, bound);
  return proven ? { order, bound: order.cost, proven } : known(order, bound);
}

/** With more of the first pack that holds an item, where the last digit of a sum leaves it short. */
function enough(problem: PricedProblem, counts: readonly number[]): number[] {
  const { needs, packs } = problem;
  const more = [...counts];
  for (const [item, need] of needs.entries()) {
    const index = packs.findIndex(({ holds }) => holds.some(hold => hold.item === item));
    const { amount } = packs[index]!.holds.find(hold => hold.item === item)!;
    for (let had = 0; !covers((had = amountsOf(problem, more)[item]!), need);)
      more[index] = Math.max(
        packs[index]!.ranges[0]!.least,
        more[index]! + Math.max(1, wholesIn((need - had) / amount))
      );
  }
  return more;
}

function unsupplied({ supplier: _supplier, ...pack }: PricedPack): PricedPack {
  return pack;
}

/** Hundredths are whole: an order is the cheapest where the bound leaves none below its cost. */
function provenBy(bound: number, cost: Minor): boolean {
  return wholeAbove(bound) >= cost;
}

function known(order: ReckonedOrder, bound: number): PartFound {
  const proven = provenBy(bound, order.cost);
  return { order, bound: proven ? order.cost : wholeAbove(bound), proven };
}

/** A bound that is no number, or without end, tells nothing of an order that is known. */
function wholeAbove(bound: number): Minor {
  return Number.isFinite(bound) ? BigInt(Math.max(0, Math.ceil(sureBound(bound)))) : 0n;
}

function partProblem({ needs, packs, suppliers }: PricedProblem, part: Together): PricedProblem {
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
function partsOf({ needs, packs }: PricedProblem): Together[] {
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
