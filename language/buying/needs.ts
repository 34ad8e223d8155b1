import type { Given, Key, System, Unit } from '../job/job.ts';
import type { Delivered } from '../job/log.ts';
import type { InPacks, Stock } from '../job/prices.ts';
import {
  divide,
  type Expression,
  given,
  leaf,
  multiply,
  notBelowNought,
  plainNumber,
  subtract,
  sum
} from '../quantities/arithmetic.ts';
import type { Book, Page } from '../quantities/page.ts';
import { assumptionsOf } from './need-assumptions.ts';
import type { NeedQuantities } from './order-contract.ts';
import { si, type SoldBy, type UsedInputs, type UsedPart, type UsedThing, usedThings } from './used.ts';

export interface NeedsInputs extends UsedInputs {
  readonly system: System;
  readonly delivered: readonly (Pick<Delivered, 'thing' | 'amount' | 'measure' | 'packs'> & {
    readonly date: string;
  })[];
  readonly stock: readonly Stock[];
}

/** What is to be bought of one thing, in every measure that it can be sold by, with its places in the job. */
export interface Need {
  readonly thing: UsedThing;
  /** Its pointer in the job: `/needs/2`. */
  readonly at: string;
  readonly toBuy: ReadonlyMap<SoldBy, Expression>;
  readonly numbers: Omit<NeedQuantities, 'choices'>;
}

/** In the order in which one is chosen to reckon in. */
const MEASURES: readonly SoldBy[] = ['piece', 'kg', 'm3', 'm2', 'm'];

/** The needs of the whole job: rounded over the job, not area by area. */
export function needsOf(inputs: NeedsInputs, book: Book): Need[] {
  return usedThings(inputs).map((thing, index) => needOf(thing, `/needs/${index}`, inputs, book));
}

function needOf(thing: UsedThing, at: string, inputs: NeedsInputs, book: Book): Need {
  const parts = thing.used === undefined ? thing.parts.map(({ amounts }) => amounts) : [thing.used];
  const measures = MEASURES.filter(measure => parts.every(amounts => amounts[measure] !== undefined));
  const pages = measures.map((measure, index) => {
    const page = book.page('need', `${at}/in/${index}`);
    return { measure, page, wanted: wantedIn(thing, measure, inputs, page) };
  });
  const faces = thing.unit && facesOf(thing, inputs, pages[0]?.wanted);
  if (faces !== undefined) {
    const page = book.page('need', `${at}/in/${pages.length}`);
    pages.push({ measure: 'm2', page, wanted: page.put('wanted', faces, 'm2') });
  }
  const wanted = new Map(pages.map(one => [one.measure, one.wanted]));
  const toBuy = new Map(pages.map(({ measure, page }) => [measure, toBuyIn(thing, measure, wanted, inputs, page)]));
  const places = placesOf(thing.parts);
  return {
    thing,
    at,
    toBuy,
    numbers: {
      id: thing.key,
      item: thing.name,
      kind: thing.kind,
      in: pages.map(({ measure, page }) => ({ measure, ...page.numbers })),
      for: places,
      assumptions: assumptionsOf(thing, new Set(measures), inputs)
    }
  };
}

// ---- what the job wants of it ----

function wantedIn(thing: UsedThing, measure: SoldBy, inputs: NeedsInputs, page: Page<'need'>): Expression {
  const parts = thing.used === undefined ? thing.parts.map(({ amounts }) => amounts) : [thing.used];
  const used = page.put('used', total(parts.map(amounts => amounts[measure]!)), si(measure));
  const besides =
    thing.kind === 'unit'
      ? unitsBesides(thing, inputs, page)
      : materialBesides(thing, measure, used, (key, more) => page.put(key, more, si(measure)));
  const [first, ...others] = besides;
  if (first !== undefined) return page.put('wanted', sum(used, first, ...others), si(measure));
  page.repeat('wanted', used.value);
  return used;
}

function unitsBesides({ name }: UsedThing, { jobUnits }: NeedsInputs, page: Page<'need'>): Expression[] {
  const index = jobUnits.findIndex(({ unit }) => unit === name);
  return (['breakage', 'keep'] as const).flatMap(key => {
    const value = jobUnits[index]?.[key];
    if (value === undefined) return [];
    page.repeat(key, value);
    return leaf(key === 'keep' ? 'put by' : 'for breakage', value, '', { pointer: `/units/${index}/${key}` });
  });
}

/** What its material says of loss and the like; each is put down where it comes up. */
function materialBesides(
  { allowances, parts }: UsedThing,
  measure: SoldBy,
  used: Expression,
  put: (key: 'loss' | 'keptBack' | 'moisture' | 'settling', more: Expression) => Expression
): Expression[] {
  const { loss, keptBack, moisture, settling } = allowances;
  const besides: Expression[] = [];
  if (isSome(loss)) besides.push(put('loss', multiply(used, given('loss', loss, ''))));
  if (isSome(keptBack)) {
    const swept = parts.filter(({ work }) => work === 'joints').map(({ amounts }) => amounts[measure]!);
    if (swept.length > 0) besides.push(put('keptBack', multiply(together(swept), given('kept back', keptBack, ''))));
  }
  const bought = sum(used, ...besides);
  if (measure === 'kg' && isSome(moisture))
    besides.push(put('moisture', multiply(bought, given('moisture', moisture, ''))));
  if (measure === 'm3' && isSome(settling)) {
    const share = given('settling', settling, '');
    besides.push(put('settling', multiply(bought, divide(share, subtract(plainNumber(1), share)))));
  }
  return besides;
}

/**
 * What the job wants of what was delivered, of all things but units, with what the material says of loss and the like;
 * undefined where it is not used, or not known in this measure.
 */
export function wantedOf(
  delivered: Pick<Delivered, 'thing' | 'measure'>,
  things: readonly UsedThing[]
): Expression | undefined {
  const measure = delivered.measure === '' ? 'piece' : delivered.measure;
  const wanted = things
    .filter(thing => isOf(delivered, thing))
    .map(thing => {
      const parts = thing.used === undefined ? thing.parts.map(({ amounts }) => amounts) : [thing.used];
      const amounts = parts.map(part => part[measure]);
      if (amounts.includes(undefined)) return undefined;
      const used = together(amounts as Expression[]);
      return together([used, ...materialBesides(thing, measure, used, (_, more) => more)]);
    });
  return wanted.length === 0 || wanted.includes(undefined) ? undefined : total(wanted as Expression[]);
}

function isSome(share: Given | undefined): share is Given {
  return share !== undefined && share.value > 0 && share.value < 1;
}

/** Units by the area of their faces, where they are sold so. */
function facesOf(
  { key, unit }: UsedThing,
  { prices }: NeedsInputs,
  wanted: Expression | undefined
): Expression | undefined {
  const isSoldSo = prices.some(
    list =>
      list.thing === key &&
      list.ways.some(way => ('per' in way ? way.per : 'measure' in way ? way.measure : '') === 'm2')
  );
  if (!isSoldSo || unit === undefined || wanted === undefined) return undefined;
  return multiply(wanted, faceOf(unit));
}

function faceOf({ length, width, shape }: Unit): Expression {
  const box = multiply(given('unit length', length, 'm'), given('unit width', width, 'm'));
  return shape === 'hexagon' ? multiply(plainNumber(0.75), box) : box;
}

// ---- what is there already ----

function toBuyIn(
  thing: UsedThing,
  measure: SoldBy,
  wanted: ReadonlyMap<SoldBy, Expression>,
  { stock, delivered }: NeedsInputs,
  page: Page<'need'>
): Expression {
  const all = wanted.get(measure)!;
  const inMeasure = (amount: Expression, told: SoldBy): Expression[] => {
    if (told === measure) return [amount];
    const of = wanted.get(told);
    // So much of it covers the same share of the need, whatever it is measured in.
    return of === undefined || of.value === 0 ? [] : [multiply(amount, divide(all, of))];
  };
  const lying = stock
    .filter(one => isOf(one, thing))
    .flatMap(one => inMeasure(amountOf('on hand', one, one.measure), one.measure));
  const come = delivered
    .filter(one => isOf(one, thing))
    .flatMap(one => {
      const told = one.measure === '' ? 'piece' : one.measure;
      return inMeasure(amountOf(`delivered on ${one.date}`, one, told), told);
    });
  const there = [
    ...(lying.length === 0 ? [] : [page.put('onHand', total(lying), si(measure))]),
    ...(come.length === 0 ? [] : [page.put('delivered', total(come), si(measure))])
  ];
  if (there.length > 0) return page.put('toBuy', notBelowNought(subtract(all, ...there)), si(measure));
  page.repeat('toBuy', all.value);
  return all;
}

/** Pieces for curves are not the material's straight ones. */
function isOf(there: { readonly thing: Key }, { key }: UsedThing): boolean {
  return there.thing === key;
}

function amountOf(
  words: string,
  { amount, packs }: { readonly amount: Given; readonly packs?: InPacks },
  measure: SoldBy
): Expression {
  if (packs === undefined) return given(words, amount, si(measure));
  const word = packs.word.replace('-', ' ');
  return multiply(given(`${word}s ${words}`, packs.count, ''), given(`one ${word} holds`, packs.holds, si(measure)));
}

// ---- where it goes ----

/** All in one measure, where there is one that all are known in: that which stands in the job as a number of its own. */
function placesOf(parts: readonly UsedPart[]): NeedQuantities['for'] {
  const common = MEASURES.filter(measure => parts.every(({ amounts }) => amounts[measure] !== undefined));
  const isNumber = (measure: SoldBy): boolean =>
    parts.some(({ amounts }) => pointerOf(amounts[measure]!) !== undefined);
  const measure = common.find(isNumber) ?? common[0];
  return parts.map(({ amounts, ...place }) => {
    const own = measure ?? MEASURES.find(one => amounts[one] !== undefined);
    if (own === undefined) return place;
    const amount = amounts[own]!;
    const from = pointerOf(amount);
    return { ...place, amount: amount.value, measure: own, ...(from === undefined ? {} : { from }) };
  });
}

function pointerOf({ formula }: Expression): string | undefined {
  return formula.kind === 'name' && 'pointer' in formula.from ? formula.from.pointer : undefined;
}

function together([first, ...others]: readonly Expression[]): Expression {
  return others.length > 0 ? sum(first!, ...others) : first!;
}

/** A single name is no working. */
function total(all: readonly Expression[]): Expression {
  const sumOfAll = together(all);
  return sumOfAll.formula.kind === 'name' ? multiply(plainNumber(1), sumOfAll) : sumOfAll;
}
