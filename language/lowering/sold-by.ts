import type { Given, Key, System } from '../job/job.ts';
import type { Money, PackWord, SoldAs, SoldLoose, SoldMixed, SoldPacked } from '../job/prices.ts';
import { isSoldBy } from '../syntax/generated/ast.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import { readCount } from './counts.ts';
import { readAmount } from './goods-amount.ts';
import { measuresInWords, measuresOfSale, type Goods } from './goods.ts';
import { readMoney, readRate, type PricedLoose } from './money.ts';
import type { Charges } from './charges.ts';
import type { Declared, SpecText } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';
import type { Things } from './things.ts';

/** What a way of selling is read with. */
export interface SaleReaders {
  readonly context: Context;
  readonly charges: Charges;
  readonly things: Things;
  /** A unit of a mixed pack; undefined when a fault was told, or where another file of another job declares it. */
  readonly unit: (text: SpecText, key: Key, node: ast.MixedSize) => Declared | undefined;
}

/** The price that a way of selling belongs to. */
export interface SaleOf {
  readonly text: SpecText;
  readonly name: string;
  /** How the thing is sold; absent where the thing is not known here, and for mixed packs. */
  readonly goods?: Goods;
}

type Word = PackWord & ast.SoldBy['word'];

/** Reads one way of selling; undefined when a fault was told. */
export function readSale(readers: SaleReaders, sale: SaleOf, key: Key, node: ast.SoldBy): SoldAs | undefined {
  const { context } = readers;
  context.place(key, sale.text, node);
  if (!fits(context, sale, key, node)) return undefined;
  if (node.word === 'loose') return readLoose(readers, sale, key, node);
  return node.word === 'mixed-pack' ? readMixed(readers, sale, key, node) : readPacked(readers, sale, key, node);
}

function fits(context: Context, { text, name, goods }: SaleOf, key: Key, node: ast.SoldBy): boolean {
  if (goods === undefined || Object.hasOwn(goods.sold, node.word)) return true;
  const message = `\`${node.word}\` does not fit ${name}. ${goods.says}.`;
  // Without any way of selling the price would be none.
  const isOnly = node.$container.items.filter(isSoldBy).length === 1;
  const fixes = isOnly ? [] : [takingOut(context, text, node)];
  context.fault(text, key, node, 'sale-does-not-fit', message, { property: 'word', fixes });
  return false;
}

// ---- loose ----

function readLoose(readers: SaleReaders, sale: SaleOf, key: Key, node: ast.SoldBy): SoldLoose | undefined {
  const { context, charges } = readers;
  const { text, goods } = sale;
  const measures = measuresOfSale(goods, 'loose') as readonly PricedLoose[];
  const rate = readRate(charges, text, `${key}/price`, node.price as Expression | undefined, measures);
  if (rate === undefined) return undefined;
  const { per } = rate;
  const clauses = readClauses(readers, text, key, node, {
    amount: (at, amount) => context.given(text, at, amount, per),
    // A lower price is for the same measure as the first.
    price: (at, price) => readRate(charges, text, at, price, [per])?.money
  });
  return clauses && { key, word: 'loose', per, price: rate.money, ...clauses };
}

// ---- packs ----

function readPacked(readers: SaleReaders, sale: SaleOf, key: Key, node: ast.SoldBy): SoldPacked | undefined {
  const { context, charges } = readers;
  const { text } = sale;
  const held =
    node.word === 'piece'
      ? ({ holds: { value: 1, written: '1' }, measure: 'piece' } as const)
      : readHolds(readers, sale, `${key}/holds`, node);
  const price = readMoney(charges, text, `${key}/price`, node.price as Expression | undefined);
  const clauses = readClauses(readers, text, key, node, {
    amount: (at, amount) => readCount(context, text, at, amount, 'at least 4'),
    price: (at, amount) => readMoney(charges, text, at, amount)
  });
  if (held === undefined || price === undefined || clauses === undefined) return undefined;
  return { key, word: node.word as SoldPacked['word'], ...held, price, ...clauses };
}

type Held = Pick<SoldPacked, 'holds' | 'measure' | 'roll'>;

function readHolds(readers: SaleReaders, sale: SaleOf, key: Key, node: ast.SoldBy): Held | undefined {
  const { context, things } = readers;
  const { text, goods } = sale;
  const word = node.word as Word;
  const allowed = measuresOfSale(goods, word);
  const sides = node.holds?.sides ?? [];
  if (node.holds === undefined || sides.length === 0) return undefined;
  if (sides.length > 1) {
    if (word !== 'roll' || !allowed.includes('m2'))
      return context.fault(
        text,
        key,
        node.holds,
        'sale-does-not-fit',
        `Only a roll of cloth has a width and a length. Write how much one holds: ${measuresInWords(allowed)}.`
      );
    const [width, length] = things.size(text, key, node.holds, 2, ['width', 'length']) ?? [];
    if (width === undefined || length === undefined) return undefined;
    context.place(key, text, node.holds);
    const holds: Given = { value: width.value * length.value, key, written: writtenOf(node.holds) };
    return { holds, measure: 'm2', roll: { width, length } };
  }
  return readAmount(
    context,
    text,
    key,
    sides[0] as Expression,
    allowed,
    (kind, isBare) =>
      `One ${wordInText(word)} of ${sale.name} holds ${measuresInWords(allowed)}${isBare ? '' : `, not ${kind}`}.`,
    SMALL[context.system]
  );
}

/** Measures that a bare number of a bag may lack. */
const SMALL: Readonly<Record<System, readonly string[]>> = { imperial: ['lb', 'kg'], metric: ['kg'] };

function wordInText(word: Word): string {
  return word === 'box-of' ? 'box' : word.replace('-', ' ');
}

// ---- packs of several sizes ----

function readMixed(readers: SaleReaders, { text, name }: SaleOf, key: Key, node: ast.SoldBy): SoldMixed | undefined {
  const { context, charges } = readers;
  const holds = node.mixed.map((size, index) => {
    const at = `${key}/holds-${index + 1}`;
    const count = readCount(context, text, at, size.count as Expression | undefined, '10 cobble-a');
    const unit = readers.unit(text, key, size);
    return count && unit && { unit: `unit:${unit.name}` as Key, count, size };
  });
  const price = readMoney(charges, text, `${key}/price`, node.price as Expression | undefined);
  const clauses = readClauses(readers, text, key, node, {
    amount: (at, amount) => readCount(context, text, at, amount, 'at least 4'),
    price: (at, amount) => readMoney(charges, text, at, amount)
  });
  const names = node.mixed.map(size => size.unit?.$refText);
  const again = node.mixed.find((size, index) => names.indexOf(size.unit?.$refText) < index);
  if (new Set(names).size < 2) {
    const single = `price ${names[0] ?? name} { pack of ${node.mixed.length === 1 ? writtenOf(node.mixed[0]!.count) : '10'} for … }`;
    const message = `A mixed pack holds several sizes, and this one holds ${names[0] ?? 'one'} alone. Write \`${single}\`.`;
    return context.fault(text, key, node, 'sale-does-not-fit', message, { property: 'word' });
  }
  if (again !== undefined) {
    const message = `This pack holds ${again.unit.$refText} twice. Write it once, with all its pieces.`;
    return context.fault(text, key, again, 'said-twice', message);
  }
  if (price === undefined || clauses === undefined || holds.some(each => each === undefined)) return undefined;
  return {
    key,
    word: 'mixed-pack',
    holds: holds.map(each => ({ unit: each!.unit, count: each!.count })),
    price,
    ...clauses
  };
}

// ---- clauses ----

/** How the amounts of the clauses of one way of selling are read. */
interface ClauseReaders {
  readonly amount: (key: Key, node: Expression | undefined) => Given | undefined;
  readonly price: (key: Key, node: Expression | undefined) => Money | undefined;
}

type Clauses = Pick<SoldLoose, 'breaks' | 'least' | 'deposit' | 'weight' | 'step'>;

/** Undefined when a fault was told that leaves them without meaning. */
function readClauses(
  { context, charges }: SaleReaders,
  text: SpecText,
  key: Key,
  node: ast.SoldBy,
  read: ClauseReaders
): Clauses | undefined {
  const single = node.clauses.filter(({ what }) => what !== 'from');
  const said = saidOnce(context, text, key, single, ({ what }) => what) as ReadonlyMap<Single, ast.SoldClause>;
  const clauses: { -readonly [name in keyof Clauses]?: Clauses[name] } = {};
  let sound = true;
  for (const [what, clause] of said) {
    if (clauseFits(what, node.word)) {
      const at = `${key}/${NAMES[what]}`;
      const amount = clause.amount as Expression | undefined;
      const value =
        what === 'deposit'
          ? readMoney(charges, text, at, amount, '20')
          : what === 'weight'
            ? context.given(text, at, amount, 'kg')
            : read.amount(at, amount);
      if (value === undefined) sound = false;
      else Object.assign(clauses, { [NAMES[what]]: value });
    } else {
      const message = `${DOES_NOT_FIT[what]} Take this out.`;
      const fixes = [takingOut(context, text, clause)];
      context.fault(text, key, clause, 'clause-does-not-fit', message, { harmless: true, fixes });
    }
  }
  const breaks = node.clauses
    .filter(({ what }) => what === 'from')
    .map((clause, index) => {
      const from = read.amount(`${key}/from-${index + 1}`, clause.amount as Expression | undefined);
      const price = read.price(`${key}/from-${index + 1}/price`, clause.price as Expression | undefined);
      return from && price && { from, price, clause };
    });
  if (!sound || breaks.some(each => each === undefined)) return undefined;
  return { breaks: breaks.map(each => ({ from: each!.from, price: each!.price })), ...clauses };
}

type Single = Exclude<ast.SoldClause['what'], 'from'>;

const NAMES: Readonly<Record<Single, 'step' | 'least' | 'deposit' | 'weight'>> = {
  in: 'step',
  at: 'least',
  deposit: 'deposit',
  weight: 'weight'
};

const PACKED: readonly string[] = [
  ...(['pack', 'pack-layer', 'pallet', 'bag', 'bulk-bag', 'roll'] as const),
  ...(['box-of', 'length', 'piece', 'mixed-pack'] as const)
];

/** The ways of selling that a clause says nothing about. */
const NOT_WITH: Readonly<Record<string, readonly string[]>> = {
  in: PACKED,
  deposit: ['loose', 'piece'],
  weight: ['loose']
};

/** Whether a clause, by its first word, says anything of a way of selling. */
export function clauseFits(what: string, word: string): boolean {
  return NOT_WITH[what]?.includes(word) !== true;
}

const DOES_NOT_FIT: Readonly<Partial<Record<Single, string>>> = {
  in: 'Only what is sold loose is sold in steps; packs come whole.',
  deposit: 'Only a pallet, bag or other pack that goes back has a deposit.',
  weight: 'Loose material is told by its density, in the material: only packs have a weight of their own.'
};
