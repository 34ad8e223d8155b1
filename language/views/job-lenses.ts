import type { CostKind } from '../pricing/cost-line.ts';
import type { Costs } from '../pricing/costs.ts';
import type { JobFigures, ShownFigures } from '../job-figures.ts';
import { moneyText } from '../money/money.ts';
import { spanOf } from './schedule-days.ts';

/** What a job costs, and its days, each in a line: nothing where nobody told prices, or who works when. */
export function figuresLines({ figures, broken }: ShownFigures, file: string): string[] {
  const lines = [costLine(figures), daysLine(figures)].filter(line => line !== undefined);
  if (broken === undefined) return lines;
  if (!broken.isBefore) return lines.map(line => `${line} · not complete`);
  return lines.map(line => `before ${errorWords(broken, file)}: ${line}`);
}

/** `the error in line 12`, of another file with its name. */
export function errorWords({ error }: Pick<NonNullable<ShownFigures['broken']>, 'error'>, file: string): string {
  if (error === undefined) return 'the error';
  return `the error in line ${error.line}${error.file === file ? '' : ` of ${error.file}`}`;
}

/** `17,988.72 GBP without tax · 21,336.46 GBP to pay · without 1 price`; nothing where nothing has a price. */
export function costLine({ priced: { costs, job, numbers } }: JobFigures): string | undefined {
  if (costs === undefined || costs.lines.length === 0) return undefined;
  const missing = costs.unpriced.length;
  return [
    ...(job.money.tax === undefined ? [untaxedText(costs)] : taxedText(costs)),
    ...(missing === 0 ? [] : [`without ${missing} ${missing === 1 ? 'price' : 'prices'}`]),
    ...(numbers.quantities.orderCost?.proven === false ? ['cheapest order not proven'] : [])
  ].join(' · ');
}

function taxedText({ price, total, currency }: Costs): string[] {
  return [`${moneyText(price, currency)} without tax`, `${moneyText(total, currency)} to pay`];
}

/** Costs alone are no price, and what is bought is not all costs. */
function untaxedText({ price, costs, kinds, currency }: Costs): string {
  const has = (wanted: CostKind): boolean => kinds.some(({ kind }) => kind === wanted);
  const isOnlyGoods = kinds.every(({ kind }) => kind === 'material' || kind === 'delivery');
  const what = price !== costs ? 'price' : !isOnlyGoods ? 'costs' : has('delivery') ? 'goods and delivery' : 'goods';
  return `${what} ${moneyText(price, currency)}`;
}

/** `13 days left, to Fri 2026-05-15`; before the first is done `22 days, Mon 2026-04-13 to Tue 2026-05-12`. */
export function daysLine({ left, priced: { job } }: JobFigures): string | undefined {
  if (job.work.crew === undefined && job.work.begins === undefined) return undefined;
  if (left.tasks.length === 0) return undefined;
  const isBegun = left.tasks.some(({ done }) => done !== undefined);
  const { daysLeft } = left;
  if (daysLeft === 0) return isBegun ? 'all work done' : undefined;
  const days = `${daysLeft} ${daysLeft === 1 ? 'day' : 'days'}${isBegun ? ' left' : ''}`;
  const span = left.begins === undefined ? undefined : spanOf(left);
  if (span === undefined) return days;
  const { first, last } = span;
  return isBegun ? `${days}, to ${last}` : `${days}, ${first === last ? first : `${first} to ${last}`}`;
}
