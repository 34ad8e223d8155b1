import type {
  Again,
  Bought,
  BuiltPart,
  ChangePrice,
  ChangePriceLine,
  UnderWay
} from '../../comparing/under-way/contract.ts';
import type { System } from '../../job/job.ts';
import { listed } from '../../findings/listed.ts';
import { decimalText, minorOf, moneyText } from '../../money/money.ts';
import { NOWHERE, type SheetRow, type SheetSection } from './sheet.ts';
import { hoursText } from '../schedule-days.ts';
import { printedAmount } from './printed-amount.ts';
import { signed } from './signed.ts';

/** What a change does to a job that is under way; for the client without what anything costs the one who works. */
export function underWaySections(
  { until, built, bought, again, price }: UnderWay,
  { system, isForClient }: { readonly system: System; readonly isForClient: boolean }
): SheetSection[] {
  const asBuilt = builtSection(built, system, [
    `What the log tells as done until ${until} is taken as built by the older text.`,
    ...built.flatMap(becauseText),
    ...built.flatMap(outText)
  ]);
  if (!isForClient)
    return [
      asBuilt,
      boughtSection(bought, system),
      againSection(again),
      ...(price === undefined ? [] : [priceSection(price, false)])
    ];
  return [
    // Ground and metres can be seen on the site; volumes and masses are the crew's.
    { ...asBuilt, rows: asBuilt.rows.filter(({ cells: [label] }) => label !== '') },
    daysAgainSection(again, bought.flatMap(batchText)),
    ...(price === undefined ? [] : [priceSection(price, true)])
  ];
}

function builtSection(built: readonly BuiltPart[], system: System, notes: readonly string[]): SheetSection {
  return {
    id: 'under-way',
    heading: 'Already built',
    notes,
    columns: [
      { head: '' },
      ...['Built', 'Stays', 'Made otherwise', 'Comes out', 'Still to build'].map(head => ({ head, right: true }))
    ],
    rows: built.flatMap(part => builtRows(part, system))
  };
}

function builtRows({ stage, name, material, amounts, places }: BuiltPart, system: System): SheetRow[] {
  return amounts.map(({ measure, built, stays, madeOtherwise, comesOut, toBuild }, index) => {
    const print = (value: number): string => unlessNought(printedAmount(value, measure, system));
    const label = `${name}, ${material ?? stage}`;
    return {
      cells: [index === 0 ? label : '', ...[built, stays, madeOtherwise, comesOut, toBuild].map(print)],
      places,
      by: []
    };
  });
}

/** What prints as nought is nothing to a reader. */
function unlessNought(text: string): string {
  return /[1-9]/.test(text.replace(/m[23]/g, '')) ? text : '';
}

function becauseText({ name, stage, because }: BuiltPart): string[] {
  return because.length === 0 ? [] : [`Made otherwise: ${stage} of ${name} ${because.join('; ')}.`];
}

function outText({ name, material, out = [] }: BuiltPart): string[] {
  return out.flatMap(({ shape, pieces }) => {
    if (pieces === undefined) return [];
    const words = `${pieces} ${pieces === 1 ? 'piece' : 'pieces'} of ${material!}${shape === 'curve' ? ' in curves' : ''}`;
    return [`Of ${name} ${words} ${pieces === 1 ? 'comes' : 'come'} out.`];
  });
}

function boughtSection(bought: readonly Bought[], system: System): SheetSection {
  const rows = bought.map((one): SheetRow => {
    const print = (value: number | undefined): string =>
      value === undefined
        ? ''
        : unlessNought(
            one.measure === '' ? String(Math.ceil(value - 1e-6)) : printedAmount(value, one.measure, system)
          );
    const { item, wantedBefore, wanted, have, again, toBuy, over, packs } = one;
    const inPacks = packs
      .map(({ count, pack, amount }) => (pack === 'loose' ? `${print(amount)} loose` : `${count} × ${pack}`))
      .join(', ');
    return {
      cells: [
        one.isAsItWas === true ? `${item}, as it was` : item,
        ...[wantedBefore, wanted, again, have, toBuy].map(print),
        inPacks,
        print(over)
      ],
      places: NOWHERE,
      by: []
    };
  });
  return {
    id: 'under-way',
    heading: 'Bought, and still to buy',
    notes: [...untoldText(bought), ...bought.flatMap(batchText)],
    columns: [
      { head: '' },
      ...['Wanted before', 'Wanted now', 'Again', 'There', 'Still to buy'].map(head => ({ head, right: true })),
      { head: 'In packs' },
      { head: 'Over', right: true }
    ],
    rows
  };
}

function untoldText(bought: readonly Bought[]): string[] {
  const items = bought.filter(({ isTold, have }) => !isTold && have > 0).map(({ item }) => item);
  return items.length === 0
    ? []
    : [`The log tells of no delivery of ${listed(items)} that is enough: what is built is taken as bought.`];
}

function batchText({ item, otherThanBatches: batches }: Bought): string[] {
  if (batches.length === 0) return [];
  const which = batches.map(batch => `"${batch}"`).join(', ');
  return [
    `More of ${item} will be of another batch than ${which}: shades differ. Lay from several packs at once, or keep it to a place of its own.`
  ];
}

function againSection({ tasks, hours, days, hires, holds }: Again): SheetSection {
  const rows = [
    ...tasks.map(({ title, hours: own }) => [title, own === undefined ? 'no rate' : hoursText(own)]),
    ...(tasks.length > 1 ? [['Hours of one person', hoursText(hours)]] : []),
    ...(days > 0 ? [['Days of the crew, parts counted as one', String(days)]] : []),
    ...hires.map(({ title, days: own }) => [`${title}, hired once more`, own === 1 ? '1 day' : `${own} days`])
  ];
  return {
    id: 'under-way',
    heading: 'To come back to',
    notes: holds.map(({ text }) => text),
    columns: [{ head: '' }, { head: 'Hours', right: true }],
    rows: rows.map(cells => ({ cells, places: NOWHERE, by: [] }))
  };
}

/** Days and waits, without what takes how long. */
function daysAgainSection({ days, holds }: Again, besides: readonly string[]): SheetSection {
  const waits = holds.flatMap(({ days: wait, text }) => (wait === undefined ? [] : [text]));
  const rows =
    days > 0 ? [{ cells: ['Days of the crew on what was done before', String(days)], places: NOWHERE, by: [] }] : [];
  const columns = [{ head: '' }, { head: '', right: true }];
  return { id: 'under-way', heading: 'To come back to', notes: [...waits, ...besides], columns, rows };
}

const LABELS: Readonly<Record<ChangePriceLine['id'], readonly [own: string, forClient: string]>> = {
  whole: ['The whole job, as if nothing were built yet', 'The work as it is wanted now, less as it was agreed'],
  lost: ['Built, and taken out or made otherwise', 'Built, and taken out or made otherwise'],
  goods: ['Bought, and no longer wanted', 'Delivered, and no longer wanted'],
  spent: ['Carting and hire spent already', 'Carting and hire spent already'],
  again: ['Hired and carted once more', 'Hired and carted once more']
};

function priceSection(
  { currency, before, lines, together, without, unpriced }: ChangePrice,
  isForClient: boolean
): SheetSection {
  const isTaxed = [before, together, ...lines].some(({ tax }) => Number(tax) !== 0);
  const money = (amount: string): string => moneyText(minorOf(amount), currency);
  const change = (amount: string): string => signed(Number(amount), () => money(amount.replace('-', '')));
  const cells = (
    label: string,
    { costs, price, tax, toPay }: ChangePrice['together'],
    print: (amount: string) => string
  ): string[] => [label, ...[...(isForClient ? [] : [costs]), price, ...(isTaxed ? [tax, toPay] : [])].map(print)];
  const heads = [
    ...(isForClient ? [] : ['At cost']),
    ...(isTaxed ? ['Price without tax', 'Tax', 'To pay'] : ['Price'])
  ];
  const all = [
    cells('As it was', before, money),
    ...lines.map(line => cells(LABELS[line.id][isForClient ? 1 : 0], line, change)),
    ...(lines.length > 1 ? [cells('The change together', together, change)] : []),
    cells('As it is with the change', added(before, together), money)
  ];
  return {
    id: 'under-way',
    heading: 'What the change comes to',
    notes: [
      ...(unpriced.length === 0 ? [] : [`This is not the whole change: there is no price for ${listed(unpriced)}.`]),
      ...without.flatMap(id => NOT_IN_IT[id][isForClient ? 1 : 0])
    ],
    columns: [{ head: '' }, ...heads.map(head => ({ head, right: true }))],
    rows: all.map(row => ({ cells: row, places: NOWHERE, by: [] }))
  };
}

const NOT_IN_IT: Readonly<Record<ChangePrice['without'][number], readonly [own: string[], forClient: string[]]>> = {
  'taking-out': [
    ['Taking out and carting away what is built: no rate tells its hours. `extra` names an amount for it.'],
    ['Taking out and carting away what is built is not in this price.']
  ],
  'used-again': [['Stone, sand, cloth and units that come out count as used again; edging in concrete does not.'], []],
  filling: [
    ['Filling what was dug in vain, with soil that is brought or kept, is in no price.'],
    ['Filling what was dug in vain is not in this price.']
  ]
};

function added(one: ChangePrice['together'], other: ChangePrice['together']): ChangePrice['together'] {
  const sum = (key: keyof ChangePrice['together']): string => decimalText(minorOf(one[key]) + minorOf(other[key]));
  return { costs: sum('costs'), price: sum('price'), tax: sum('tax'), toPay: sum('toPay') };
}
