// Where deliveries couple what is bought: without the solver a good order with its bound, with it the cheapest.
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { IntegerSolver } from '../../language/buying/integer-solver.ts';
import { cheapestOrder } from '../../language/buying/order.ts';
import type { OrderProblem, Pack } from '../../language/buying/order-problem.ts';
import { drain, Paving } from '../../language/paving.ts';
import { loadIntegerSolver } from '../../server/cli/integer-solver.ts';
import { inMemory } from '../language/in-memory.ts';
import { wrongWorkings } from '../quantities/workings.ts';
import { COUPLED } from './coupled-job.ts';

describe('a load and a little more', () => {
  async function looked(solver?: IntegerSolver) {
    const paving = new Paving(inMemory({ 'job.paving': COUPLED }));
    if (solver !== undefined) paving.lendSolver(solver);
    await paving.load('job.paving');
    const { quantities, workings } = drain(paving.evaluate('job.paving'))!.numbers!;
    expect(wrongWorkings(quantities, workings)).toEqual([]);
    const lines = quantities.order!.map(({ count, pack, cost }) => `${count} ${pack} ${cost}`);
    return { lines, cost: quantities.orderCost, assumed: quantities.orderAssumptions ?? [], paving };
  }

  test('without the solver: two loads, and how far that may be from the best', async () => {
    const { lines, cost, assumed } = await looked();
    expect(lines).toEqual(['17 loose 323.00']);
    // The search counts steps, no time: it comes to the same everywhere.
    expect(assumed.filter(text => text.includes('stopped'))).toEqual([]);
    expect(cost).toMatchObject({ total: '453.00', bound: '388.00', proven: false });
  });

  test('with it: one load and eight bags', async () => {
    const { lines, cost } = await looked(await loadIntegerSolver());
    expect(lines).toEqual(['16 loose 304.00', '8 bag of 50 lb 40.00']);
    expect(cost).toMatchObject({ total: '409.00', bound: '409.00', proven: true });
  });

  test('lent later, it is asked once', async () => {
    const { paving } = await looked();
    const solver = await loadIntegerSolver();
    let asked = 0;
    paving.lendSolver((model, limit) => {
      asked++;
      return solver(model, limit);
    });
    const before = paving.session.computations.order;
    expect(drain(paving.evaluate('job.paving'))!.numbers!.quantities.orderCost!.total).toBe('409.00');
    const first = asked;
    expect(first).toBeGreaterThan(0);
    drain(paving.evaluate('job.paving'));
    expect(asked).toBe(first);
    expect(paving.session.computations.order).toBe(before + 1);
  });

  test('another price works the order out anew, and nothing else', async () => {
    const { paving } = await looked();
    const before = paving.session.computations;
    paving.setText('job.paving', COUPLED.replace('for 5 USD', 'for 4 USD'));
    expect(drain(paving.evaluate('job.paving'))!.numbers!.quantities.orderCost!.proven).toBe(false);
    expect(paving.session.computations).toEqual({ ...before, order: before.order + 1 });
  });

  test('stopped at its limit: the order that was known, with the better bound', async () => {
    const stopped: IntegerSolver = () => ({ bound: 40_000.5 });
    const { lines, cost, assumed } = await looked(stopped);
    expect(lines).toEqual(['17 loose 323.00']);
    expect(cost).toMatchObject({ total: '453.00', bound: '400.01', proven: false });
    expect(assumed.filter(text => text.includes('stopped after a set time'))).toHaveLength(1);
  });

  test('what a solver answers counts only when it covers the need', async () => {
    const wrong: IntegerSolver = ({ columns }) => ({ values: columns.map(() => 0), bound: 0 });
    expect((await looked(wrong)).cost).toMatchObject({ total: '453.00', bound: '388.00', proven: false });
  });
});

describe('the search is limited', () => {
  const pack = (amount: number, price: string): Pack => ({
    holds: [{ item: 0, amount }],
    prices: [{ from: 1, each: new Fraction(price) }],
    least: 0,
    loose: false,
    mass: 0,
    volume: 0
  });
  const problem = (...packs: Pack[]): OrderProblem => ({ needs: [39_993], packs, suppliers: [] });

  test('packs of one rate are not tried in every mix', () => {
    const order = drain(cheapestOrder(problem(pack(10, '0.40'), pack(25, '1'), pack(850, '34'))));
    expect(order.cost).toBe(159_980n);
    expect(order.left).toEqual([2]);
    expect(order.parts[0]!.proven).toBe(true);
    expect(order.steps).toBeLessThan(20_000);
  });

  test('at its limit it keeps the best that it found, and its bound', () => {
    // Rates that hardly differ, and sizes that never meet.
    const packs = [7.01, 11.03, 13.07, 17.11, 19.13].map((size, index) => pack(size, (size + index / 1000).toFixed(2)));
    const { cost, counts, parts, steps } = drain(cheapestOrder(problem(...packs)));
    const covered = packs.reduce((sum, { holds }, index) => sum + holds[0]!.amount * counts[index]!, 0);
    expect(covered).toBeGreaterThanOrEqual(39_993);
    expect(steps).toBeLessThanOrEqual(200_001);
    const [{ bound, proven }] = parts as [(typeof parts)[0]];
    expect(bound).toBeLessThanOrEqual(cost);
    expect(proven).toBe(bound === cost);
  });
});

test('a pack that no load takes, or an order that is too small for its only supplier, is told as not brought', () => {
  const heavy: OrderProblem = {
    needs: [3],
    packs: [
      {
        holds: [{ item: 0, amount: 1 }],
        prices: [{ from: 1, each: new Fraction(10) }],
        least: 0,
        loose: false,
        supplier: 0,
        mass: 900,
        volume: 0
      }
    ],
    suppliers: [{ charge: new Fraction(50), loadMass: 800 }]
  };
  expect(drain(cheapestOrder(heavy))).toMatchObject({ cost: 3000n, parts: [{ notBrought: true, proven: false }] });
});
