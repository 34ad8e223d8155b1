import { listed } from '../findings/listed.ts';
import type { System } from '../job/job.ts';
import type { Working } from '../quantities/contract.ts';
import type { CostInputs } from './cost-inputs.ts';
import type { CostKind, CostLine, Unpriced } from './cost-line.ts';
import { CostSheet } from './cost-sheet.ts';
import { addDisposal } from './disposal-costs.ts';
import { amountPerUnit, type GroupedCosts, groupedCosts } from './grouped-costs.ts';
import { addHires, addLabour } from './labour-costs.ts';
import { type Ledger, quantity } from '../money/ledger.ts';
import { addDeliveries, addMaterials, depositsOf } from './material-costs.ts';
import { type Minor, sumOf } from '../money/money.ts';
import { addOwnCosts } from './own-costs.ts';
import { type Price, priceOf } from './price.ts';

/** What a job costs and what it is offered for, in hundredths of its currency; sums equal their parts to the last digit. */
export interface Costs extends Price, GroupedCosts {
  readonly currency: string;
  readonly lines: readonly CostLine[];
  /** What the sums leave out. */
  readonly unpriced: readonly Unpriced[];
  readonly kinds: readonly { readonly kind: CostKind; readonly cost: Minor }[];
  /** Paid with the order and given back; no cost. */
  readonly deposits: Minor;
  /** Of all areas together, m2. */
  readonly netArea: number;
  /** Cost and price without tax, and what is to pay, for one square foot or square metre of all areas. */
  readonly perUnit?: { readonly costs: Minor; readonly price: Minor; readonly total: Minor };
  readonly assumed: readonly string[];
  /** By JSON pointer from the job, such as `/costs/lines/0/cost`. */
  readonly workings: Readonly<Record<string, Working>>;
}

/** Cost and price of a job; undefined where nothing in it names an amount of money. */
export function costsOf(inputs: CostInputs): Costs | undefined {
  const currency = currencyOf(inputs);
  if (currency === undefined) return undefined;
  const { money, system, netArea } = inputs;
  const sheet = new CostSheet(currency, money.tax);
  for (const sentence of inputs.assumed ?? []) sheet.assume(sentence);
  addMaterials(sheet, inputs.ordered);
  addDeliveries(sheet, inputs.deliveries);
  addLabour(sheet, inputs.tasks, money.labour);
  addHires(sheet, inputs.hires);
  addDisposal(sheet, inputs.takenAway, money.disposal);
  addOwnCosts(sheet, money.extras, money.contingency);
  const without = takenAsWithoutTax(sheet);
  if (without !== undefined) sheet.assume(without);
  const price = priceOf(sheet, money);
  const grouped = groupedCosts(price.parts, inputs.areas, system, sheet.ledger);
  const deposits = sheet.ledger.sum('/costs/deposits', depositsOf(sheet, inputs.ordered));
  const perUnit = perUnitOfJob(price, netArea, system, sheet.ledger);
  return {
    currency,
    ...price,
    ...grouped,
    lines: sheet.lines,
    unpriced: sheet.unpriced,
    kinds: kindsOf(sheet.lines),
    deposits,
    netArea,
    ...(perUnit === undefined ? {} : { perUnit }),
    assumed: sheet.assumed,
    workings: sheet.ledger.workings
  };
}

/** Of what is bought its price tells whether tax is in; of all else nothing does. */
function takenAsWithoutTax({ tax, lines }: CostSheet): string | undefined {
  if (tax === undefined || tax.value === 0) return undefined;
  const own = lines.filter(({ kind, untaxed }) => !untaxed && KINDS_WITHOUT[kind] !== undefined);
  const words = [...new Set(own.map(({ kind }) => KINDS_WITHOUT[kind]!))];
  return words.length === 0 ? undefined : `Prices of ${listed(words)} are taken as without tax.`;
}

const KINDS_WITHOUT: Readonly<Partial<Record<CostKind, string>>> = {
  labour: 'labour',
  hire: 'hire',
  disposal: 'taking away',
  extra: 'extras'
};

function perUnitOfJob(
  { costs, price, total }: Price,
  netArea: number,
  system: System,
  ledger: Ledger
): Costs['perUnit'] {
  if (!(netArea > 0)) return undefined;
  const size = quantity('net area', netArea, 'm2', { pointer: '/totals/netArea' });
  const perUnit = (key: 'costs' | 'price' | 'total', amount: Minor): Minor =>
    amountPerUnit(ledger.named(key, amount, `/costs/${key}`), `/costs/perUnit/${key}`, size, system, ledger);
  return { costs: perUnit('costs', costs), price: perUnit('price', price), total: perUnit('total', total) };
}

/** That of the job, else of the first amount of money that counts. */
function currencyOf({ currency, money, hires }: CostInputs): string | undefined {
  const amounts = [
    ...[money.labour, money.disposal?.charge].filter(amount => amount !== undefined),
    ...hires.map(({ hire }) => hire.charge),
    ...money.extras.flatMap(({ cost }) => ('share' in cost ? [] : [cost]))
  ];
  return currency ?? amounts[0]?.currency;
}

const KINDS: readonly CostKind[] = [
  'material',
  'delivery',
  'labour',
  'hire',
  'disposal',
  'extra',
  'contingency',
  'taken-off'
];

function kindsOf(lines: readonly CostLine[]): { kind: CostKind; cost: Minor }[] {
  return KINDS.flatMap(kind => {
    const own = lines.filter(line => line.kind === kind);
    return own.length === 0 ? [] : [{ kind, cost: sumOf(own.map(({ cost }) => cost)) }];
  });
}
