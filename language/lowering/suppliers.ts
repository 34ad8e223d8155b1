import type { Given, Key } from '../job/job.ts';
import type { Delivery, Money, Priced, Supplier, TaxWay } from '../job/prices.ts';
import { kindOf, measureText } from '../measures/measures.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import { checkDay } from './days.ts';
import { type Charges, isCurrencyTold } from './charges.ts';
import { readMoney } from './money.ts';
import type { Declared, SpecText } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';

/** Where things are bought: whose prices they are, and what bringing them costs. */
export function readSupplier(context: Context, charges: Charges, { text, node, name }: Declared): Supplier {
  const key = `supplier:${name}`;
  const said = saidOnce(context, text, key, (node as ast.Supplier).items, item => item.$type);
  const delivery = said.get('Delivery') as ast.Delivery | undefined;
  const read = delivery && readDelivery(context, charges, text, `${key}/delivery`, delivery);
  return { key, name, ...readTerms(context, text, key, said), ...(read === undefined ? {} : { delivery: read }) };
}

/** The day and the tax of prices, of a supplier or of one price list. */
export function readTerms(
  context: Context,
  text: SpecText,
  key: Key,
  said: ReadonlyMap<string, ast.SupplierItem | ast.PriceItem>
): { readonly tax?: TaxWay; readonly priced?: Priced } {
  const pricesOn = said.get('PricesOn') as ast.PricesOn | undefined;
  const taxItem = said.get('PriceTax') as ast.PriceTax | undefined;
  const priced = pricesOn && readPriced(context, text, `${key}/prices`, pricesOn);
  const tax = taxItem && context.word(text, key, taxItem, 'way', taxItem.way, ['included', 'added'] as const);
  return { ...(tax === undefined ? {} : { tax }), ...(priced === undefined ? {} : { priced }) };
}

function readPriced(context: Context, text: SpecText, key: Key, node: ast.PricesOn): Priced | undefined {
  const { date } = node;
  // A statement broken off has told its own fault.
  if (date === undefined || !checkDay(context, text, key, node, 'date', date)) return undefined;
  const days =
    node.valid && context.given(text, `${key}/valid`, node.valid as Expression, 's', { from: 0, above: true });
  context.place(key, text, node);
  return { key, on: date, ...(days === undefined ? {} : { validDays: { ...days, value: days.value / DAY } }) };
}

/** Seconds of a day. */
const DAY = 86_400;

// ---- delivery ----

type DeliveryWord = ast.DeliveryClause['what'];

function readDelivery(
  context: Context,
  charges: Charges,
  text: SpecText,
  key: Key,
  node: ast.Delivery
): Delivery | undefined {
  context.place(key, text, node);
  const charge = node.charge && readMoney(charges, text, `${key}/charge`, node.charge as Expression, '65');
  const parts: { -readonly [name in keyof Delivery]?: Delivery[name] } = {};
  for (const clause of node.clauses) {
    const part = readClause(context, charges, text, key, clause);
    if (part === undefined) continue;
    const [as, value] = part;
    if (Object.hasOwn(parts, as)) saidAgain(context, text, key, clause);
    else Object.assign(parts, { [as]: value });
  }
  return { key, ...(charge === undefined ? {} : { charge }), ...parts };
}

/** What each clause may tell, by its SI measure, and how it is written. */
const CLAUSES: Readonly<
  Record<DeliveryWord, { readonly as: Readonly<Record<string, keyof Delivery>>; readonly example: string }>
> = {
  load: { as: { kg: 'loadMass', m3: 'loadVolume' }, example: 'load 8 short ton` or `load 6 m3' },
  least: { as: { kg: 'leastMass', money: 'leastOrder' }, example: 'least order 2 short ton` or `least order 100 USD' },
  free: { as: { money: 'freeFrom' }, example: 'free from 500 USD' }
};

function readClause(
  context: Context,
  charges: Charges,
  text: SpecText,
  key: Key,
  clause: ast.DeliveryClause
): readonly [keyof Delivery, Given | Money] | undefined {
  const { as, example } = CLAUSES[clause.what];
  const node = clause.amount as Expression | undefined;
  const amount = context.amount(text, key, node);
  if (node === undefined || amount === undefined) return undefined;
  const measure = measureText(amount.dimensions);
  const kind = /^[A-Z]{3}$/.test(measure) ? 'money' : measure;
  const name = as[kind];
  if (name === undefined && amount.bare && isCurrencyTold(text, node)) return undefined;
  if (name === undefined) {
    const message = amount.bare
      ? `\`${writtenOf(node)}\` has no measure. Write \`${example}\`.`
      : `\`${writtenOf(node)}\` is ${kindOf(amount.dimensions)}. Write \`${example}\`.`;
    return context.fault(text, key, node, amount.bare ? 'measure-missing' : 'wrong-kind', message);
  }
  const at = `${key}/${name}`;
  const value =
    kind === 'money' ? readMoney(charges, text, at, node) : context.given(text, at, node, kind as 'kg' | 'm3');
  return value && [name, value];
}

function saidAgain(context: Context, text: SpecText, key: Key, clause: ast.DeliveryClause): void {
  context.fault(text, key, clause, 'said-twice', `\`${clause.what}\` is said twice; the first counts. Take one out.`, {
    harmless: true,
    fixes: [takingOut(context, text, clause)]
  });
}
