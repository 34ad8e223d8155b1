import type { Key } from '../job/job.ts';
import { lastDay } from '../measures/days.ts';
import { charge, type Ledger, quantity, type Reckoned, times } from '../money/ledger.ts';
import { decimalText, type Minor } from '../money/money.ts';
import {
  divide,
  type Expression,
  leaf,
  measured,
  multiply,
  notBelowNought,
  roundedUp,
  subtract,
  sum
} from '../quantities/arithmetic.ts';
import type { Book, Page } from '../quantities/page.ts';
import { costOf, oneHolds } from './offer-cost.ts';
import type { Offer, OfferedOrder } from './offers.ts';
import type { Order, OrderPart } from './order.ts';
import type { OrderQuantities, PriceSource } from './order-contract.ts';
import { taxInAmount } from './tax-basis.ts';
import { si, type SoldBy } from './used.ts';

/** An order that was found, and what its numbers and their workings are put down in. */
export interface FoundOrder {
  readonly job: Key;
  readonly offered: OfferedOrder;
  readonly order: Order;
  readonly book: Book;
  readonly ledger: Ledger;
}

/** A line of the order, with what others are reckoned from. */
export interface OrderLine {
  readonly offer: Offer;
  readonly mass?: Expression;
  /** Absent on further lines of a pack of several sizes. */
  readonly cost?: Minor;
  readonly deposit?: Minor;
  readonly quantities: OrderQuantities;
}

/** What is bought, in the order of the needs; of a pack of several sizes the first line has its cost and weight. */
export function orderLines(found: FoundOrder): OrderLine[] {
  return new OrderLines(found).all();
}

/** The cost of a line as a value of another working. */
export function namedCost(ledger: Ledger, index: number, cost: Minor): Reckoned {
  return ledger.named(`line ${index + 1} of the order`, cost, `/order/${index}/cost`);
}

interface Row {
  readonly offer: number;
  readonly item: number;
  /** The first line of its pack. */
  readonly isFirst: boolean;
  readonly measure: SoldBy;
  readonly count: Expression;
  readonly amount: Expression;
  readonly mass?: Expression;
}

class OrderLines {
  readonly #job: Key;
  readonly #offered: OfferedOrder;
  readonly #order: Order;
  readonly #book: Book;
  readonly #ledger: Ledger;

  constructor({ job, offered, order, book, ledger }: FoundOrder) {
    this.#job = job;
    this.#offered = offered;
    this.#order = order;
    this.#book = book;
    this.#ledger = ledger;
  }

  all(): OrderLine[] {
    const { offers } = this.#offered;
    const lines = offers.flatMap((offer, index) =>
      (this.#order.counts[index] ?? 0) > 0 ? offer.holds.map(hold => ({ offer: index, item: hold.need })) : []
    );
    lines.sort((a, b) => a.item - b.item || a.offer - b.offer);
    const pages = lines.map((_, index) => this.#book.page('order', `/order/${index}`));
    const rows = lines.map((line, index) => this.#row(line, index, lines, pages[index]!));
    return rows.map((row, index): OrderLine => {
      const page = pages[index]!;
      this.#left(row, index, rows, page);
      return this.#line(row, index, page);
    });
  }

  #row(
    { offer, item }: { readonly offer: number; readonly item: number },
    index: number,
    lines: readonly { readonly offer: number; readonly item: number }[],
    page: Page<'order'>
  ): Row {
    const { offers, needs } = this.#offered;
    const { holds, measure, massOfOne } = offers[offer]!;
    const held = holds.find(hold => hold.need === item)!;
    const need = this.#needIn(item, measure);
    page.repeat('need', need.value);
    page.repeat('packHolds', held.amount);
    const one = oneHolds(offers[offer]!, held.given);
    const alone = roundedUp(divide(need, one));
    const bought = this.#order.counts[offer]!;
    const isAlone = lines.filter(line => line.item === item).length === 1 && alone.value === bought;
    const count = page.put('count', isAlone ? alone : measured('in the cheapest order', bought, '', this.#job));
    const amount = page.put('amount', multiply(count, one), si(measure));
    const isFirst = lines.findIndex(line => line.offer === offer) === index;
    const row = { offer, item, isFirst, measure, count, amount };
    if (!isFirst || massOfOne === undefined) return row;
    const { value } = page.put('mass', multiply(count, massOfOne));
    const pointer = `/order/${index}/mass`;
    return { ...row, mass: leaf(`weight of ${needs[item]!.thing.name}`, value, 'kg', { pointer }) };
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
        const amount = leaf(words, row.amount.value, si(row.measure), {
          pointer: `/order/${row.at}/amount`
        });
        // So much of it covers the same share of the need, whatever it is measured in.
        return row.measure === measure ? amount : multiply(amount, divide(need, this.#needIn(item, row.measure)));
      });
    const [first, ...others] = amounts;
    const bought = others.length === 0 ? first! : sum(first!, ...others);
    page.put('left', notBelowNought(subtract(bought, need)), si(measure));
  }

  #line(row: Row, index: number, page: Page<'order'>): OrderLine {
    const { offers, needs, basis } = this.#offered;
    const offer = offers[row.offer]!;
    const { thing } = needs[row.item]!;
    const part = this.#partOf(row.item);
    const money = row.isFirst ? this.#money(offer, row, index) : {};
    const tax = taxInAmount(basis, offer.tax);
    const priced = priceSource(offer);
    return {
      offer,
      ...(row.mass === undefined ? {} : { mass: row.mass }),
      ...money,
      quantities: {
        id: thing.key,
        item: thing.name,
        needMeasure: row.measure,
        pack: offer.words,
        sold: offer.way.key,
        ...(offer.supplier === undefined ? {} : { supplier: offer.supplier.key }),
        ...(tax === undefined ? {} : { tax }),
        ...page.numbers,
        ...(money.cost === undefined ? {} : { cost: decimalText(money.cost) }),
        ...(money.deposit === undefined ? {} : { deposit: decimalText(money.deposit) }),
        ...(priced === undefined ? {} : { priced }),
        proven: part.proven,
        ...(part.notBrought ? { notBrought: true } : {})
      }
    };
  }

  #partOf(item: number): OrderPart {
    return this.#order.parts.find(({ items }) => items.includes(item))!;
  }

  #money(offer: Offer, row: Row, index: number): Pick<OrderLine, 'cost' | 'deposit'> {
    const count = quantity('packs', row.count.value, '', { pointer: `/order/${index}/count` });
    const cost = this.#ledger.put(`/order/${index}/cost`, costOf(offer, count, this.#offered.basis));
    const { deposit } = offer.way;
    if (deposit === undefined || deposit.currency !== this.#ledger.currency) return { cost };
    const put = this.#ledger.put(`/order/${index}/deposit`, times(count, charge('deposit', deposit)));
    return { cost, deposit: put };
  }
}

/** What a price says of its day stands over what its supplier says. */
function priceSource({ list, supplier }: Offer): PriceSource | undefined {
  const { on, validDays } = list.priced ?? supplier?.priced ?? {};
  if (on === undefined && list.from === undefined) return undefined;
  return {
    ...(on === undefined ? {} : { on }),
    ...(on === undefined || validDays === undefined ? {} : { until: lastDay(on, validDays.value) }),
    ...(list.from === undefined ? {} : { accordingTo: list.from })
  };
}
