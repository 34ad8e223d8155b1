import type { System } from '../../../job/job.ts';
import { areaMeasure, type WorkSum } from '../../../pricing/grouped-costs.ts';
import { grouped, type Minor } from '../../../money/money.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';
import type { QuoteInput } from './quote-input.ts';
import { WORK_WORDS } from './work-words.ts';

/** Room for the words of a line with two columns of money behind it. */
const WORDS = 44;

/** What the client pays: each piece of work of each area, then what is for the job as a whole, tax, the total. */
export function priceTable({ job, money, costs, colours }: QuoteInput): string[] {
  const { currency, areas, wholeJob, price, taxed, tax, total, perUnit } = costs;
  const blank: Row = ['', '', ''];
  const rows: Row[] = [
    ...areas.flatMap(({ name, works, price: all, perUnit: each }): Row[] => [
      [plainLine(name), '', ''],
      ...works.filter(isPriced).map(work => line(`  ${wordsOf(work)}`, work.price, work.perUnit?.price)),
      line(`  ${plainLine(name)} together`, all, each?.price),
      blank
    ]),
    ...(wholeJob.some(isPriced)
      ? [
          ['For the job as a whole', '', ''] as const,
          ...wholeJob.filter(isPriced).map(work => line(`  ${wordsOf(work)}`, work.price)),
          blank
        ]
      : []),
    line(money.tax === undefined ? 'Price' : 'Price without tax', price, perUnit?.price),
    ...(money.tax === undefined
      ? []
      : [line(`Tax, ${money.tax.written} of ${grouped(taxed)}`, tax), line('To pay', total, perUnit?.total)])
  ];
  return table(columnsOf(currency, job.system), rows, colours);
}

export type Row = readonly [string, string, string];

export function columnsOf(currency: string, system: System): { head: string; right?: boolean }[] {
  return [{ head: 'What' }, { head: currency, right: true }, { head: `a ${areaMeasure(system)}`, right: true }];
}

export function line(words: string, amount: Minor, each?: Minor): Row {
  return [broken(words, WORDS), grouped(amount), each === undefined ? '' : grouped(each)];
}

/** Words in several lines, those after the first further in. */
export function broken(words: string, width: number): string {
  const indent = / */.exec(words)![0];
  const parts = wrapped(words.trim(), width - indent.length - 2, '  ');
  return parts.map(part => indent + part).join('\n');
}

export function wordsOf({ work, title, untaxed }: WorkSum): string {
  return `${title === undefined ? WORK_WORDS[work] : plainLine(title)}${untaxed ? ' (no tax)' : ''}`;
}

function isPriced({ cost, price }: WorkSum): boolean {
  return cost !== 0n || price !== 0n;
}
