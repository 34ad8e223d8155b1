import type { Given, Key } from './job.ts';

/** An amount of money, exact: `4.98`, or `14/3` where a sum in the text comes to no decimal; never rounded here. */
export interface Money {
  readonly amount: string;
  /** ISO 4217, such as `USD`. */
  readonly currency: string;
  readonly written: string;
  readonly key?: Key;
}

/** What money is asked for: a piece, or so much of a measure in SI. */
export type PricedBy = 'piece' | 'kg' | 'm3' | 'm2' | 'm' | 'h' | 'day';

/** Whether tax is in a price, or comes on top of it. */
export type TaxWay = 'included' | 'added';

/** Where things are bought, and what bringing them costs. */
export interface Supplier {
  readonly key: Key;
  readonly name: string;
  readonly tax?: TaxWay;
  readonly priced?: Priced;
  readonly delivery?: Delivery;
}

/** When prices were told, and until when they hold, as days `2026-03-01`. */
export interface Priced {
  readonly key: Key;
  readonly on: string;
  /** Days that they hold from then. */
  readonly validDays?: Given;
}

export interface Delivery {
  readonly key: Key;
  /** For one load; absent where only a least order is told. */
  readonly charge?: Money;
  /** What one load carries at most, kg, and m3 loose. */
  readonly loadMass?: Given;
  readonly loadVolume?: Given;
  /** Least order, in money or kg. */
  readonly leastOrder?: Money;
  readonly leastMass?: Given;
  /** From this order on it costs nothing. */
  readonly freeFrom?: Money;
}

/** One price list of one thing: the ways it is sold. */
export interface PriceList {
  readonly key: Key;
  /** The unit or material that it is of; absent for a pack of several sizes. */
  readonly thing?: Key;
  readonly name: string;
  readonly supplier?: Key;
  readonly tax?: TaxWay;
  readonly priced?: Priced;
  /** Where the price is from, in words. */
  readonly from?: string;
  readonly ways: readonly SoldAs[];
}

export type PackWord =
  | 'loose'
  | 'bag'
  | 'bulk-bag'
  | 'pallet'
  | 'pack'
  | 'pack-layer'
  | 'piece'
  | 'roll'
  | 'length'
  | 'box-of'
  | 'mixed-pack';

interface SoldInAnyWay {
  readonly key: Key;
  readonly word: PackWord;
  /** Of one pack; loose: of one of `per`. */
  readonly price: Money;
  /** A lower price from so many packs (loose: from so much) on, for all of them, the least first. */
  readonly breaks: readonly { readonly from: Given; readonly price: Money }[];
  /** Least that is sold: packs, or loose in SI of `per`. */
  readonly least?: Given;
  /** For the pallet or bag, given back. */
  readonly deposit?: Money;
  /** Mass of one pack, kg, where it is told. */
  readonly weight?: Given;
}

/** Loose by mass, volume, area, length or piece, in steps. */
export interface SoldLoose extends SoldInAnyWay {
  readonly word: 'loose';
  readonly per: 'kg' | 'm3' | 'm2' | 'm' | 'piece';
  readonly step?: Given;
}

/** A pack that holds so much of one thing. */
export interface SoldPacked extends SoldInAnyWay {
  readonly word: Exclude<PackWord, 'loose' | 'mixed-pack'>;
  /** Of a roll told by its width and length: their product. */
  readonly holds: Given;
  readonly measure: 'kg' | 'm3' | 'm2' | 'm' | 'piece';
  /** Width and length of a roll, m, where they are told. */
  readonly roll?: { readonly width: Given; readonly length: Given };
}

/** A pack that holds pieces of several sizes. */
export interface SoldMixed extends SoldInAnyWay {
  readonly word: 'mixed-pack';
  readonly holds: readonly { readonly unit: Key; readonly count: Given }[];
}

export type SoldAs = SoldLoose | SoldPacked | SoldMixed;

/** What is bought besides the need of a material, in sight: shares of what is needed. */
export interface Allowances {
  /** Spilt, left in the heap, trodden in. */
  readonly loss?: Given;
  /** Water in what is sold by mass, share of the dry mass. */
  readonly moisture?: Given;
  /** Loose volume lost on the way, share of what was loaded. */
  readonly settling?: Given;
  /** Joint filler of an unbound kind: kept back for the second sweeping. */
  readonly keptBack?: Given;
}

/** What lies on hand already and counts against the need. */
export interface Stock {
  readonly key: Key;
  readonly thing: Key;
  readonly name: string;
  readonly amount: Given;
  readonly measure: 'kg' | 'm3' | 'm2' | 'm' | 'piece';
  /** Where it lies in packs: `amount` is their count times what one holds. */
  readonly packs?: InPacks;
}

/** So many packs, and what each of them holds, in the measure of the whole. */
export interface InPacks {
  readonly word: Exclude<PackWord, 'loose' | 'piece' | 'mixed-pack'>;
  readonly count: Given;
  readonly holds: Given;
}
