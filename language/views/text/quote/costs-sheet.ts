import type { CostLine } from '../../../pricing/cost-line.ts';
import { SHARE_OF } from '../../../pricing/own-costs.ts';
import { areaMeasure, type Sum } from '../../../pricing/grouped-costs.ts';
import { grouped, moneyText } from '../../../money/money.ts';
import { workingLine } from '../../working-line.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';
import { costLabel } from './cost-label.ts';
import { broken, type Row, columnsOf, line, wordsOf } from './price-table.ts';
import { type QuoteInput, SHEET_WIDTH } from './quote-input.ts';
import { scopeText } from './scope.ts';
import { assumptions, notPriced, points, section, validity } from './stated.ts';
import { KIND_WORDS } from './work-words.ts';

/** The costs behind a price, for the one who offers it: every line, where it goes, and how cost becomes price. */
export function costsSheet(input: QuoteInput, withWorkings: boolean): string {
  const { job, money, numbers, costs, colours } = input;
  const name = money.quote === undefined ? 'Costs' : `Costs behind ${plainLine(money.quote.name)}`;
  const deposits = `Deposits paid with the order and given back: ${moneyText(costs.deposits, costs.currency)}.`;
  return [
    [
      ...wrapped(`${name}: ${plainLine(job.title || 'Job without a title')}`, SHEET_WIDTH).map(colours.strong),
      'Not for the client.',
      ...validity(money, costs.currency)
    ].join('\n'),
    ...section('What is laid', scopeText(job, numbers.quantities.areas, colours), colours),
    ...section(
      'Costs, and what becomes the price',
      [...costTable(input), ...(costs.deposits === 0n ? [] : ['', deposits])],
      colours
    ),
    ...section('By area', areaTable(input), colours),
    ...section('By side', edgeTable(input), colours),
    ...section('By task', taskTable(input), colours),
    ...section('Not priced', notPriced(input, true), colours),
    ...section('Not part of this work', points(money.excludes), colours),
    ...section('Taken as so', [...points(taken(input)), ...assumptions(input, true)], colours),
    ...(withWorkings ? section('Workings', workings(input), colours) : [])
  ].join('\n\n');
}

function costTable({ job, money, costs, colours }: QuoteInput): string[] {
  const { lines, kinds, passedOn, overhead, profit, perUnit } = costs;
  const kindRows = ({ kind, cost }: (typeof kinds)[number]): Row[] => {
    const own = lines.filter(each => each.kind === kind);
    const single = own.length === 1 ? own[0] : undefined;
    return single === undefined
      ? [
          [KIND_WORDS[kind], '', ''],
          ...own.map(each => line(`  ${underHead(each)}${marks(each)}`, each.cost)),
          line(`  ${KIND_WORDS[kind]} together`, cost)
        ]
      : [line(plainLine(single.title) + marks(single), cost)];
  };
  const rows: Row[] = [
    ...kinds.filter(({ kind }) => kind !== 'taken-off').flatMap(kindRows),
    line('Costs', costs.costs, perUnit?.costs),
    ...(passedOn === 0n ? [] : [line('  of them passed on at cost', passedOn)]),
    ...(money.overhead === undefined ? [] : [line(`Overhead, ${money.overhead.written} of the costs`, overhead)]),
    ...(money.profit === undefined ? [] : [line(profitWords(money.profit), profit)]),
    ...kinds.filter(({ kind }) => kind === 'taken-off').flatMap(kindRows),
    line(money.tax === undefined ? 'Price' : 'Price without tax', costs.price, perUnit?.price),
    ...(money.tax === undefined
      ? []
      : [
          line(`Tax, ${money.tax.written} of ${grouped(costs.taxed)}`, costs.tax),
          line('To pay', costs.total, perUnit?.total)
        ])
  ];
  return table(columnsOf(costs.currency, job.system), rows, colours);
}

/** Under the word of its kind a line need not begin with it: `Labour: Dig`. */
function underHead({ kind, title }: CostLine): string {
  return plainLine(title).replace(`${KIND_WORDS[kind]}: `, '');
}

function marks({ kind, untaxed, passedOn }: CostLine): string {
  const all = [...(passedOn && kind !== 'taken-off' ? ['at cost'] : []), ...(untaxed ? ['no tax'] : [])];
  return all.length === 0 ? '' : ` (${all.join(', ')})`;
}

function profitWords({ way, share }: NonNullable<QuoteInput['money']['profit']>): string {
  return way === 'margin' ? `Margin, ${share.written} of the price` : `Markup, ${share.written} on costs and overhead`;
}

/** Room for the words of a line with four columns of money behind it. */
const AREA_WORDS = 32;

/** Cost and price side by side, and for a unit of area. */
function areaTable({ job, costs, colours }: QuoteInput): string[] {
  const each = `a ${areaMeasure(job.system)}`;
  const columns = ['Cost', each, 'Price', each].map(head => ({ head, right: true }));
  const row = (words: string, { cost, price, perUnit }: Sum & { readonly perUnit?: Sum }): string[] => {
    const [costEach, priceEach] = perUnit === undefined ? ['', ''] : [grouped(perUnit.cost), grouped(perUnit.price)];
    return [broken(words, AREA_WORDS), grouped(cost), costEach, grouped(price), priceEach];
  };
  const rows = [
    ...costs.areas.flatMap(area => [
      row(plainLine(area.name), area),
      ...area.works.map(work => row(`  ${wordsOf(work)}`, work))
    ]),
    ...(costs.wholeJob.length === 0 ? [] : [['The job as a whole', '', '', '', '']]),
    ...costs.wholeJob.map(work => row(`  ${wordsOf(work)}`, work))
  ];
  return costs.areas.length === 0 ? [] : table([{ head: 'Area' }, ...columns], rows, colours);
}

const COST_AND_PRICE = [
  { head: 'Cost', right: true },
  { head: 'Price', right: true }
];

function edgeTable({ costs, colours }: QuoteInput): string[] {
  const rows = costs.areas.flatMap(({ name, edges }) =>
    edges.map(({ edge, cost, price }) => [`${plainLine(name)}, ${plainLine(edge)}`, grouped(cost), grouped(price)])
  );
  return rows.length === 0 ? [] : table([{ head: 'Side' }, ...COST_AND_PRICE], rows, colours);
}

function taskTable({ costs, colours }: QuoteInput): string[] {
  const rows = costs.tasks.map(({ task, cost, price }) => [task.replaceAll('-', ' '), grouped(cost), grouped(price)]);
  return rows.length === 0 ? [] : table([{ head: 'Task' }, ...COST_AND_PRICE], rows, colours);
}

/** How the money was reckoned, where a reader could take it otherwise. */
function taken({ money, costs }: QuoteInput): string[] {
  const { contingency, overhead, profit } = money;
  return [
    ...costs.assumed,
    ...(contingency === undefined ? [] : [`Contingency is a share of ${SHARE_OF[contingency.of]}.`]),
    ...(costs.passedOn === 0n || (overhead === undefined && profit === undefined)
      ? []
      : ['What is passed on at cost bears neither overhead nor margin.'])
  ];
}

/** Of every line and total; what goes where only parts them. */
function workings({ job, costs }: QuoteInput): string[] {
  return Object.entries(costs.workings).flatMap(([pointer, working]) => {
    const label = costLabel(pointer, costs);
    if (label === undefined) return [];
    return wrapped(`${plainLine(label)} = ${workingLine(working, job.system)}`, SHEET_WIDTH - 2, '  ');
  });
}
