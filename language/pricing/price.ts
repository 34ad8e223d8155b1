import type { MoneyWords } from '../job/money-lines.ts';
import type { CostLine, CostPart } from './cost-line.ts';
import type { CostSheet } from './cost-sheet.ts';
import { less, over, plus, type Reckoned, times, whole, written } from '../money/ledger.ts';
import { exact, type Minor, split } from '../money/money.ts';

/** From the costs to what the client pays. */
export interface Price {
  /** All cost lines but what is taken off the price. */
  readonly costs: Minor;
  /** Of them those that are passed on at cost. */
  readonly passedOn: Minor;
  /** Taken off the price before tax: nought, or below it. */
  readonly takenOff: Minor;
  readonly overhead: Minor;
  readonly profit: Minor;
  /** Without tax. */
  readonly price: Minor;
  /** The part of the price that bears tax. */
  readonly taxed: Minor;
  readonly tax: Minor;
  /** To pay. */
  readonly total: Minor;
  /** Every part of every line with its price: together they come to the price. */
  readonly parts: readonly PricedPart[];
}

export interface PricedPart extends CostPart {
  readonly line: CostLine;
  readonly price: Minor;
}

/**
 * Overhead is a share of the costs. Margin is a share of the price, markup a share of costs and overhead: 25 % of one is
 * not 25 % of the other. Lines that are passed on bear neither, and what is taken off comes off the price as written.
 */
export function priceOf(sheet: CostSheet, { overhead, profit, tax }: MoneyWords): Price {
  const { ledger, lines } = sheet;
  const named = (wanted: (line: CostLine) => boolean): Reckoned[] =>
    lines.flatMap((line, index) => (wanted(line) ? [sheet.named(index)] : []));
  const costs = ledger.sum(
    '/costs/costs',
    named(line => !isTakenOff(line))
  );
  const passedOn = ledger.sum(
    '/costs/passedOn',
    named(line => line.passedOn && !isTakenOff(line))
  );
  const takenOff = ledger.sum('/costs/takenOff', named(isTakenOff));
  const bearing = ledger.named('costs', costs, '/costs/costs');
  const passed = ledger.named('passed on at cost', passedOn, '/costs/passedOn');
  const base = passedOn === 0n ? bearing : less(bearing, passed);
  const putOverhead = overhead && ledger.put('/costs/overhead', times(written('overhead', overhead), base));
  const own =
    putOverhead === undefined ? base : plus(base, ledger.named('overhead in money', putOverhead, '/costs/overhead'));
  const putProfit = profitOn(own, profit, sheet);
  const [above, besides] = [putOverhead ?? 0n, putProfit ?? 0n];
  const price = ledger.sum('/costs/price', [
    bearing,
    ...(putOverhead === undefined ? [] : [ledger.named('overhead', above, '/costs/overhead')]),
    ...(putProfit === undefined ? [] : [ledger.named(profit!.way, besides, '/costs/profit')]),
    ...(takenOff === 0n ? [] : [ledger.named('taken off', takenOff, '/costs/takenOff')])
  ]);
  const parts = pricedParts(sheet, { costs, price, passedOn, takenOff });
  const untaxed = parts.filter(({ line }) => line.untaxed);
  const withoutTax = ledger.named('price', price, '/costs/price');
  const taxed = ledger.difference(
    '/costs/taxed',
    withoutTax,
    untaxed.map(({ line, price: part, pointer }) => ledger.named(line.title, part, `${pointer}/price`))
  );
  const bearsTax = ledger.named('price that bears tax', taxed, '/costs/taxed');
  const putTax = tax === undefined ? 0n : ledger.put('/costs/tax', times(written('tax', tax), bearsTax));
  const total =
    tax === undefined ? price : ledger.sum('/costs/total', [withoutTax, ledger.named('tax', putTax, '/costs/tax')]);
  return { costs, passedOn, takenOff, overhead: above, profit: besides, price, taxed, tax: putTax, total, parts };
}

function isTakenOff({ kind }: CostLine): boolean {
  return kind === 'taken-off';
}

function profitOn(own: Reckoned, profit: MoneyWords['profit'], sheet: CostSheet): Minor | undefined {
  if (profit === undefined) return undefined;
  const { way, share } = profit;
  const named = written(way, share);
  if (way === 'markup') return sheet.ledger.put('/costs/profit', times(named, own));
  if (share.value >= 1) {
    sheet.leaveOutInside('Margin', 'a margin is a share of the price, less than all of it');
    return undefined;
  }
  return sheet.ledger.put('/costs/profit', over(times(own, named), less(whole(1), named)));
}

/** What lines that bear overhead and margin cost the client, over their parts by what these cost. */
function pricedParts(
  { ledger, lines }: CostSheet,
  { costs, price, passedOn, takenOff }: Pick<Price, 'costs' | 'price' | 'passedOn' | 'takenOff'>
): PricedPart[] {
  const parts = lines.flatMap(line => line.parts.map(part => ({ ...part, line })));
  const bearing = parts.filter(({ line }) => !line.passedOn);
  const prices = split(
    price - passedOn - takenOff,
    bearing.map(({ cost }) => exact(0).add(cost))
  );
  const whole = ledger.named('price', price, '/costs/price');
  const passed = ledger.named('passed on at cost', passedOn, '/costs/passedOn');
  const asWritten = [
    ...(passedOn === 0n ? [] : [passed]),
    ...(takenOff === 0n ? [] : [ledger.named('taken off', takenOff, '/costs/takenOff')])
  ];
  const shared = asWritten.length === 0 ? whole : less(whole, ...asWritten);
  const allCosts = ledger.named('costs', costs, '/costs/costs');
  const bearingCosts = passedOn === 0n ? allCosts : less(allCosts, passed);
  const priceOfPart = new Map<(typeof parts)[number], Minor>();
  bearing.forEach((part, index) => {
    const cost = ledger.named('cost of this part', part.cost, `${part.pointer}/cost`);
    priceOfPart.set(part, prices[index]!);
    if (costs !== passedOn) ledger.share(`${part.pointer}/price`, shared, cost, bearingCosts, prices[index]!);
  });
  return parts.map(part => ({ ...part, price: priceOfPart.get(part) ?? part.cost }));
}
