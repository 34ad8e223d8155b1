import type { Given, Key, Material, Missing, System, Unit } from '../job/job.ts';
import type { InPacks, PriceList } from '../job/prices.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import { readCount } from './counts.ts';
import { goodsOf, measuresInWords, type GoodsMeasure } from './goods.ts';
import { keyOf } from './keys.ts';
import type { Declared, SpecText } from './names.ts';
import { readAmount } from './goods-amount.ts';
import type { Things } from './things.ts';

/** How much of a thing lies in stock or was delivered. */
export interface SoMuch {
  readonly amount: Given;
  readonly measure: GoodsMeasure;
  readonly packs?: InPacks;
}

/** An amount of a thing as it is written: `430`, `8 short ton`, `9 pack`. */
interface WrittenAmount {
  readonly amount: Expression | undefined;
  readonly pack: InPacks['word'] | undefined;
}

/** Measures that a bare number in stock or off a truck may lack. */
const LARGE: Readonly<Record<System, readonly string[]>> = {
  imperial: ['short ton', 'cu yd', 'lb'],
  metric: ['t', 'm3', 'kg']
};

/** Reads amounts of things, also by the pack: by what the unit says of its pack, else by its price lists. */
export class Packs {
  private readonly context: Context;
  private readonly things: Things;
  private readonly prices: readonly PriceList[];
  /** Names of things of which a price has a fault. */
  private readonly faulty: ReadonlySet<string>;

  constructor(context: Context, things: Things, prices: readonly PriceList[], missing: readonly Missing[]) {
    this.context = context;
    this.things = things;
    this.prices = prices;
    this.faulty = new Set(missing.flatMap(({ key }) => /^price:([^@/]+)/.exec(key)?.[1] ?? []));
  }

  /** Undefined when a fault was told. */
  soMuch(text: SpecText, key: Key, declared: Declared, written: WrittenAmount): SoMuch | undefined {
    const thing = declared.kind === 'unit' ? this.things.unit(declared) : this.things.material(declared);
    if (thing === undefined) return undefined;
    if (written.pack !== undefined) return this.inPacks(text, key, { declared, thing }, written);
    const { counted, example } = goodsOf(thing);
    const read = readAmount(
      this.context,
      text,
      key,
      written.amount,
      counted,
      (kind, isBare) =>
        `An amount of ${declared.name} is ${measuresInWords(counted)}${isBare ? '' : `, not ${kind}`}. Write \`${example}\`.`,
      LARGE[this.context.system]
    );
    return read && { amount: read.holds, measure: read.measure };
  }

  private inPacks(
    text: SpecText,
    key: Key,
    { declared, thing }: { readonly declared: Declared; readonly thing: Unit | Material },
    { amount, pack }: WrittenAmount
  ): SoMuch | undefined {
    const { context } = this;
    const word = pack!;
    const count = readCount(context, text, `${key}/count`, amount, `9 ${word}`);
    if (count === undefined) return undefined;
    const known = this.known(keyOf(declared), thing, word);
    const [held] = known;
    // What a faulty price says of it may be just this: it is told there.
    if (held === undefined && this.faulty.has(declared.name)) {
      context.breaks(`price:${declared.name}`);
      return undefined;
    }
    if (held === undefined || known.length > 1)
      return context.fault(
        text,
        key,
        amount!,
        'pack-not-known',
        `${held === undefined ? 'Nothing tells' : 'Several prices tell differently'} how much one ${word.replace('-', ' ')} of ${declared.name} holds. ${this.advice(thing, word, declared.name, held !== undefined)}`
      );
    context.place(key, text, amount!);
    const written = `${count.written} ${word} of ${held.holds.written}`;
    return {
      amount: { value: count.value * held.holds.value, key, written },
      measure: held.measure,
      packs: { word, count, holds: held.holds }
    };
  }

  private advice(thing: Unit | Material, word: InPacks['word'], name: string, isKnown: boolean): string {
    if (isKnown) return 'Write how much it is.';
    if (!('roles' in thing) && word === 'pack')
      return `Write it in the unit: \`unit ${name} { …, pack 430 }\`, or how many pieces came.`;
    const [measure] = goodsOf(thing).sold[word] ?? [];
    const holds = measure === 'kg' ? (word === 'bag' ? '25 kg' : '850 kg') : measure === 'm2' ? '500 sq ft' : '90';
    return measure === undefined
      ? `${goodsOf(thing).says}: write how much it is.`
      : `Write it in a price: \`price ${name} { ${word} of ${holds} for … }\`, or how much it is.`;
  }

  /** What one holds: by the unit itself, else everything that the prices say, each once. */
  private known(
    key: Key,
    thing: Unit | Material,
    word: InPacks['word']
  ): readonly { readonly holds: Given; readonly measure: GoodsMeasure }[] {
    if (word === 'pack' && 'pack' in thing && thing.pack !== undefined)
      return [{ holds: thing.pack, measure: 'piece' }];
    const told = new Map<string, { readonly holds: Given; readonly measure: GoodsMeasure }>();
    for (const price of this.prices) {
      if (price.thing !== key) continue;
      for (const way of price.ways)
        if (way.word === word && 'measure' in way) told.set(`${way.holds.value} ${way.measure}`, way);
    }
    return [...told.values()].map(({ holds, measure }) => ({ holds, measure }));
  }
}
