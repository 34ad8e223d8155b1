import type { Given, Key } from '../job/job.ts';
import type { PriceList, Supplier } from '../job/prices.ts';
import { type IntegerSolver } from './integer-solver.ts';
import { charge, Ledger, quantity, type Reckoned, times } from '../money/ledger.ts';
import { decimalText, type Minor } from '../money/money.ts';
import {
  divide,
  type Expression,
  given,
  leaf,
  measured,
  multiply,
  notBelowNought,
  plainNumber,
  roundedUp,
  subtract,
  sum
} from '../quantities/arithmetic.ts';
import type { Working } from '../quantities/contract.ts';
import { isSize } from '../quantities/layer-volumes.ts';
import { Book, type Page } from '../quantities/page.ts';
import { choicesOf } from './choices.ts';
import { type Need, type NeedsInputs, needsOf } from './needs.ts';
import { costOf, oneHolds } from './offer-cost.ts';
import { type Offer, type OfferedOrder, offeredOrder } from './offers.ts';
import { cheapestOrder, type Order, type OrderPart } from './order.ts';
import type { BuyingQuantities, DeliveryChargeQuantities, OrderQuantities } from './order-contract.ts';
import type { SoldBy } from './used.ts';

/** All that the order hangs on. */
export interface OrderInputs extends NeedsInputs {
  readonly job: Key;
  readonly currency?: string;
  readonly prices: readonly PriceList[];
  readonly suppliers: readonly Supplier[];
  readonly taxRate?: Given;
  /** A solver stands by: what it finds may differ from what is found without it. */
  readonly solves: boolean;
}

export interface OrderResult {
  readonly quantities: BuyingQuantities;
  /** In words, when they are asked for. */
  readonly workings: () => Readonly<Record<string, Working>>;
  /** Steps of the search: a count of work. */
  readonly steps: number;
}

/** What the job needs, and the cheapest order that covers it. */
export function* orderStage(inputs: OrderInputs, solver?: IntegerSolver): Generator<void, OrderResult> {
  const book = new Book();
  const needs = needsOf(inputs, book);
  const offered = offeredOrder(needs, inputs);
  const currency = inputs.currency ?? offered.offers[0]?.way.price.currency;
  if (currency === undefined || offered.needs.length === 0) {
    const bare = needs.map(({ numbers }) => ({ ...numbers, choices: [] }));
    return { quantities: bare.length === 0 ? {} : { needs: bare }, workings: () => book.workings, steps: 0 };
  }
  const order = yield* cheapestOrder(offered.problem, solver);
  const ledger = new Ledger(currency);
  const rows = new OrderRows(inputs.job, offered, order, book, ledger);
  const assumptions = [
    ...offered.assumptions,
    ...loadAssumptions(offered, order),
    ...(inputs.solves && order.parts.some(isLeftOpen) ? [STOPPED] : [])
  ];
  return {
    quantities: {
      needs: needs.map(need => ({ ...need.numbers, choices: choicesOf(need, offered, book, ledger) })),
      ...rows.quantities(),
      ...(assumptions.length === 0 ? {} : { orderAssumptions: assumptions })
    },
    workings: () => ({ ...book.workings, ...ledger.workings }),
    steps: order.steps
  };
}

/** What is taken for granted of bringing what is ordered. */
function loadAssumptions({ problem, offers, suppliers }: OfferedOrder, { counts, deliveries, parts }: Order): string[] {
  const unweighed = offers.flatMap(({ list, words, supplier }, index) =>
    counts[index]! > 0 && problem.packs[index]!.mass === 0 && supplier?.delivery?.loadMass !== undefined
      ? [`The weight of ${list.name}, ${words}, is not known: it is left out of the loads of ${supplier.name}.`]
      : []
  );
  const loaded = suppliers.flatMap(({ name, delivery }, index) =>
    deliveries[index]!.loads > 0 && (delivery?.loadMass !== undefined || delivery?.loadVolume !== undefined)
      ? [
          `Loads of ${name} are counted by weight and loose volume, and whole packs of one kind; how kinds share a load is for the driver.`
        ]
      : []
  );
  const free = suppliers.flatMap(({ name, delivery }, index) => {
    const { loads, cost } = deliveries[index]!;
    return loads > 0 && cost === 0n && delivery?.charge !== undefined && delivery.freeFrom !== undefined
      ? [`No charge for delivery by ${name}: goods of ${delivery.freeFrom.written} or more.`]
      : [];
  });
  return [...unweighed, ...loaded, ...free, ...(parts.some(({ notBrought }) => notBrought) ? [NOT_BROUGHT] : [])];
}

/** Where the solver was asked and did not settle it. */
function isLeftOpen({ proven, notBrought }: OrderPart): boolean {
  return !proven && notBrought !== true;
}

const STOPPED =
  'The search for the cheapest order was stopped after a set time. Worked out again, or on a faster computer, it may come further: the order can then be another one, but never one that covers less.';

const NOT_BROUGHT =
  'Some of it goes on no load, or comes to no order that its supplier takes: what bringing it costs is not counted.';

/** A line of the order, with what others are reckoned from. */
interface Row {
  readonly offer: number;
  readonly item: number;
  readonly measure: SoldBy;
  readonly count: Expression;
  readonly amount: Expression;
  readonly mass?: Expression;
}

class OrderRows {
  readonly #job: Key;
  readonly #offered: OfferedOrder;
  readonly #order: Order;
  readonly #book: Book;
  readonly #ledger: Ledger;
  readonly #costs: { readonly row: number; readonly supplier?: Supplier; readonly cost: Minor }[] = [];
  readonly #deposits: Reckoned[] = [];

  constructor(job: Key, offered: OfferedOrder, order: Order, book: Book, ledger: Ledger) {
    this.#job = job;
    this.#offered = offered;
    this.#order = order;
    this.#book = book;
    this.#ledger = ledger;
  }

  quantities(): BuyingQuantities {
    const { offers } = this.#offered;
    const lines = offers.flatMap((offer, index) =>
      (this.#order.counts[index] ?? 0) > 0 ? offer.holds.map(hold => ({ offer: index, item: hold.need })) : []
    );
    // In the order of the needs; of a pack of several sizes the first line has its cost.
    lines.sort((a, b) => a.item - b.item || a.offer - b.offer);
    const pages = lines.map((_, index) => this.#book.page('order', `/order/${index}`));
    const rows = lines.map((line, index) => this.#row(line, index, lines, pages[index]!));
    const paid = new Set<number>();
    const order = rows.map((row, index): OrderQuantities => {
      const page = pages[index]!;
      this.#left(row, index, rows, page);
      const isFirst = !paid.has(row.offer);
      paid.add(row.offer);
      return this.#quantities(row, index, page, isFirst);
    });
    const deliveryCharges = this.#deliveries(rows);
    return {
      order,
      ...(deliveryCharges.length === 0 ? {} : { deliveryCharges }),
      orderCost: this.#cost(deliveryCharges)
    };
  }

  // ---- rows ----

  #row(
    { offer, item }: { readonly offer: number; readonly item: number },
    index: number,
    lines: readonly { readonly item: number }[],
    page: Page<'order'>
  ): Row {
    const { offers, needs } = this.#offered;
    const { holds, measure } = offers[offer]!;
    const held = holds.find(hold => hold.need === item)!;
    const si = measure === 'piece' ? '' : measure;
    const need = this.#needIn(item, measure);
    page.repeat('need', need.value);
    page.repeat('packHolds', held.amount);
    const one = oneHolds(offers[offer]!, held.given);
    const alone = roundedUp(divide(need, one));
    const bought = this.#order.counts[offer]!;
    const isAlone = lines.filter(line => line.item === item).length === 1 && alone.value === bought;
    const count = page.put('count', isAlone ? alone : measured('in the cheapest order', bought, '', this.#job));
    const amount = page.put('amount', multiply(count, one), si);
    const mass = this.#massOf(offers[offer]!, needs[item]!, count, amount);
    if (mass !== undefined) page.put('mass', mass);
    const pointer = `/order/${index}/mass`;
    return {
      offer,
      item,
      measure,
      count,
      amount,
      ...(mass === undefined
        ? {}
        : { mass: leaf(`weight of ${needs[item]!.thing.name}`, mass.value, 'kg', { pointer }) })
    };
  }

  #massOf({ way, measure }: Offer, { thing }: Need, count: Expression, amount: Expression): Expression | undefined {
    if (way.weight !== undefined && way.word !== 'mixed-pack')
      return multiply(count, given('weight of one', way.weight, 'kg'));
    if (measure === 'kg') return multiply(plainNumber(1), amount);
    if (measure === 'm3' && isSize(thing.material?.loose))
      return multiply(amount, given('loose density', thing.material.loose, 'kg/m3'));
    if (measure === 'piece' && thing.unit?.weight !== undefined)
      return multiply(amount, given('weight of a piece', thing.unit.weight, 'kg'));
    return undefined;
  }

  /** What is to be bought of an item, in the measure of a line. */
  #needIn(item: number, measure: SoldBy): Expression {
    return this.#offered.needs[item]!.toBuy.get(measure)!;
  }

  #left({ item, measure }: Row, index: number, rows: readonly Row[], page: Page<'order'>): void {
    const need = this.#needIn(item, measure);
    const amounts = rows
      .map((row, at) => ({ ...row, at }))
      .filter(row => row.item === item)
      .map(row => {
        const words = row.at === index ? 'bought' : 'bought in other packs';
        const amount = leaf(words, row.amount.value, row.measure === 'piece' ? '' : row.measure, {
          pointer: `/order/${row.at}/amount`
        });
        // So much of it covers the same share of the need, whatever it is measured in.
        return row.measure === measure ? amount : multiply(amount, divide(need, this.#needIn(item, row.measure)));
      });
    const [first, ...others] = amounts;
    const bought = others.length === 0 ? first! : sum(first!, ...others);
    page.put('left', notBelowNought(subtract(bought, need)), measure === 'piece' ? '' : measure);
  }

  #quantities(row: Row, index: number, page: Page<'order'>, isFirst: boolean): OrderQuantities {
    const { offers, needs } = this.#offered;
    const offer = offers[row.offer]!;
    const { thing } = needs[row.item]!;
    const part = this.#partOf(row.item);
    const money = isFirst ? this.#money(offer, row, index) : {};
    return {
      id: thing.key,
      item: thing.name,
      needMeasure: row.measure,
      pack: offer.words,
      sold: offer.way.key,
      ...(offer.supplier === undefined ? {} : { supplier: offer.supplier.key }),
      ...(offer.tax === undefined ? {} : { tax: offer.tax }),
      ...page.numbers,
      ...money,
      proven: part.proven,
      ...(part.notBrought ? { notBrought: true } : {})
    };
  }

  #partOf(item: number): OrderPart {
    return this.#order.parts.find(({ items }) => items.includes(item))!;
  }

  // ---- money ----

  #money(offer: Offer, row: Row, index: number): Pick<OrderQuantities, 'cost' | 'deposit'> {
    const count = quantity('packs', row.count.value, '', { pointer: `/order/${index}/count` });
    const cost = this.#ledger.put(`/order/${index}/cost`, costOf(offer, count));
    this.#costs.push({ row: index, ...(offer.supplier === undefined ? {} : { supplier: offer.supplier }), cost });
    const { deposit } = offer.way;
    if (deposit === undefined || deposit.currency !== this.#ledger.currency) return { cost: decimalText(cost) };
    const pointer = `/order/${index}/deposit`;
    const deposited = this.#ledger.put(pointer, times(count, charge('deposit', deposit)));
    this.#deposits.push(this.#ledger.named(`deposit ${this.#deposits.length + 1}`, deposited, pointer));
    return { cost: decimalText(cost), deposit: decimalText(deposited) };
  }

  #deliveries(rows: readonly Row[]): DeliveryChargeQuantities[] {
    const { suppliers, offers } = this.#offered;
    const brought = suppliers
      .map((supplier, at) => ({ supplier, delivery: this.#order.deliveries[at]! }))
      .filter(({ delivery }) => delivery.loads > 0);
    return brought.map(({ supplier, delivery }, index) => {
      const at = `/deliveryCharges/${index}`;
      const page = this.#book.page('delivery-charge', at);
      const own = rows.filter(({ offer }) => offers[offer]!.supplier === supplier);
      const masses = own.flatMap(({ mass }) => mass ?? []);
      const [first, ...others] = masses;
      const mass =
        first && page.put('mass', others.length === 0 ? multiply(plainNumber(1), first) : sum(first, ...others));
      const { key, loadMass, charge: money, freeFrom } = supplier.delivery!;
      const byMass =
        mass === undefined || loadMass === undefined
          ? undefined
          : roundedUp(divide(mass, given('what a load takes', loadMass, 'kg')));
      const { loads } = delivery;
      page.put('loads', byMass?.value === loads ? byMass : measured('loads of the order', loads, '', this.#job));
      const counted = quantity('loads', loads, '', { pointer: `${at}/loads` });
      const isFree = delivery.cost === 0n && freeFrom !== undefined;
      const each =
        money === undefined || isFree
          ? quantity('charge for a load', 0, this.#ledger.currency, { key: (isFree ? freeFrom.key : undefined) ?? key })
          : charge('charge for a load', money);
      const cost = this.#ledger.put(`${at}/cost`, times(counted, each));
      const goods = this.#ledger.sum(
        `${at}/goods`,
        this.#costs.filter(one => one.supplier === supplier).map(one => this.#named(one))
      );
      return {
        supplier: supplier.key,
        name: supplier.name,
        ...page.numbers,
        goods: decimalText(goods),
        cost: decimalText(cost),
        ...(supplier.tax === undefined ? {} : { tax: supplier.tax })
      };
    });
  }

  #named({ row, cost }: { readonly row: number; readonly cost: Minor }): Reckoned {
    return this.#ledger.named(`line ${row + 1} of the order`, cost, `/order/${row}/cost`);
  }

  #cost(deliveries: readonly DeliveryChargeQuantities[]): NonNullable<BuyingQuantities['orderCost']> {
    const ledger = this.#ledger;
    const goods = ledger.sum(
      '/orderCost/goods',
      this.#costs.map(one => this.#named(one))
    );
    const charges = deliveries.map(({ name, cost }, index) =>
      ledger.named(`delivery from ${name}`, BigInt(cost.replace('.', '')), `/deliveryCharges/${index}/cost`)
    );
    const delivery = ledger.sum('/orderCost/delivery', charges);
    const total = ledger.sum('/orderCost/total', [
      ledger.named('goods', goods, '/orderCost/goods'),
      ledger.named('delivery', delivery, '/orderCost/delivery')
    ]);
    const gap = this.#order.parts.reduce((all, { cost, bound }) => all + cost - bound, 0n);
    const deposits = ledger.sum('/orderCost/deposits', this.#deposits);
    return {
      currency: ledger.currency,
      goods: decimalText(goods),
      delivery: decimalText(delivery),
      total: decimalText(total),
      bound: decimalText(total - gap),
      proven: this.#order.parts.every(({ proven }) => proven),
      ...(deposits === 0n ? {} : { deposits: decimalText(deposits) })
    };
  }
}
