// Never less than the need, and no cheaper order: against all orders there are, on small random problems.
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { cheapestOrder, type Order } from '../../language/buying/order.ts';
import type { IntegerSolver } from '../../language/buying/integer-solver.ts';
import { drain } from '../../language/session/session.ts';
import { loadIntegerSolver } from '../../server/cli/integer-solver.ts';
import { asProblem, bestOfAll, cameTo, shareLeft, type SmallProblem, smallProblems } from './small-orders.ts';

let solver: IntegerSolver;
beforeAll(async () => {
  solver = await loadIntegerSolver();
});

/** The order and the best of all, both reckoned in whole numbers. */
function bothOf(small: SmallProblem, lent?: IntegerSolver) {
  const order = drain(cheapestOrder(asProblem(small), lent));
  const came = cameTo(small, order.counts);
  const best = bestOfAll(small, Number(order.cost));
  return { order, came, best };
}

function isProven({ parts }: Order): boolean {
  return parts.every(({ proven }) => proven);
}

describe('one item', () => {
  test.each([
    ['whole hundredths', false, 1],
    ['prices of parts of hundredths', true, 2]
  ])('%s: as cheap as the best of all, with as little left, in as few packs', (_, partsOfHundredths, seed) => {
    const problems = smallProblems({ items: 1, suppliers: 0, partsOfHundredths, more: 3, most: 40 });
    fc.assert(
      fc.property(problems, small => {
        const { order, came, best } = bothOf(small);
        expect(came).toEqual(best);
        expect(Number(order.cost)).toBe(best!.cost);
        expect(order.left).toEqual(best!.left);
        expect(isProven(order)).toBe(true);
      }),
      { seed, numRuns: 400 }
    );
  });
});

test('packs of several sizes: as cheap as the best of all, with as little left, in as few packs', () => {
  const problems = smallProblems({ items: 3, suppliers: 0, partsOfHundredths: false, more: 2, most: 18 });
  fc.assert(
    fc.property(problems, small => {
      const { order, came, best } = bothOf(small);
      expect(came!.cost).toBe(best!.cost);
      expect(shareLeft(came!, small.needs)).toBeCloseTo(shareLeft(best!, small.needs), 9);
      expect(came!.packs).toBe(best!.packs);
      expect(Number(order.cost)).toBe(best!.cost);
      expect(isProven(order)).toBe(true);
    }),
    { seed: 3, numRuns: 200 }
  );
});

describe('items that deliveries couple', () => {
  const problems = smallProblems({ items: 2, suppliers: 2, partsOfHundredths: false, more: 2, most: 14 });

  test('with the solver: as cheap as the best of all, proven', () => {
    let [asked, none] = [0, 0];
    const counted: IntegerSolver = (model, limit) => {
      asked++;
      return solver(model, limit);
    };
    fc.assert(
      fc.property(problems, small => {
        const { order, came, best } = bothOf(small, counted);
        if (order.parts.some(({ notBrought }) => notBrought === true)) {
          none++;
          // Whatever is bought besides the need, nobody takes it.
          expect(bestOfAll(small, Number(order.cost) + 3000)).toBeUndefined();
          return;
        }
        expect(came).toBeDefined();
        expect(Number(order.cost)).toBe(came!.cost);
        expect(came!.cost).toBe(best!.cost);
        expect(isProven(order)).toBe(true);
      }),
      { seed: 4, numRuns: 300 }
    );
    // The bound of the search alone decides most.
    expect(asked).toBeGreaterThan(30);
    expect(none).toBeLessThan(60);
  });

  test('without it: feasible, never under its bound, and proven only where it is the best', () => {
    let [cost, least] = [0, 0];
    fc.assert(
      fc.property(problems, small => {
        const { order, came, best } = bothOf(small);
        if (order.parts.some(({ notBrought }) => notBrought === true)) return;
        expect(came).toBeDefined();
        expect(Number(order.cost)).toBe(came!.cost);
        const bound = order.parts.reduce((sum, part) => sum + part.bound, 0n);
        expect(Number(bound)).toBeLessThanOrEqual(best!.cost);
        if (isProven(order)) expect(came!.cost).toBe(best!.cost);
        cost += came!.cost;
        least += best!.cost;
      }),
      { seed: 5, numRuns: 300 }
    );
    // Together within a few hundredths of the best, on problems drawn to be awkward.
    expect(cost).toBeLessThan(1.03 * least);
  });
});
