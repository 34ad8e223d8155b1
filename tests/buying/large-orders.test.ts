// Orders too large for every order to be tried: single items against the integer solver, coupled ones against the bound
// of their relaxation. The models are written here, and share nothing with the code under test.
import fc from 'fast-check';
import highsLoader, { type Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { IntegerSolver } from '../../language/buying/integer-solver.ts';
import { cheapestOrder } from '../../language/buying/order.ts';
import { drain } from '../../language/session/session.ts';
import { loadIntegerSolver } from '../../server/cli/integer-solver.ts';
import { asProblem, cameTo, PARTS, type SmallProblem, smallProblems } from './small-orders.ts';

let solver: IntegerSolver;
let highs: Highs;
beforeAll(async () => {
  solver = await loadIntegerSolver();
  highs = await (highsLoader as unknown as typeof highsLoader.default)();
});

/** The model in the solver's own text; of a relaxation counts and loads need not be whole. */
function modelText({ needs, packs, suppliers }: SmallProblem, isWhole: boolean): string {
  const costs: string[] = [];
  const rows: string[] = [];
  const whole: string[] = [];
  const either: string[] = [];
  const most = Math.max(...needs) + 10;
  const countsOf = (index: number): string[] => packs[index]!.prices.map((_, at) => `n${index}p${at}`);
  packs.forEach(({ prices, least }, index) => {
    prices.forEach(({ from, each }, at) => {
      const [count, used] = [`n${index}p${at}`, `u${index}p${at}`];
      costs.push(`${each / PARTS} ${count}`);
      whole.push(count);
      either.push(used);
      rows.push(`${count} - ${Math.max(1, from, least)} ${used} >= 0`, `${count} - ${most} ${used} <= 0`);
      const next = prices[at + 1];
      if (next !== undefined) rows.push(`${count} <= ${next.from - 1}`);
    });
    rows.push(`${prices.map((_, at) => `u${index}p${at}`).join(' + ')} <= 1`);
  });
  needs.forEach((need, item) => {
    const terms = packs.flatMap(({ holds }, index) =>
      holds
        .filter(hold => hold.item === item)
        .flatMap(({ amount }) => countsOf(index).map(count => `${amount} ${count}`))
    );
    rows.push(`${terms.join(' + ')} >= ${need}`);
  });
  suppliers.forEach(({ charge, loadMass }, supplier) => {
    costs.push(`${charge} l${supplier}`);
    whole.push(`l${supplier}`);
    const own = packs.flatMap((pack, index) => (pack.supplier === supplier ? [{ pack, index }] : []));
    const masses = own.flatMap(({ pack, index }) => countsOf(index).map(count => `${pack.mass} ${count}`));
    if (loadMass !== undefined && masses.length > 0) rows.push(`${masses.join(' + ')} - ${loadMass} l${supplier} <= 0`);
  });
  const wholes = isWhole ? `General\n ${whole.join('\n ')}\nBinary\n ${either.join('\n ')}\n` : '';
  const bounds = isWhole ? '' : `Bounds\n ${either.map(name => `0 <= ${name} <= 1`).join('\n ')}\n`;
  return `Minimize\n ${costs.join('\n + ')}\nSubject To\n ${rows.join('\n ')}\n${bounds}${wholes}End\n`;
}

function least(problem: SmallProblem, isWhole: boolean): number {
  const solved = highs.solve(modelText(problem, isWhole), { output_flag: false, mip_rel_gap: 0 });
  expect(solved.Status).toBe('Optimal');
  return solved.ObjectiveValue;
}

test('one item of thousands: as cheap as the integer solver finds, within few steps', () => {
  const problems = smallProblems({ items: 1, suppliers: 0, partsOfHundredths: false, more: 3, most: 4000 });
  fc.assert(
    fc.property(problems, small => {
      const order = drain(cheapestOrder(asProblem(small)));
      expect(order.parts.map(({ proven }) => proven)).toEqual([true]);
      expect(cameTo(small, order.counts)?.cost).toBe(Number(order.cost));
      expect(Number(order.cost)).toBe(Math.round(least(small, true)));
      expect(order.steps).toBeLessThan(20_000);
    }),
    { seed: 6, numRuns: 60 }
  );
});

describe('many items that deliveries couple', () => {
  const problems = smallProblems({ items: 8, suppliers: 3, partsOfHundredths: false, more: 8, most: 120 });

  test('an order that suppliers take, no cheaper than its relaxation; proven or within its bound', () => {
    let proven = 0;
    fc.assert(
      fc.property(problems, small => {
        const order = drain(cheapestOrder(asProblem(small), solver));
        if (order.parts.some(({ notBrought }) => notBrought === true)) return;
        const came = cameTo(small, order.counts);
        expect(came?.cost).toBe(Number(order.cost));
        const relaxed = { ...small, suppliers: small.suppliers.map(({ freeFrom, ...terms }) => free(terms, freeFrom)) };
        expect(Number(order.cost)).toBeGreaterThanOrEqual(least(relaxed, false) - 1e-6);
        const bound = order.parts.reduce((sum, part) => sum + part.bound, 0n);
        expect(bound).toBeLessThanOrEqual(order.cost);
        expect(Number(bound)).toBeGreaterThanOrEqual(Math.floor(least(relaxed, false)));
        if (bound === order.cost) proven++;
      }),
      { seed: 7, numRuns: 25 }
    );
    expect(proven).toBeGreaterThan(15);
  });

  /** What may cost nothing is left out of the relaxation. */
  function free(
    terms: Omit<SmallProblem['suppliers'][number], 'freeFrom'>,
    freeFrom: number | undefined
  ): SmallProblem['suppliers'][number] {
    return freeFrom === undefined ? terms : { ...terms, charge: 0 };
  }
});
