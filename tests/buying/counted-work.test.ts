// Whatever is asked for, the search ends within its steps, gives way on the way, and comes to an order.
import Fraction from 'fraction.js';
import { beforeAll, describe, expect, test } from 'vitest';
import type { IntegerSolver } from '../../language/buying/integer-solver.ts';
import { cheapestOrder, type Order } from '../../language/buying/order.ts';
import type { OrderProblem, Pack } from '../../language/buying/order-problem.ts';
import { drain } from '../../language/session/session.ts';
import { loadIntegerSolver } from '../../server/cli/integer-solver.ts';

const MOST_STEPS = 200_000;

let solver: IntegerSolver;
beforeAll(async () => {
  solver = await loadIntegerSolver();
});

function pack(holds: Readonly<Record<number, number>>, each: string, more: Partial<Pack> = {}): Pack {
  return {
    holds: Object.entries(holds).map(([item, amount]) => ({ item: Number(item), amount })),
    prices: [{ from: 1, each: new Fraction(each) }],
    least: 0,
    loose: false,
    mass: 0,
    volume: 0,
    ...more
  };
}

/** By item, what there is of it. */
function had({ needs, packs }: OrderProblem, { counts }: Order): number[] {
  return needs.map((_, item) =>
    packs.reduce(
      (sum, { holds }, index) => sum + counts[index]! * (holds.find(hold => hold.item === item)?.amount ?? 0),
      0
    )
  );
}

describe('six suppliers, each of whom sells all twelve items at ten prices', () => {
  const [items, suppliers, prices] = [12, 6, 10];
  const problem: OrderProblem = {
    needs: Array.from({ length: items }, (_, item) => 200 + item * 37),
    packs: Array.from({ length: suppliers * items }, (_, index) => {
      const [supplier, item] = [Math.floor(index / items), index % items];
      const amount = 3 + ((supplier * 7 + item * 5) % 11);
      return pack({ [item]: amount }, '1', {
        supplier,
        mass: 20 + ((item * supplier) % 30),
        prices: Array.from({ length: prices }, (_one, at) => ({
          from: 1 + at * (3 + supplier),
          each: new Fraction(
            Math.round(amount * (100 + supplier * 3 + item) * (1 - at * 0.012)) +
              ((supplier * 13 + item * 17 + at * 5) % 23),
            100
          )
        }))
      });
    }),
    suppliers: Array.from({ length: suppliers }, (_, supplier) => ({
      charge: new Fraction(40 + supplier * 7),
      loadMass: 1200,
      leastOrder: new Fraction(300 + 50 * supplier),
      freeFrom: new Fraction(2000 + 300 * supplier),
      leastMass: 500
    }))
  };
  /** Hundredths: every item in parts of packs at its best price, and nothing for bringing it. */
  const relaxed = problem.needs
    .map((need, item) => {
      const rates = problem.packs.flatMap(({ holds, prices: those }) =>
        holds[0]!.item === item ? those.map(({ each }) => each.valueOf() / holds[0]!.amount) : []
      );
      return need * Math.min(...rates) * 100;
    })
    .reduce((sum, cost) => sum + cost, 0);

  test('all that is tried counts, and it stays within its steps', () => {
    const order = drain(cheapestOrder(problem));
    expect(order.steps).toBeLessThanOrEqual(MOST_STEPS);
    const amounts = had(problem, order);
    problem.needs.forEach((need, item) => expect(amounts[item]).toBeGreaterThanOrEqual(need));
    const [part] = order.parts;
    expect(part!.notBrought).toBeUndefined();
    expect(Number(order.cost)).toBeGreaterThanOrEqual(relaxed);
    expect(Number(part!.bound)).toBeGreaterThanOrEqual(Math.floor(relaxed - problem.packs.length / 2));
    // What is left open is told as open, with its bound.
    expect(part!.bound).toBeLessThanOrEqual(order.cost);
    expect(part!.proven).toBe(part!.bound === order.cost);
    expect(Number(order.cost)).toBeLessThan(1.03 * Number(part!.bound));
  });

  test('it gives way again and again, so that it can be dropped', () => {
    const search = cheapestOrder(problem);
    let pauses = 0;
    while (search.next().done !== true) pauses++;
    expect(pauses).toBeGreaterThan(10);
  });
});

test('counts that neither lead on nor end the search count as steps', () => {
  // Prices far below a hundredth: rounding hides which is dearer.
  const problem = { needs: [50_000], packs: [pack({ 0: 1 }, '0.00001'), pack({ 0: 1 }, '0.0000101')], suppliers: [] };
  const { steps, cost } = drain(cheapestOrder(problem));
  expect(cost).toBe(50n);
  expect(steps).toBeGreaterThan(30_000);
  expect(steps).toBeLessThanOrEqual(MOST_STEPS + 1000);
});

describe('it always comes to an order', () => {
  test('packs of several sizes for more than can be counted through', () => {
    const problem = {
      needs: [250_000, 250_000, 250_000],
      packs: [pack({ 0: 1, 1: 1 }, '3'), pack({ 1: 1, 2: 1 }, '4')],
      suppliers: []
    };
    const order = drain(cheapestOrder(problem));
    expect(had(problem, order).every(amount => amount >= 250_000)).toBe(true);
    expect(order.parts).toMatchObject([{ proven: false }]);
    expect(order.parts[0]!.bound).toBeLessThan(order.cost);
  });

  test('the same from a supplier who brings it', () => {
    const problem = {
      needs: [250_000, 250_000, 250_000],
      packs: [pack({ 0: 1, 1: 1 }, '3', { supplier: 0 }), pack({ 1: 1, 2: 1 }, '4', { supplier: 0 })],
      suppliers: [{ charge: new Fraction(50), leastOrder: new Fraction(100) }]
    };
    const order = drain(cheapestOrder(problem));
    expect(had(problem, order).every(amount => amount >= 250_000)).toBe(true);
    expect(order.deliveries[0]).toMatchObject({ loads: 1, cost: 5000n });
  });

  test('a need that is met but for the last digit', () => {
    for (let digit = 0; digit < 40; digit++) {
      const needs = [9 + digit * 5e-10, 9 + digit * 5e-10];
      const problem = {
        needs,
        packs: [pack({ 0: 1, 1: 1 }, '3'), pack({ 0: 1 }, '2'), pack({ 1: 1 }, '2')],
        suppliers: []
      };
      const order = drain(cheapestOrder(problem));
      had(problem, order).forEach((amount, item) => expect(amount).toBeGreaterThanOrEqual(needs[item]! * (1 - 1e-9)));
    }
  });

  test('an item that is sold in no pack is not brought, and the others are ordered', () => {
    const problem = { needs: [3, 5], packs: [pack({ 1: 1 }, '2')], suppliers: [] };
    const order = drain(cheapestOrder(problem));
    expect(order).toMatchObject({ counts: [5], cost: 1000n });
    expect(order.parts).toMatchObject([{ items: [0], notBrought: true, proven: false }, { proven: true }]);
  });
});

describe('with the solver', () => {
  /** A hair over nine packs: nine cover it. */
  const problem = {
    needs: [9.000000005],
    packs: [pack({ 0: 1 }, '10', { supplier: 0, mass: 600 })],
    suppliers: [{ charge: new Fraction(50), loadMass: 1000 }]
  };

  test('what covers a need here covers it in the model', () => {
    const order = drain(cheapestOrder(problem, solver));
    expect(order).toMatchObject({ counts: [9], cost: 54_000n, parts: [{ proven: true, bound: 54_000n }] });
  });

  test.each([Infinity, NaN, -Infinity])('a bound of %s leaves the order as it was known', bound => {
    const before = drain(cheapestOrder(problem));
    expect(before.parts).toMatchObject([{ proven: false }]);
    expect(drain(cheapestOrder(problem, () => ({ bound })))).toEqual(before);
  });
});
