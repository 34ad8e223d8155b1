import type { NeedQuantities, OrderQuantities } from '../../../buying/order-contract.ts';
import type { System } from '../../../job/job.ts';
import { printAs } from '../../../measures/print.ts';
import { grouped, minorOf, moneyText } from '../../../money/money.ts';
import type { JobQuantities } from '../../../quantities/contract.ts';
import { isUnpriced, LOOSE, WORKS } from '../../need-words.ts';
import { leftText, soldText } from '../../sold-words.ts';
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
    ...block('To buy', toBuyText(order, needs, system, colours)),
    ...block('Brought by', deliveriesText(quantities, colours)),
    ...block('Cost', costText(quantities)),
    ...block('Without a price', withoutPriceText(needs, order, system, colours)),
    ...block('What it is for', needsText(needs, system, colours)),
    ...block('Other ways to buy it', otherWaysText(needs, order, system, colours)),
    ...block('Assumed', assumedText(needs, orderAssumptions)),
    LOCAL_CODES
  ].join('\n\n');
}

function toBuyText(
  order: readonly OrderQuantities[],
  needs: readonly NeedQuantities[],
  system: System,
  colours: Colours
): string[] {
  const pieceOf = (id: string): string => PIECES[needs.find(need => need.id === id)?.kind ?? 'unit'];
  return table(
    [
      { head: 'Item' },
      { head: 'Needed', right: true },
      { head: 'Buy', right: true },
      { head: 'Sold as' },
      { head: 'That is', right: true },
      { head: 'Left over', right: true },
      { head: 'Weight', right: true },
      { head: 'Cost', right: true }
    ],
    order.map(({ id, item, need, needMeasure, pack, count, amount, left, mass, cost, notBrought }) => [
      plainLine(item),
      soldText(need, needMeasure, system, pieceOf(id)),
      pack === 'loose' ? '' : printAs('count', count, system),
      pack + (notBrought === true ? ' (who brings it?)' : ''),
      soldText(amount, needMeasure, system, pieceOf(id)),
      leftText(left, needMeasure, system, pieceOf(id)),
      mass === undefined ? '' : soldText(mass, 'kg', system),
      cost === undefined ? 'with the line above' : grouped(minorOf(cost))
    ]),
    colours
  );
}

/** What one piece of it is called. */
const PIECES: Readonly<Record<NeedQuantities['kind'], string>> = {
  unit: 'piece',
  edging: 'length',
  'curve-pieces': 'piece',
  spikes: 'spike',
  geotextile: 'piece',
  material: 'piece'
};

function deliveriesText({ deliveryCharges = [] }: JobQuantities, colours: Colours): string[] {
  return table(
    [
      { head: 'Supplier' },
      { head: 'Loads', right: true },
      { head: 'Goods', right: true },
      { head: 'Delivery', right: true }
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

function costText({ orderCost, needs = [], order = [] }: JobQuantities): string[] {
  if (orderCost === undefined) return [];
  const { currency, goods, delivery, total, bound, proven, deposits } = orderCost;
  const money = (text: string): string => moneyText(minorOf(text), currency);
  const brought = minorOf(delivery) === 0n ? '' : `: goods ${money(goods)}, delivery ${money(delivery)}`;
  const part = needs.some(need => isUnpriced(need, order)) ? ' for what has a price' : '';
  return [
    `${money(total)}${part}${brought}.`,
    proven
      ? 'No order of these packs that covers the need costs less.'
      : `No order of these packs can cost less than ${money(bound)}; whether one costs less than this was not settled.`,
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
    needs
      .filter(need => isUnpriced(need, order))
      .map(({ item, kind, in: amounts }) => [
        plainLine(item),
        amounts
          .map(({ toBuy, measure }) => soldText(toBuy, measure, system, PIECES[kind]) + LOOSE[measure])
          .join(', or ')
      ]),
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
function otherWaysText(
  needs: readonly NeedQuantities[],
  order: readonly OrderQuantities[],
  system: System,
  colours: Colours
): string[] {
  const rows = needs.flatMap(({ item, kind, choices }) =>
    choices
      .filter(({ sold }) => !order.some(line => line.item === item && line.sold === sold))
      .map(({ pack, count, amount, left, measure, cost, delivery }) => [
        plainLine(item),
        pack === 'loose' ? '' : `${count}`,
        pack,
        soldText(amount, measure, system, PIECES[kind]),
        leftText(left, measure, system, PIECES[kind]),
        grouped(minorOf(cost)),
        delivery === undefined ? '' : grouped(minorOf(delivery))
      ])
  );
  return table(
    [
      { head: 'Item' },
      { head: 'Buy', right: true },
      { head: 'Sold as' },
      { head: 'That is', right: true },
      { head: 'Left over', right: true },
      { head: 'Cost', right: true },
      { head: 'Brought alone', right: true }
    ],
    rows,
    colours
  );
}

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
