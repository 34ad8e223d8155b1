import type { ChoiceQuantities, NeedQuantities, OrderQuantities } from '../buying/order-contract.ts';
import { nameIn, SPIKES } from '../job/key-names.ts';
import type { Job, Key, System } from '../job/job.ts';
import { capital } from '../lowering/amounts.ts';
import { printAs } from '../measures/print.ts';
import { minorOf, moneyText } from '../money/money.ts';
import { type Quantity, shownQuantitiesOf } from '../quantities/catalogue.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import { markdownTable } from './markdown.ts';
import { isUnpriced, LOOSE, WORKS } from './need-words.ts';
import { soldText } from './sold-words.ts';

/** Places of one thing that are told one by one. */
const MOST_PLACES = 8;

/** What is told of something that is bought: what it is, and tables and sentences, in the job's system. */
export interface Bought {
  readonly headline: string;
  readonly parts: readonly string[];
}

/** A unit or material: where it goes, what is needed of it, what is there, what to buy; and what goes with it, as spikes. */
export function boughtThing(quantities: JobQuantities, key: Key, system: System): Bought[] {
  const isSpiked = quantities.areas.some(({ edging }) =>
    edging.some(({ material, spikes = 0 }) => material === nameIn(key) && spikes > 0)
  );
  const all = (quantities.needs ?? []).filter(
    ({ id }) => id === key || id.startsWith(`${key}/`) || (isSpiked && id === SPIKES)
  );
  return all.map(need => {
    const order = (quantities.order ?? []).filter(({ id }) => id === need.id);
    return {
      headline: need.item,
      parts: [needTable(need, order, system), ...toBuyParts(need, order, quantities, system)]
    };
  });
}

function needTable(need: NeedQuantities, order: readonly OrderQuantities[], system: System): string {
  const { for: places, in: amounts } = need;
  const told = places
    .slice(0, MOST_PLACES)
    .map(place => [
      placeText(place),
      place.amount === undefined || place.measure === undefined ? '' : amountText(place.amount, place.measure, system)
    ]);
  const more = places.length - told.length;
  const numbers = numbersOf(need, order);
  const rows = numbers === undefined ? [] : numberRows(numbers, system);
  // In the measure in which it is bought as well, or could be.
  const isThere = amounts.every(({ toBuy }) => toBuy === 0);
  const bought = isThere
    ? []
    : amounts.filter(({ measure }) => order.length === 0 || measure === order[0]!.needMeasure);
  const toBuy = [...new Set([...(numbers === undefined ? [] : [numbers]), ...bought])];
  const toBuyText = toBuy.map(({ toBuy: amount, measure }) => amountText(amount, measure, system)).join(', or ');
  const [{ words }] = shownQuantitiesOf('need').filter(({ key }) => key === 'toBuy') as [Quantity];
  return markdownTable(
    ['', ''],
    [
      ...told,
      ...(more > 0 ? [[`and ${more} more`, '']] : []),
      ...rows,
      ...(toBuyText === '' ? [] : [[words, toBuyText]])
    ]
  );
}

type Amounts = NeedQuantities['in'][number];

/** In the measure of all its places, so that the table adds up; else in that in which it is bought. */
function numbersOf(
  { for: places, in: amounts }: NeedQuantities,
  order: readonly OrderQuantities[]
): Amounts | undefined {
  const shared = new Set(places.map(({ measure }) => measure));
  const wanted = shared.size === 1 ? [...shared][0] : order[0]?.needMeasure;
  return amounts.find(({ measure }) => measure === wanted) ?? amounts[0];
}

/** From what is used to what is there; what is used is not told again as wanted. */
function numberRows(numbers: Amounts, system: System): string[][] {
  const values: Readonly<Record<string, unknown>> = { ...numbers };
  return shownQuantitiesOf('need').flatMap(({ key, words }) => {
    const value = values[key];
    if (typeof value !== 'number' || value === 0 || key === 'toBuy') return [];
    return key === 'used' && value === numbers.wanted ? [] : [[words, amountText(value, numbers.measure, system)]];
  });
}

function amountText(amount: number, measure: Amounts['measure'], system: System): string {
  return soldText(amount, measure, system) + LOOSE[measure];
}

/** `Bed of drive`, `Edging of drive, G2 to T1`. */
function placeText({ work, area, drain, side }: NeedQuantities['for'][number]): string {
  const where = area ?? drain;
  const of = where === undefined ? '' : ` of ${nameIn(where)}`;
  return `${capital(WORKS[work])}${of}${side === undefined ? '' : `, ${side}`}`;
}

function toBuyParts(
  need: NeedQuantities,
  order: readonly OrderQuantities[],
  quantities: JobQuantities,
  system: System
): string[] {
  if (order.length > 0) return [orderTable(order, quantities, system), ...notSettled(order)];
  if (quantities.orderCost !== undefined && isUnpriced(need, order)) return ['It has no price yet.'];
  return need.in.every(({ toBuy }) => toBuy === 0) ? ['Nothing is left to buy.'] : [];
}

function orderTable(
  order: readonly OrderQuantities[],
  { orderCost, deliveryCharges = [] }: JobQuantities,
  system: System
): string {
  return markdownTable(
    ['Sold as', 'Buy', 'That is', 'Left over', 'Cost'],
    order.map(({ pack, count, amount, left, needMeasure, cost, supplier }) => {
      const name = deliveryCharges.find(one => one.supplier === supplier)?.name ?? nameIn(supplier ?? '');
      return [
        supplier === undefined ? pack : `${pack}, ${name}`,
        pack === 'loose' ? '' : printAs('count', count, system),
        soldText(amount, needMeasure, system),
        soldText(left, needMeasure, system),
        cost === undefined ? 'with another' : moneyText(minorOf(cost), orderCost!.currency)
      ];
    })
  );
}

function notSettled(order: readonly OrderQuantities[]): string[] {
  return [
    ...(order.some(({ notBrought }) => notBrought === true)
      ? ['Who brings it is not told: that is not in the cost.']
      : []),
    ...(order.every(({ proven }) => proven)
      ? []
      : ['Whether another order costs less is not settled here; `paving order` searches longer.'])
  ];
}

/** What is bought from one supplier, in how many loads, and what bringing it costs. */
export function boughtFrom(quantities: JobQuantities, key: Key, system: System): Bought | undefined {
  const { order = [], deliveryCharges = [], orderCost } = quantities;
  if (orderCost === undefined) return undefined;
  const lines = order.filter(({ supplier }) => supplier === key);
  if (lines.length === 0) return { headline: nameIn(key), parts: ['Nothing is left to buy there.'] };
  const money = (text: string): string => moneyText(minorOf(text), orderCost.currency);
  const rows = deliveryCharges
    .filter(({ supplier }) => supplier === key)
    .flatMap(({ loads, goods, cost, mass }) => [
      ['Goods', money(goods)],
      ['Loads', printAs('count', loads, system)],
      ...(mass === undefined ? [] : [['Weight', soldText(mass, 'kg', system)]]),
      ['Delivery', money(cost)]
    ]);
  return {
    headline: nameIn(key),
    parts: [
      linesTable(lines, quantities, system),
      ...(rows.length === 0 ? [] : [markdownTable(['', ''], rows)]),
      ...notSettled(lines)
    ]
  };
}

function linesTable(lines: readonly OrderQuantities[], { orderCost }: JobQuantities, system: System): string {
  return markdownTable(
    ['Item', 'Buy', 'Sold as', 'That is', 'Cost'],
    lines.map(({ item, pack, count, amount, needMeasure, cost }) => [
      item,
      pack === 'loose' ? '' : printAs('count', count, system),
      pack,
      soldText(amount, needMeasure, system),
      cost === undefined ? 'with another' : moneyText(minorOf(cost), orderCost!.currency)
    ])
  );
}

/** A way to sell something: how much is bought so, or what it would take and cost by itself. */
export function boughtAs(quantities: JobQuantities, key: Key, { system }: Job): Bought | undefined {
  const { order = [], needs = [], orderCost } = quantities;
  if (orderCost === undefined) return undefined;
  const money = (text: string): string => moneyText(minorOf(text), orderCost.currency);
  const [first, ...others] = order.filter(({ sold }) => sold === key);
  if (first !== undefined) {
    // Further lines are those of the other sizes in a pack of several.
    const items = [first, ...others].map(({ item }) => item).join(', ');
    const amounts =
      others.length > 0 ? `${first.count} of them` : packsText({ ...first, measure: first.needMeasure }, system);
    const cost = first.cost === undefined ? '' : `, for ${money(first.cost)}`;
    return { headline: `${items}, ${first.pack}`, parts: [`To buy: ${amounts}${cost}.`, ...notSettled([first])] };
  }
  const [other] = needs.flatMap(({ item, choices }) =>
    choices.filter(({ sold }) => sold === key).map(choice => ({ item, ...choice }))
  );
  if (other === undefined) return undefined;
  const amounts = packsText(other, system);
  const parts = [`None to buy. All of it bought so would be ${amounts}, for ${money(other.cost)}.`];
  return { headline: `${other.item}, ${other.pack}`, parts };
}

/** `6 of them, 5.10 t, 380 kg left over` */
function packsText(
  { pack, count, amount, left, measure }: Pick<ChoiceQuantities, 'pack' | 'count' | 'amount' | 'left' | 'measure'>,
  system: System
): string {
  const packs = pack === 'loose' ? [] : [`${printAs('count', count, system)} of them`];
  const isEach = measure === 'piece' && amount === count && packs.length > 0;
  const over = left === 0 ? 'nothing' : soldText(left, measure, system);
  return [...packs, ...(isEach ? [] : [soldText(amount, measure, system)]), `${over} left over`].join(', ');
}
