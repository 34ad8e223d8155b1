import type { Given, Key, Material, Missing, Unit } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import type { PriceList, SoldAs, Supplier } from '../job/prices.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { goodsOf } from './goods.ts';
import { keyOf, keyOfPrice } from './keys.ts';
import type { Charges } from './charges.ts';
import type { Declared, SpecText } from './names.ts';
import { breaksAgree } from './price-breaks.ts';
import { saidOnce, takingOut } from './said-once.ts';
import { readSale, type SaleOf, type SaleReaders } from './sold-by.ts';
import { readSupplier, readTerms } from './suppliers.ts';
import type { Things } from './things.ts';

/** What the price lists of a job come to. */
export interface ReadPrices {
  readonly suppliers: readonly Supplier[];
  readonly prices: readonly PriceList[];
}

/** What is sold, in a price: a thing of the job, one that only other jobs know, or one that nobody knows. */
type Sold = { readonly declared: Declared } | 'elsewhere' | undefined;

/**
 * Reads price lists. They may be shared between jobs, and then tell of more than one job buys: in a file that is used, a
 * thing that no file of the job declares is passed over.
 */
export class Prices {
  private readonly context: Context;
  private readonly things: Things;
  private readonly charges: Charges;
  /** The file of the job, whose names all have to lead somewhere; none where there is no job. */
  private readonly main: SpecText | undefined;
  private readonly suppliers = new Map<string, Supplier | undefined>();

  constructor(context: Context, things: Things, charges: Charges, main: SpecText | undefined) {
    this.context = context;
    this.things = things;
    this.charges = charges;
    this.main = main;
  }

  /** All of them in the order of the texts; those without a price for their faults are added to `missing`. */
  read(texts: readonly SpecText[], missing: Missing[]): ReadPrices {
    const prices: PriceList[] = [];
    const first = new Map<Key, { readonly text: SpecText; readonly node: ast.Price }>();
    for (const text of texts)
      for (const node of text.parsed.root.elements) {
        if (ast.isSupplier(node)) this.supplier({ kind: 'supplier', name: node.name, node, text }, missing);
        if (!ast.isPrice(node) || node.thing === undefined) continue;
        const key = keyOfPrice(node);
        if (this.isAgain(text, node, key, first)) continue;
        first.set(key, { text, node });
        const list = this.whole(text, node, key, missing);
        if (list !== undefined) prices.push(list);
      }
    return { suppliers: [...this.suppliers.values()].flatMap(supplier => supplier ?? []), prices };
  }

  // ---- suppliers ----

  private supplier(declared: Declared, missing: Missing[]): void {
    const { context } = this;
    const { text, node, name } = declared;
    // Of two of the same name the first counts.
    if (name === undefined || this.suppliers.has(name)) return;
    const key = context.place(`supplier:${name}`, text, node, 'name');
    const { value, broken } = context.watch(() =>
      context.isBroken(text, node) ? undefined : readSupplier(context, this.charges, declared)
    );
    const isSound = value !== undefined && broken.length === 0;
    this.suppliers.set(name, isSound ? value : undefined);
    if (!isSound && this.main !== undefined) missing.push({ key, name, because: name });
  }

  /** A supplier that can't be read leaves what it sells without a price. */
  private supplierOf(text: SpecText, key: Key, node: ast.Price): Declared | undefined {
    if (node.supplier === undefined) return undefined;
    const found = this.context.find(text, key, node, 'supplier', node.supplier.$refText, ['supplier']);
    if (found !== undefined && this.suppliers.has(found.name) && this.suppliers.get(found.name) === undefined)
      this.context.breaks(found.name);
    return found;
  }

  // ---- prices ----

  private isAgain(
    text: SpecText,
    node: ast.Price,
    key: Key,
    before: ReadonlyMap<Key, { readonly text: SpecText; readonly node: ast.Price }>
  ): boolean {
    const first = before.get(key);
    if (first === undefined) return false;
    const from = node.supplier === undefined ? '' : ` from ${node.supplier.$refText}`;
    const message = `The price of ${node.thing.$refText}${from} is said twice; the first counts. Write all ways of selling in one, or name another supplier.`;
    this.context.fault(text, key, node, 'said-twice', message, {
      property: 'thing',
      harmless: true,
      related: [{ node: first.node, text: first.text, message: 'Said first here.' }],
      fixes: [takingOut(this.context, text, node, first.text === text ? { like: first.node } : {})]
    });
    return true;
  }

  private whole(text: SpecText, node: ast.Price, key: Key, missing: Missing[]): PriceList | undefined {
    const { context } = this;
    context.place(key, text, node, 'thing');
    const name = node.thing.$refText;
    const { value, broken } = context.watch(() =>
      context.isBroken(text, node) ? undefined : this.price(text, node, key)
    );
    if (value === 'elsewhere') return undefined;
    if (value !== undefined && broken.length === 0) return value;
    if (this.main !== undefined) missing.push({ key, name: `the price of ${name}`, because: nameIn(broken[0] ?? key) });
    return undefined;
  }

  private price(text: SpecText, node: ast.Price, key: Key): PriceList | 'elsewhere' | undefined {
    const { context } = this;
    const ways = node.items.filter(ast.isSoldBy);
    const isMixed = ways.some(({ word }) => word === 'mixed-pack');
    const sold = isMixed ? undefined : this.sold(text, key, node, 'thing', node.thing.$refText);
    const supplier = this.supplierOf(text, key, node);
    const said = saidOnce(
      context,
      text,
      key,
      node.items.filter(item => !ast.isSoldBy(item)),
      item => item.$type
    );
    const terms = readTerms(context, text, key, said);
    const source = (said.get('AccordingTo') as ast.AccordingTo | undefined)?.text;
    const name = node.thing.$refText;
    if (ways.length === 0)
      return context.fault(
        text,
        key,
        node,
        'thing-incomplete',
        `The price of ${name} names no way of selling. Write one, such as \`piece for 3.95 USD\` or \`loose for 38 USD per short ton\`.`,
        { property: 'thing' }
      );
    const thing = typeof sold === 'object' ? this.thing(sold.declared) : undefined;
    const sale: SaleOf = { text, name, ...(thing === undefined ? {} : { goods: goodsOf(thing) }) };
    const read = this.ways(sale, key, isMixed ? this.mixedAlone(text, key, ways) : ways);
    const isElsewhere = sold === 'elsewhere' || read === 'elsewhere';
    if (isElsewhere) return 'elsewhere';
    if (read === undefined || (!isMixed && sold === undefined)) return undefined;
    return {
      key,
      ...(typeof sold === 'object' ? { thing: keyOf(sold.declared) } : {}),
      name,
      ...(supplier === undefined ? {} : { supplier: `supplier:${supplier.name}` }),
      ...terms,
      ...(source === undefined ? {} : { from: source }),
      ways: read
    };
  }

  private thing(declared: Declared): Unit | Material | undefined {
    return declared.kind === 'unit' ? this.things.unit(declared) : this.things.material(declared);
  }

  /** What a name in a price leads to. */
  private sold(
    text: SpecText,
    key: Key,
    node: ast.Price | ast.MixedSize,
    property: 'thing' | 'unit',
    name: string
  ): Sold {
    const kinds = property === 'unit' ? (['unit'] as const) : (['material', 'unit'] as const);
    const { names } = this.context;
    const declared = names.priced(text, kinds, name);
    if (declared !== undefined) {
      names.use(declared);
      return { declared };
    }
    if (text !== this.main) return 'elsewhere';
    this.context.find(text, key, node, property, name, kinds);
    return undefined;
  }

  /** A mixed pack has a name of its own: single sizes stand in prices of theirs. */
  private mixedAlone(text: SpecText, key: Key, ways: readonly ast.SoldBy[]): ast.SoldBy[] {
    const { context } = this;
    return ways.filter(way => {
      if (way.word === 'mixed-pack') return true;
      const message = `\`${way.word}\` stands beside a mixed pack. What is sold by the single size has a price of its own: \`price\` and the name of the unit.`;
      context.fault(text, key, way, 'sale-does-not-fit', message, { property: 'word' });
      return false;
    });
  }

  private ways(sale: SaleOf, key: Key, nodes: readonly ast.SoldBy[]): readonly SoldAs[] | 'elsewhere' | undefined {
    const { context } = this;
    const { text } = sale;
    let isElsewhere = false;
    const readers: SaleReaders = {
      context,
      charges: this.charges,
      things: this.things,
      unit: (from, at, size) => {
        const name = size.unit?.$refText;
        const sold = name === undefined ? undefined : this.sold(from, at, size, 'unit', name);
        if (sold === 'elsewhere') isElsewhere = true;
        return typeof sold === 'object' ? sold.declared : undefined;
      }
    };
    const counts = new Map<string, number>();
    const read: { readonly node: ast.SoldBy; readonly sold: SoldAs }[] = [];
    for (const node of nodes) {
      const count = (counts.get(node.word) ?? 0) + 1;
      counts.set(node.word, count);
      const sold = readSale(readers, sale, `${key}/${node.word}${count === 1 ? '' : `-${count}`}`, node);
      if (sold === undefined || !breaksAgree(context, text, sold.key, node, sold)) continue;
      const first = read.find(other => isSame(other.sold, sold));
      if (first === undefined) read.push({ node, sold });
      else this.waySaidAgain(text, sold.key, node, first.node);
    }
    if (isElsewhere) return 'elsewhere';
    return read.length === 0 ? undefined : read.map(({ sold }) => sold);
  }

  private waySaidAgain(text: SpecText, key: Key, node: ast.SoldBy, first: ast.SoldBy): void {
    const { context } = this;
    const message = `\`${node.word}\` of the same size is said twice; the first counts. A lower price for more is written behind it: \`from 10 for …\`.`;
    context.fault(text, key, node, 'said-twice', message, {
      property: 'word',
      harmless: true,
      related: [{ node: first, text, message: 'Said first here.' }],
      fixes: [takingOut(context, text, node, { like: first })]
    });
  }
}

/** The same pack, or loose by the same measure. */
function isSame(one: SoldAs, other: SoldAs): boolean {
  if (one.word !== other.word) return false;
  if (one.word === 'loose') return one.per === (other as typeof one).per;
  if (one.word !== 'mixed-pack') {
    const { holds, measure } = other as typeof one;
    return one.measure === measure && one.holds.value === holds.value;
  }
  const inOrder = (all: readonly { readonly unit: Key; readonly count: Given }[]): string =>
    all
      .map(({ unit, count }) => `${unit} ${count.value}`)
      .sort()
      .join();
  return inOrder(one.holds) === inOrder((other as typeof one).holds);
}
