import Fraction from 'fraction.js';
import fc from 'fast-check';
import type { OrderProblem } from '../../language/buying/order-problem.ts';

/** A problem in whole numbers, so that what it comes to can be found without any of the code under test. */
export interface SmallProblem {
  readonly needs: readonly number[];
  readonly packs: readonly SmallPack[];
  readonly suppliers: readonly SmallTerms[];
}

export interface SmallPack {
  readonly holds: readonly { readonly item: number; readonly amount: number }[];
  /** Sixtieths of a hundredth, so that a line can come to no whole hundredth. */
  readonly prices: readonly { readonly from: number; readonly each: number }[];
  readonly least: number;
  readonly loose: boolean;
  readonly supplier?: number;
  readonly mass: number;
}

/** Money in hundredths. */
export interface SmallTerms {
  readonly charge: number;
  readonly loadMass?: number;
  readonly leastOrder?: number;
  readonly leastMass?: number;
  readonly freeFrom?: number;
}

export const PARTS = 60;

export function asProblem({ needs, packs, suppliers }: SmallProblem): OrderProblem {
  const money = (hundredths: number): Fraction => new Fraction(hundredths, 100);
  return {
    needs,
    packs: packs.map(({ prices, ...pack }) => ({
      ...pack,
      volume: 0,
      prices: prices.map(({ from, each }) => ({ from, each: new Fraction(each, 100 * PARTS) }))
    })),
    suppliers: suppliers.map(({ charge, leastOrder, freeFrom, ...terms }) => ({
      ...terms,
      charge: money(charge),
      ...(leastOrder === undefined ? {} : { leastOrder: money(leastOrder) }),
      ...(freeFrom === undefined ? {} : { freeFrom: money(freeFrom) })
    }))
  };
}

/** What an order comes to in hundredths, reckoned in whole numbers; undefined where nobody would take it. */
export interface Came {
  readonly cost: number;
  readonly goods: number;
  readonly left: readonly number[];
  readonly packs: number;
}

/** Half a hundredth goes up. */
function lineCost({ prices, least }: SmallPack, count: number): number | undefined {
  if (count === 0) return 0;
  const price = prices.findLast(({ from }) => from <= count);
  if (count < least || price === undefined) return undefined;
  return Math.floor((2 * price.each * count + PARTS) / (2 * PARTS));
}

export function cameTo({ needs, packs, suppliers }: SmallProblem, counts: readonly number[]): Came | undefined {
  const lines = packs.map((pack, index) => lineCost(pack, counts[index]!));
  if (!lines.every(line => line !== undefined)) return undefined;
  const left = needs.map((need, item) =>
    packs.reduce(
      (sum, { holds }, index) => sum + counts[index]! * (holds.find(hold => hold.item === item)?.amount ?? 0),
      -need
    )
  );
  if (left.some(amount => amount < 0)) return undefined;
  const goods = lines.reduce((sum, line) => sum + line, 0);
  let cost = goods;
  for (const [supplier, terms] of suppliers.entries()) {
    const own = packs.map((pack, index) => ({ pack, index })).filter(({ pack }) => pack.supplier === supplier);
    if (own.every(({ index }) => counts[index] === 0)) continue;
    const bought = own.reduce((sum, { index }) => sum + lines[index]!, 0);
    const mass = own.reduce((sum, { pack, index }) => sum + pack.mass * counts[index]!, 0);
    if (bought < (terms.leastOrder ?? 0) || mass < (terms.leastMass ?? 0)) return undefined;
    let loads = 1;
    if (terms.loadMass !== undefined) {
      loads = Math.max(loads, Math.ceil(mass / terms.loadMass));
      for (const { pack, index } of own) {
        if (pack.loose || counts[index] === 0 || pack.mass === 0) continue;
        const onOne = Math.floor(terms.loadMass / pack.mass);
        if (onOne === 0) return undefined;
        loads = Math.max(loads, Math.ceil(counts[index]! / onOne));
      }
    }
    if (terms.freeFrom === undefined || bought < terms.freeFrom) cost += loads * terms.charge;
  }
  return { cost, goods, left, packs: counts.reduce((sum, count) => sum + count, 0) };
}

/** The best of all orders there are whose packs cost no more than `worth`: every other is dearer than that. */
export function bestOfAll(problem: SmallProblem, worth: number): Came | undefined {
  const { packs } = problem;
  let best: Came | undefined;
  const counts = packs.map(() => 0);
  const from = (at: number, spent: number): void => {
    if (at === packs.length) {
      const came = cameTo(problem, counts);
      if (came !== undefined && (best === undefined || isBetter(came, best, problem.needs))) best = came;
      return;
    }
    const { prices } = packs[at]!;
    const cheapest = Math.min(...prices.map(({ each }) => each));
    for (let count = 0; spent + (cheapest * count) / PARTS <= worth + 1; count++) {
      counts[at] = count;
      from(at + 1, spent + (cheapest * count) / PARTS);
    }
    counts[at] = 0;
  };
  from(0, 0);
  return best;
}

/** Cheaper; as cheap, with less left over; with as little, in fewer packs. */
function isBetter(one: Came, other: Came, needs: readonly number[]): boolean {
  if (one.cost !== other.cost) return one.cost < other.cost;
  const [left, than] = [shareLeft(one, needs), shareLeft(other, needs)];
  return Math.abs(left - than) > 1e-9 ? left < than : one.packs < other.packs;
}

export function shareLeft({ left }: Pick<Came, 'left'>, needs: readonly number[]): number {
  return left.reduce((sum, amount, item) => sum + amount / needs[item]!, 0);
}

interface PackWords {
  readonly items: number;
  readonly suppliers: number;
  readonly partsOfHundredths: boolean;
}

function pack({ items, suppliers, partsOfHundredths }: PackWords, ownItem?: number): fc.Arbitrary<SmallPack> {
  const item = fc.integer({ min: 0, max: items - 1 });
  const amount = fc.integer({ min: 2, max: 12 });
  const one: fc.Arbitrary<readonly number[]> =
    ownItem === undefined
      ? fc.uniqueArray(item, { minLength: 1, maxLength: Math.min(2, items) })
      : fc.constant([ownItem]);
  return fc
    .record({
      items: one,
      amounts: fc.array(amount, { minLength: 2, maxLength: 2 }),
      dear: fc.integer({ min: 40, max: 130 }),
      parts: partsOfHundredths ? fc.integer({ min: 0, max: PARTS - 1 }) : fc.constant(0),
      breakFrom: fc.option(fc.integer({ min: 2, max: 5 })),
      off: fc.integer({ min: 1, max: 9 }),
      least: fc.constantFrom(0, 0, 0, 2, 3),
      loose: fc.boolean(),
      supplier: fc.integer({ min: 0, max: suppliers }),
      mass: fc.integer({ min: 1, max: 6 })
    })
    .map(({ items: of, amounts, dear, parts, breakFrom, off, least, loose, supplier, mass }) => {
      const held = of.map((index, at) => ({ item: index, amount: amounts[at]! }));
      const each = dear * held.reduce((sum, hold) => sum + hold.amount, 0) * PARTS + parts;
      const lower = each - Math.floor((each * off) / 30 / PARTS) * PARTS;
      return {
        holds: held,
        prices: [{ from: 1, each }, ...(breakFrom === null ? [] : [{ from: breakFrom, each: lower }])],
        least,
        loose,
        ...(supplier < suppliers ? { supplier } : {}),
        mass
      };
    });
}

const terms: fc.Arbitrary<SmallTerms> = fc
  .record({
    charge: fc.integer({ min: 0, max: 900 }),
    loadMass: fc.option(fc.integer({ min: 4, max: 14 })),
    leastOrder: fc.option(fc.integer({ min: 200, max: 2500 }), { freq: 2 }),
    leastMass: fc.option(fc.integer({ min: 3, max: 15 }), { freq: 2 }),
    freeFrom: fc.option(fc.integer({ min: 600, max: 4000 }), { freq: 2 })
  })
  .map(all => Object.fromEntries(Object.entries(all).filter(([, value]) => value !== null)) as unknown as SmallTerms);

/** Small problems in which every item is sold in some pack of its own. */
export function smallProblems(
  words: PackWords & { readonly more: number; readonly most: number }
): fc.Arbitrary<SmallProblem> {
  const { items, suppliers, more, most } = words;
  return fc.record({
    needs: fc.array(fc.integer({ min: 1, max: most }), { minLength: items, maxLength: items }),
    packs: fc
      .tuple(
        fc.tuple(...Array.from({ length: items }, (_, item) => pack(words, item))),
        fc.array(pack(words), { maxLength: more })
      )
      .map(([own, others]) => [...own, ...others]),
    suppliers: fc.array(terms, { minLength: suppliers, maxLength: suppliers })
  });
}
