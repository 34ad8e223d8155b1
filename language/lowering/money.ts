import type { Key } from '../job/job.ts';
import type { Money, SoldLoose } from '../job/prices.ts';
import type { Expression } from './amounts.ts';
import { moneyOf, type Charges } from './charges.ts';
import type { SpecText } from './names.ts';

/** What something loose is priced by, in SI. */
export type PricedLoose = Exclude<SoldLoose['per'], 'piece'>;

/** How a price by each measure is written. */
const PER: Readonly<Record<PricedLoose, { readonly number: string; readonly per: string }>> = {
  kg: { number: '38', per: 'per short ton' },
  m3: { number: '45', per: 'per cu yd' },
  m2: { number: '4.50', per: 'per sq ft' },
  m: { number: '3.20', per: 'per ft' }
};

/** Money alone, nought or more; undefined when a fault was told. */
export function readMoney(
  charges: Charges,
  text: SpecText,
  key: Key,
  node: Expression | undefined,
  number = '4.98'
): Money | undefined {
  const charge = charges.read(text, key, node, { words: 'an amount of money', number });
  return charge && moneyOf(charge);
}

/** Money for so much of one of the measures; undefined when a fault was told. */
export function readRate(
  charges: Charges,
  text: SpecText,
  key: Key,
  node: Expression | undefined,
  measures: readonly PricedLoose[]
): { readonly money: Money; readonly per: PricedLoose } | undefined {
  const wanting = { words: 'an amount of money for so much of it', by: measures, ...PER[measures[0]!] };
  const charge = charges.read(text, key, node, wanting);
  return charge && { money: moneyOf(charge), per: charge.by as PricedLoose };
}
