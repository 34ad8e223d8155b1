import Fraction from 'fraction.js';
import type { Given, Material, System, Unit } from '../job/job.ts';
import type { Money, PriceList, SoldAs, Supplier, TaxWay } from '../job/prices.ts';
import { nameIn } from '../job/key-names.ts';
import type { Expression } from '../quantities/arithmetic.ts';
import { isSize } from '../quantities/layer-volumes.ts';
import { exact } from '../money/money.ts';
import type { Need } from './needs.ts';
import { type OrderProblem, type Pack, type Terms, wholesIn } from './order-problem.ts';
import { type Packed, packMass } from './pack-mass.ts';
import { priceOn, type TaxBasis, taxBasisOf } from './tax-basis.ts';
import type { SoldBy } from './used.ts';

/** One way of buying for one item or, of a pack of several sizes, for several. */
export interface Offer {
  readonly list: PriceList;
  readonly way: SoldAs;
  /** `bag of 0.5 cu ft`. */
  readonly words: string;
  readonly measure: SoldBy;
  readonly supplier?: Supplier;
  readonly tax?: TaxWay;
  /** What one pack, or one step, holds of each need, in `measure`. */
  readonly holds: readonly { readonly need: number; readonly amount: number; readonly given: Given }[];
  readonly step?: Given;
  /** kg of one pack, or one step, where it is known. */
  readonly massOfOne?: Expression;
  /** Price for one pack, or one of `measure` where it is loose, from so many packs or steps on. */
  readonly prices: readonly { readonly from: number; readonly price: Money }[];
}

/** The order to be found, its offers by pack and its needs by item. */
export interface OfferedOrder {
  readonly problem: OrderProblem;
  readonly offers: readonly Offer[];
  /** Needs that are to be bought and have a price, by item. */
  readonly needs: readonly Need[];
  /** The measure that each is reckoned in. */
  readonly measures: readonly SoldBy[];
  /** Suppliers that deliver, as in the problem. */
  readonly suppliers: readonly Supplier[];
  readonly basis: TaxBasis;
  readonly assumptions: readonly string[];
}

export interface OfferInputs {
  readonly prices: readonly PriceList[];
  readonly suppliers: readonly Supplier[];
  readonly units: readonly Unit[];
  readonly system: System;
  /** Tax as a share, where the job says it. */
  readonly taxRate?: Given;
}

/** All ways in which what is to be bought is sold. */
export function offeredOrder(all: readonly Need[], inputs: OfferInputs): OfferedOrder {
  return new Offers(all, inputs).order();
}

class Offers {
  readonly #all: readonly Need[];
  readonly #inputs: OfferInputs;
  readonly #assumptions = new Set<string>();

  constructor(all: readonly Need[], inputs: OfferInputs) {
    this.#all = all;
    this.#inputs = inputs;
  }

  order(): OfferedOrder {
    const wanting = this.#all.filter(({ toBuy }) => [...toBuy.values()].some(({ value }) => value > 0));
    const offered = this.#inputs.prices.flatMap(list =>
      list.ways.flatMap(way => this.#offer(list, way, wanting) ?? [])
    );
    const needs = wanting.filter((_, index) => offered.some(({ holds }) => holds.some(({ need }) => need === index)));
    const places = new Map(needs.map((need, item) => [wanting.indexOf(need), item]));
    const offers = offered.map(offer => ({
      ...offer,
      holds: offer.holds.map(hold => ({ ...hold, need: places.get(hold.need)! }))
    }));
    const measures = needs.map(need => measureOf(need)!);
    const suppliers = this.#inputs.suppliers.filter(({ delivery }) => delivery !== undefined);
    const basis = this.#taxBasis(offers, suppliers);
    const packs = offers.map(offer => this.#pack(offer, needs, measures, suppliers, basis));
    return {
      problem: {
        needs: needs.map(({ toBuy }, item) => toBuy.get(measures[item]!)!.value),
        packs,
        suppliers: suppliers.map((supplier, index) => {
          const own = packs.filter(pack => pack.supplier === index);
          return this.#terms(
            supplier,
            own.every(({ mass }) => mass > 0),
            basis
          );
        })
      },
      offers,
      needs,
      measures,
      suppliers,
      basis,
      assumptions: [...this.#assumptions]
    };
  }

  // ---- offers ----

  #offer(list: PriceList, way: SoldAs, needs: readonly Need[]): Offer | undefined {
    const supplier = this.#inputs.suppliers.find(({ key }) => key === list.supplier);
    const tax = list.tax ?? supplier?.tax;
    const common = {
      list,
      way,
      ...(supplier === undefined ? {} : { supplier }),
      ...(tax === undefined ? {} : { tax })
    };
    if (way.word === 'mixed-pack') {
      const holds = way.holds.flatMap(({ unit, count }) => {
        const need = needs.findIndex(({ thing }) => thing.key === unit);
        return need === -1 ? [] : [{ need, amount: count.value, given: count }];
      });
      const words = `mixed pack of ${way.holds.map(({ unit, count }) => `${count.written} ${nameIn(unit)}`).join(' and ')}`;
      return holds.length === 0
        ? undefined
        : { ...common, words, measure: 'piece', holds, prices: pricesOf(way, 1), ...this.#massOf(way) };
    }
    const need = needs.findIndex(one => isSoldFor(list, way, one));
    if (need === -1) return undefined;
    const isLoose = way.word === 'loose';
    const measure = isLoose ? way.per : way.measure;
    const { name, key, material } = needs[need]!.thing;
    const words = wordsOf(way);
    if (!needs[need]!.toBuy.has(measure)) {
      this.#assumptions.add(`${sentence(words)} of ${name} is left out: ${WHY_NOT[measure]}.`);
      return undefined;
    }
    const given = isLoose ? (way.step ?? this.#stepOf(measure, name)) : way.holds;
    if (!(given.value > 0)) return undefined;
    return {
      ...common,
      words,
      measure,
      holds: [{ need, amount: given.value, given }],
      ...(isLoose ? { step: given } : {}),
      prices: pricesOf(way, isLoose ? given.value : 1),
      ...this.#massOf(way, {
        thing: key,
        ...(isLoose ? { step: given } : {}),
        ...(material?.loose === undefined ? {} : { density: material.loose })
      })
    };
  }

  /** Loose things of which no step is told are weighed out to the nearest hundredth. */
  #stepOf(measure: SoldBy, name: string): Given {
    const { value, written } = STEPS[this.#inputs.system][measure];
    this.#assumptions.add(`Loose ${name} is sold to the nearest ${written}: no step is told.`);
    return { value, written, assumed: { because: 'no step is told' } };
  }

  // ---- packs ----

  #pack(
    offer: Offer,
    needs: readonly Need[],
    measures: readonly SoldBy[],
    suppliers: readonly Supplier[],
    basis: TaxBasis
  ): Pack {
    const { way, measure, step, supplier } = offer;
    const [first] = offer.holds;
    const each = step === undefined ? new Fraction(1) : exact(step.value);
    const { mass, volume } = this.#sizeOf(offer, needs[first!.need]!);
    const at = supplier === undefined ? -1 : suppliers.indexOf(supplier);
    return {
      holds: offer.holds.map(({ need, amount }) => {
        const { toBuy } = needs[need]!;
        const canonical = measures[need]!;
        const share = canonical === measure ? 1 : toBuy.get(canonical)!.value / toBuy.get(measure)!.value;
        return { item: need, amount: amount * share };
      }),
      prices: offer.prices.map(({ from, price }) => ({
        from,
        each: priceOn(basis, new Fraction(price.amount).mul(each), offer.tax)
      })),
      least: way.least === undefined ? 0 : wholesIn(way.least.value / (step?.value ?? 1)),
      loose: step !== undefined,
      ...(at === -1 ? {} : { supplier: at }),
      mass,
      volume
    };
  }

  /** kg and m3 loose of one pack; nought where it is not known. */
  #sizeOf(offer: Offer, { thing }: Need): { readonly mass: number; readonly volume: number } {
    const { measure, massOfOne, holds } = offer;
    const [{ amount }] = holds as readonly [Offer['holds'][number]];
    const density = isSize(thing.material?.loose) ? thing.material.loose.value : undefined;
    const volume = measure === 'm3' ? amount : measure === 'kg' && density !== undefined ? amount / density : 0;
    return { mass: massOfOne?.value ?? 0, volume };
  }

  #massOf(way: SoldAs, more: Omit<Packed, 'weightOf'> = {}): Pick<Offer, 'massOfOne'> {
    const { units } = this.#inputs;
    const massOfOne = packMass(way, { ...more, weightOf: unit => units.find(({ key }) => key === unit)?.weight });
    return massOfOne === undefined ? {} : { massOfOne };
  }

  // ---- suppliers ----

  #terms({ name, delivery, tax }: Supplier, isWeighed: boolean, basis: TaxBasis): Terms {
    const { charge, loadMass, loadVolume, leastOrder, leastMass, freeFrom } = delivery!;
    const money = (amount: Money): Fraction => priceOn(basis, new Fraction(amount.amount), tax);
    if (leastMass !== undefined && !isWeighed)
      this.#assumptions.add(
        `The least order of ${name} is told by weight, and not all weights are known: not checked.`
      );
    return {
      charge: charge === undefined ? new Fraction(0) : money(charge),
      ...(loadMass === undefined || !(loadMass.value > 0) ? {} : { loadMass: loadMass.value }),
      ...(loadVolume === undefined || !(loadVolume.value > 0) ? {} : { loadVolume: loadVolume.value }),
      ...(leastOrder === undefined ? {} : { leastOrder: money(leastOrder) }),
      ...(leastMass === undefined || !isWeighed ? {} : { leastMass: leastMass.value }),
      ...(freeFrom === undefined ? {} : { freeFrom: money(freeFrom) })
    };
  }

  /** Prices with and without tax are compared without it. */
  #taxBasis(offers: readonly Offer[], suppliers: readonly Supplier[]): TaxBasis {
    const charging = suppliers.filter(({ delivery }) => delivery?.charge !== undefined);
    const basis = taxBasisOf(
      [...offers, ...charging].map(({ tax }) => tax),
      this.#inputs.taxRate
    );
    if (basis.takenOff !== undefined)
      this.#assumptions.add(
        `Some prices have tax in them and some not: all stand here without, ${basis.takenOff.written} taken off those that have it in.`
      );
    else if (basis.isMixed)
      this.#assumptions.add(
        'Some prices have tax in them and some not; the job says no tax, so they are compared as they stand.'
      );
    return basis;
  }
}

/** In which measure a need is reckoned: the first in which it is known. */
function measureOf({ toBuy }: Need): SoldBy | undefined {
  return [...toBuy.keys()][0];
}

/** Lengths that are the same piece, m. */
const SAME_LENGTH = 1e-6;

/** Whether a way of selling is of a need: of an edging with pieces for curves by the length of the piece. */
function isSoldFor(list: PriceList, way: SoldAs, { thing }: Need): boolean {
  if (thing.material === undefined || thing.material.curvePieces === undefined) return list.thing === thing.key;
  if (list.thing !== thing.material.key || thing.kind === 'material') return list.thing === thing.key;
  return isCurvePiece(way, thing.material) === (thing.kind === 'curve-pieces');
}

/** Whether pieces for curves of an edging are sold so: by their length. */
export function isCurvePiece(way: SoldAs, { curvePieces }: Pick<Material, 'curvePieces'>): boolean {
  return (
    curvePieces !== undefined &&
    way.word !== 'loose' &&
    way.word !== 'mixed-pack' &&
    way.measure === 'm' &&
    Math.abs(way.holds.value - curvePieces.value) < SAME_LENGTH
  );
}

const STEPS: Readonly<Record<System, Readonly<Record<SoldBy, { readonly value: number; readonly written: string }>>>> =
  {
    metric: {
      kg: { value: 10, written: '10 kg' },
      m3: { value: 0.01, written: '0.01 m3' },
      m2: { value: 0.1, written: '0.1 m2' },
      m: { value: 0.1, written: '0.1 m' },
      piece: { value: 1, written: 'piece' }
    },
    imperial: {
      kg: { value: 9.0718474, written: '0.01 short ton' },
      m3: { value: 0.00764554857984, written: '0.01 cu yd' },
      m2: { value: 0.09290304, written: 'square foot' },
      m: { value: 0.3048, written: 'foot' },
      piece: { value: 1, written: 'piece' }
    }
  };

const WHY_NOT: Readonly<Record<SoldBy, string>> = {
  kg: 'the mass of what is needed is not known; give its densities',
  m3: 'the loose volume of what is needed is not known; give its loose density',
  m2: 'the area of what is needed is not known',
  m: 'the length of what is needed is not known',
  piece: 'the length of one piece is not known; give its size'
};

function pricesOf({ price, breaks }: SoldAs, step: number): Offer['prices'] {
  return [
    { from: 1, price },
    ...breaks.map(one => ({ from: Math.max(1, wholesIn(one.from.value / step)), price: one.price }))
  ];
}

/** How it is sold, as a person would say it. */
function wordsOf(way: Exclude<SoldAs, { word: 'mixed-pack' }>): string {
  if (way.word === 'loose' || way.word === 'piece') return way.word;
  const word = way.word === 'box-of' ? 'box' : way.word.replace('-', ' ');
  return `${word} of ${way.holds.written}`;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
