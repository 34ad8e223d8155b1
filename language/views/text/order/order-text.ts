import type { NeedQuantities, OrderCost, OrderQuantities } from '../../../buying/order-contract.ts';
import type { Refusal } from '../../../buying/reckoned-order.ts';
import type { System } from '../../../job/job.ts';
import { grouped, minorOf, moneyText } from '../../../money/money.ts';
import type { JobQuantities } from '../../../quantities/contract.ts';
import { isUnpriced, LOOSE, PIECES, WORKS } from '../../need-words.ts';
import { leftText, soldText } from '../../sold-words.ts';
import { amountsToBuy, fromColumn, moneyHead, toBuyRows } from '../../to-buy-rows.ts';
import { LOCAL_CODES } from '../cautions.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { SENTENCE_WIDTH, wrapped } from '../wrapped.ts';

export interface OrderReport {
  readonly file: string;
  readonly quantities: JobQuantities;
  readonly system: System;
  readonly colours: Colours;
}

/** What to buy in the packs it is sold in, what brings it and what it costs; what it covers; other ways to buy it. */
export function orderText({ file, quantities, system, colours }: OrderReport): string {
  const { title, needs = [], order = [], orderAssumptions = [] } = quantities;
  const block = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [[colours.strong(head), ...lines.map(line => (line === '' ? '' : `  ${line}`))].join('\n')];
  return [
    `${colours.strong(plainLine(title || 'Job without a title'))} · ${plainLine(file)} · order`,
    ...block('To buy', toBuyText(quantities, system, colours)),
    ...block('Brought by', deliveriesText(quantities, colours)),
    ...block('Cost', costText(quantities)),
    ...block('Prices', pricesText(quantities, colours)),
    ...block('Without a price', withoutPriceText(needs, order, system, colours)),
    ...block('What it is for', needsText(needs, system, colours)),
    ...block('Other ways to buy it', otherWaysText(quantities, system, colours)),
    ...block('Assumed', assumedText(needs, orderAssumptions)),
    LOCAL_CODES
  ].join('\n\n');
}

function toBuyText(quantities: JobQuantities, system: System, colours: Colours): string[] {
  const { heads, rows } = toBuyRows(quantities, system);
  return table(
    heads,
    rows.map(({ cells }) => cells.map(plainLine)),
    colours
  );
}

/** Of which day the prices of the order are, each once. */
function pricesText(quantities: JobQuantities, colours: Colours): string[] {
  const { order = [] } = quantities;
  if (order.every(({ priced }) => priced === undefined)) return [];
  const from = fromColumn(quantities);
  const rows = order.map(({ item, supplier, priced = {} }) => [
    plainLine(item),
    ...from.cell(supplier).map(plainLine),
    priced.on ?? 'not said',
    priced.until ?? 'not said',
    wrapped(plainLine(priced.accordingTo ?? ''), ACCORDING_WIDTH).join('\n')
  ]);
  return table(
    [{ head: 'Item' }, ...from.head, { head: 'Of the day' }, { head: 'Holds until' }, { head: 'According to' }],
    [...new Map(rows.map(row => [row.join('\n'), row])).values()],
    colours
  );
}

/** Columns for words of a source. */
const ACCORDING_WIDTH = 44;

function deliveriesText(quantities: JobQuantities, colours: Colours): string[] {
  const { deliveryCharges = [] } = quantities;
  return table(
    [
      { head: 'Supplier' },
      { head: 'Loads', right: true },
      { head: moneyHead('Goods', quantities), right: true },
      { head: moneyHead('Delivery', quantities), right: true }
    ],
    deliveryCharges.map(({ name, loads, goods, cost }) => [
      plainLine(name),
      `${loads}`,
      grouped(minorOf(goods)),
      grouped(minorOf(cost))
    ]),
    colours
  );
}

const TAX: Readonly<Record<OrderCost['tax'], string>> = {
  without: 'All of it without tax.',
  with: 'Tax is in all of it.',
  mixed: 'Tax is in some of it and not in the rest.',
  'not-said': 'Whether tax is in it is not said.'
};

/** `gap`: so much less another order could cost at most. */
function notSettled(gap: bigint, currency: string): string {
  return gap > 0n
    ? `Another order of these packs could cost less, by ${moneyText(gap, currency)} at most: that was not settled.`
    : 'What bringing some of it costs is not known, so none can be shown to cost least.';
}

function costText({ orderCost, needs = [], order = [] }: JobQuantities): string[] {
  if (orderCost === undefined) return [];
  const { currency, tax, goods, delivery, total, bound, proven, deposits } = orderCost;
  const money = (text: string): string => moneyText(minorOf(text), currency);
  const brought = minorOf(delivery) === 0n ? '' : `: goods ${money(goods)}, delivery ${money(delivery)}`;
  const part = needs.some(need => isUnpriced(need, order)) ? ' for what has a price' : '';
  return [
    `${money(total)}${part}${brought}. ${TAX[tax]}`,
    proven
      ? 'No order of these packs that covers the need costs less.'
      : notSettled(minorOf(total) - minorOf(bound), currency),
    ...(deposits === undefined ? [] : [`Deposits paid with it and given back: ${money(deposits)}.`])
  ];
}

function withoutPriceText(
  needs: readonly NeedQuantities[],
  order: readonly OrderQuantities[],
  system: System,
  colours: Colours
): string[] {
  return table(
    [{ head: 'Item' }, { head: 'To buy' }],
    needs.filter(need => isUnpriced(need, order)).map(need => [plainLine(need.item), amountsToBuy(need, system)]),
    colours
  );
}

/** From what is used to what is wanted and what is still to be bought, allowances in sight. */
function needsText(needs: readonly NeedQuantities[], system: System, colours: Colours): string[] {
  const rows = needs.flatMap(({ item, kind, in: amounts, for: places }) => {
    // Lengths of edging are used in part: by the length the row adds up.
    const first = amounts.find(({ measure }) => measure === (kind === 'edging' ? 'm' : '')) ?? amounts[0];
    if (first === undefined) return [];
    const { measure } = first;
    const print = (amount: number | undefined): string =>
      amount === undefined || amount === 0 ? '' : soldText(amount, measure, system, PIECES[kind]);
    const allowed = (['breakage', 'keep', 'loss', 'keptBack', 'moisture', 'settling'] as const)
      .flatMap(key => (first[key] === undefined || first[key] === 0 ? [] : [`${print(first[key])} ${ALLOWED[key]}`]))
      .join('\n');
    const used = print(first.used) === '' ? '' : print(first.used) + LOOSE[measure];
    const there = [first.onHand, first.delivered].reduce<number>((sum, amount) => sum + (amount ?? 0), 0);
    const works = [...new Set(places.map(({ work }) => WORKS[work]))].join(', ');
    return [
      [plainLine(item), works, used, allowed, print(there), soldText(first.toBuy, measure, system, PIECES[kind])]
    ];
  });
  return table(
    [
      { head: 'Item' },
      { head: 'For' },
      { head: 'Used', right: true },
      { head: 'And besides' },
      { head: 'There already', right: true },
      { head: 'To buy', right: true }
    ],
    rows,
    colours
  );
}

const ALLOWED = {
  breakage: 'for breakage',
  keep: 'put by',
  loss: 'for loss',
  keptBack: 'kept back',
  moisture: 'water weighed with it',
  settling: 'lost on the way'
} as const;

/** Each other way, by itself, so that bagged stands beside loose. */
function otherWaysText(quantities: JobQuantities, system: System, colours: Colours): string[] {
  const { needs = [], order = [] } = quantities;
  const from = fromColumn(quantities);
  const rows = needs.flatMap(({ item, kind, choices }) =>
    choices
      .filter(({ sold }) => !order.some(line => line.item === item && line.sold === sold))
      .map(({ pack, supplier, count, amount, left, measure, cost, delivery, notTaken }) => [
        plainLine(item),
        pack === 'loose' ? '' : `${count}`,
        pack,
        ...from.cell(supplier).map(plainLine),
        soldText(amount, measure, system, PIECES[kind]),
        leftText(left, measure, system, PIECES[kind]),
        grouped(minorOf(cost)),
        notTaken === undefined ? (delivery === undefined ? '' : grouped(minorOf(delivery))) : NOT_TAKEN[notTaken]
      ])
  );
  return table(
    [
      { head: 'Item' },
      { head: 'Buy', right: true },
      { head: 'Sold as' },
      ...from.head,
      { head: 'That is', right: true },
      { head: 'Left over', right: true },
      { head: moneyHead('Cost', quantities), right: true },
      { head: moneyHead('Brought alone', quantities), right: true }
    ],
    rows,
    colours
  );
}

const NOT_TAKEN: Readonly<Record<Refusal, string>> = {
  'least-order': 'not brought: below the least order',
  load: 'not brought: too much for a load'
};

function assumedText(needs: readonly NeedQuantities[], of: readonly string[]): string[] {
  const itemsOf = new Map<string, string[]>();
  for (const { item, assumptions } of needs)
    for (const sentence of assumptions) itemsOf.set(sentence, [...(itemsOf.get(sentence) ?? []), item]);
  const all = [
    ...of,
    ...[...itemsOf].map(([sentence, items]) =>
      items.some(item => sentence.toLowerCase().includes(item.toLowerCase()))
        ? sentence
        : `${items.join(', ')}: ${withSmallStart(sentence)}`
    )
  ];
  return all.flatMap(sentence => wrapped(plainLine(sentence), SENTENCE_WIDTH, '  '));
}

function withSmallStart(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}
