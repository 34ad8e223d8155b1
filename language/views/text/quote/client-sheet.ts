import { plainLine } from '../plain-line.ts';
import { wrapped } from '../wrapped.ts';
import { priceTable } from './price-table.ts';
import { type QuoteInput, SHEET_WIDTH } from './quote-input.ts';
import { scopeText } from './scope.ts';
import { SIGNED } from './signed.ts';
import { assumptions, notPriced, points, section, validity } from './stated.ts';

/**
 * The price as a client reads and signs it: what is laid, what it costs by area and for a unit of area, what is not in
 * it, what was assumed. What the work costs the one who offers it does not stand here.
 */
export function clientSheet(input: QuoteInput): string {
  const { job, money, numbers, costs, colours } = input;
  const name = money.quote === undefined ? 'Price' : `Price ${plainLine(money.quote.name)}`;
  const left = notPriced(input, false);
  const told = [
    ...(left.length === 0 ? [] : ['This is not the whole price: see below what is not priced.']),
    ...(money.tax === undefined ? ['No tax is said, so none is in it.'] : [])
  ];
  return [
    [
      ...wrapped(`${name}: ${plainLine(job.title || 'Job without a title')}`, SHEET_WIDTH).map(colours.strong),
      ...validity(money, costs.currency)
    ].join('\n'),
    ...section('What is laid', scopeText(job, numbers.quantities.areas, colours), colours),
    ...section('Price', [...priceTable(input), ...(told.length === 0 ? [] : ['', ...points(told)])], colours),
    ...section('Not priced yet', left, colours),
    ...section('Not part of this work', points(exclusions(input)), colours),
    ...section('Taken as so', assumptions(input, false), colours),
    ...section('Notes', points([...job.notes, CODES]), colours),
    SIGNED
  ].join('\n\n');
}

const CODES = 'Local codes and licensed practice stand over everything here.';

/** Nothing said is said too: whoever signs then knows that nobody thought of it. */
function exclusions({ money }: QuoteInput): readonly string[] {
  return money.excludes.length === 0
    ? ['Nothing is named. What is not listed above is not in the price.']
    : money.excludes;
}
