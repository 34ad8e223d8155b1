import type { PackWord } from '../../job/prices.ts';
import type { System } from '../../job/job.ts';
import type { BothWays } from '../../library/usual-values.ts';
import { goodsNamed, measuresOfSale, type Goods, type GoodsMeasure } from '../../lowering/goods.ts';
import { clauseFits } from '../../lowering/sold-by.ts';
import type { Written } from './candidates.ts';
import { kindOfMeasure, type WantedQuantity } from './quantities.ts';
import type { Scene } from './scene.ts';

/** How what the price list around the cursor is of is sold; undefined where a list that jobs share does not lead to it. */
function goodsAround({ text, project, cursor: { around, parsed } }: Scene): Goods | undefined {
  const list = around.findLast(({ opens }) => opens === 'price');
  return list && goodsNamed(parsed.tokens[list.first + 1]?.image ?? '', text, project);
}

/** Ways to sell that fit the thing; all where it is not known. */
export function isSoldSo(scene: Scene, word: string): boolean {
  const goods = goodsAround(scene);
  return goods === undefined || BESIDE_WAYS.includes(word) || Object.hasOwn(goods.sold, word);
}

const BESIDE_WAYS: readonly string[] = ['prices', 'tax', 'according-to'];

/** Whether a clause can still be said of a way of selling; lower prices may be told again and again. */
export function isSaleClause(word: string, { word: way, kinds }: Written): boolean {
  return !SAID_ONCE.includes(word) || (clauseFits(word, way) && !kinds.includes(word));
}

const SAID_ONCE: readonly string[] = ['in', 'at', 'deposit', 'weight'];

/** Whether a size has two sides here: only a roll of cloth has a width and a length. */
export function isRollOfCloth(scene: Scene, { word, tokens }: Written): boolean {
  const last = tokens.at(-1);
  const isLength = last?.tokenType.name !== 'MEASURE' || kindOfMeasure(last.image) === 'm';
  return word === 'roll' && isLength && measuresOfSale(goodsAround(scene), 'roll').includes('m2');
}

/** What is wanted in a way of selling, by what fits the thing. */
export function wantedOfSale(scene: Scene, written: Written, wanted: WantedQuantity): WantedQuantity {
  const { word } = written;
  const isOfLoose = word === 'loose' && OF_LOOSE.includes(wanted.property) && !BESIDE_AMOUNTS.test(lastWord(written));
  if (!isOfLoose && wanted.kind !== 'goods') return wanted;
  const fits = isOfLoose ? measuresOfLoose(scene, written) : measuresHeld(scene, written);
  const usual = wanted.usual && (usualOf(word, wanted.property, fits)?.[scene.system] ?? wanted.usual);
  return { ...wanted, fits, ...(usual === undefined ? {} : { usual }) };
}

const OF_LOOSE: readonly string[] = ['SoldBy.price', 'SoldClause.price', 'SoldClause.amount'];
const BESIDE_AMOUNTS = /^(?:deposit|weight)$/;

/** The word that a quantity hangs on. */
function lastWord({ kinds }: Written): string {
  return kinds.findLast(kind => /^[a-z]/.test(kind)) ?? '';
}

/** A lower price and the least that is sold are told by the measure that the price is for. */
function measuresOfLoose(scene: Scene, { tokens }: Written): readonly GoodsMeasure[] {
  const per = tokens.findIndex(({ tokenType }) => tokenType.name === 'per');
  const kind = per < 0 ? undefined : kindOfMeasure(tokens[per + 1]?.image ?? '');
  return kind === undefined ? measuresOfSale(goodsAround(scene), 'loose') : [kind];
}

/** What one holds; of cloth the sides of a roll are lengths. */
function measuresHeld(scene: Scene, { word, kinds }: Written): readonly GoodsMeasure[] {
  if (kinds.includes('BY')) return ['m'];
  const held = measuresOfSale(goodsAround(scene), word as PackWord);
  return word === 'roll' && held.includes('m2') ? [...new Set<GoodsMeasure>([...held, 'm'])] : held;
}

/** What is usual of what is not told in pieces or by mass; all common practice, and there to be changed. */
function usualOf(
  word: string,
  property: string,
  fits: readonly GoodsMeasure[]
): Readonly<Record<System, string>> | undefined {
  if (word === 'pallet' && !fits.includes('piece')) return TON;
  if (word === 'roll' && !fits.includes('m2')) return USUAL['Holds.sides']?.m;
  return word === 'loose' ? USUAL[property]?.[fits[0]!] : undefined;
}

const TON: BothWays = { imperial: '1 short ton', metric: '1 t' };

const USUAL: Readonly<Record<string, Readonly<Partial<Record<GoodsMeasure, BothWays>>>>> = {
  'SoldBy.price': {
    m3: { imperial: '45 USD per cu yd', metric: '52 USD per m3' },
    m2: { imperial: '4.50 USD per sq ft', metric: '36 USD per m2' },
    m: { imperial: '2.20 USD per ft', metric: '6 USD per m' }
  },
  'SoldClause.price': {
    m3: { imperial: '42 USD per cu yd', metric: '48 USD per m3' },
    m2: { imperial: '4.20 USD per sq ft', metric: '33 USD per m2' },
    m: { imperial: '2 USD per ft', metric: '5.50 USD per m' }
  },
  'SoldClause.amount': {
    m3: { imperial: '1 cu yd', metric: '1 m3' },
    m2: { imperial: '100 sq ft', metric: '10 m2' },
    m: { imperial: '60 ft', metric: '18 m' }
  },
  'Holds.sides': { m: { imperial: '50 ft', metric: '15 m' } }
};
