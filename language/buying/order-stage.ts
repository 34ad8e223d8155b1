import type { Given, Key } from '../job/job.ts';
import type { PriceList, Supplier } from '../job/prices.ts';
import { Ledger } from '../money/ledger.ts';
import type { Working } from '../quantities/contract.ts';
import { Book } from '../quantities/page.ts';
import { choicesOf } from './choices.ts';
import { deliveryLines } from './delivery-lines.ts';
import type { IntegerSolver } from './integer-solver.ts';
import { type NeedsInputs, needsOf } from './needs.ts';
import { type OfferedOrder, offeredOrder } from './offers.ts';
import { cheapestOrder, type Order, type OrderPart } from './order.ts';
import type { BuyingQuantities } from './order-contract.ts';
import { orderCost } from './order-cost.ts';
import { type FoundOrder, orderLines } from './order-lines.ts';

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
  const found: FoundOrder = { job: inputs.job, offered, order, book, ledger };
  const lines = orderLines(found);
  const deliveryCharges = deliveryLines(lines, found);
  const assumptions = [
    ...offered.assumptions,
    ...loadAssumptions(offered, order),
    ...(inputs.solves && order.parts.some(isLeftOpen) ? [STOPPED] : [])
  ];
  return {
    quantities: {
      needs: needs.map(need => ({ ...need.numbers, choices: choicesOf(need, offered, book, ledger) })),
      order: lines.map(({ quantities }) => quantities),
      ...(deliveryCharges.length === 0 ? {} : { deliveryCharges }),
      orderCost: orderCost(lines, deliveryCharges, order, ledger),
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
          `Loads of ${name} are counted by weight and loose volume, and whole packs of one kind; how packs of several kinds share a load is not worked out.`
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
