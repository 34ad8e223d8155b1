import type { Material, Unit } from '../job/job.ts';
import type { PackWord, SoldPacked } from '../job/prices.ts';
import { Names, type SpecText } from './names.ts';
import type { Project } from './project.ts';
import { rolesOf } from './things-at-hand.ts';

/** What is bought of a thing is told in these, in SI. */
export type GoodsMeasure = SoldPacked['measure'];

/** How things of one sort are sold. */
export interface Goods {
  /** By the way of selling, in what it may be measured. */
  readonly sold: Readonly<Partial<Record<PackWord, readonly GoodsMeasure[]>>>;
  /** In what so much of it is told that lies in stock or was delivered. */
  readonly counted: readonly GoodsMeasure[];
  /** How they are sold, in a sentence. */
  readonly says: string;
  /** An amount of it, as it is written. */
  readonly example: string;
}

const PACKED: readonly GoodsMeasure[] = ['piece', 'm2'];
const BAGGED: readonly GoodsMeasure[] = ['kg', 'm3'];
const LONG: readonly GoodsMeasure[] = ['piece', 'm'];

const UNITS: Goods = {
  sold: { loose: ['m2'], piece: ['piece'], pack: PACKED, 'pack-layer': PACKED, pallet: PACKED, 'box-of': ['piece'] },
  counted: ['piece'],
  says: 'Units are sold by the `piece`, in a `pack`, `pack-layer`, `pallet` or `box-of` so many, or `loose` by their area',
  example: '12'
};

const GRAINS: Goods = {
  sold: { loose: BAGGED, bag: BAGGED, 'bulk-bag': BAGGED, pallet: BAGGED },
  counted: BAGGED,
  says: 'Stone, sand and concrete are sold `loose`, by the `bag`, the `bulk-bag` or the `pallet`, by mass or volume',
  example: '2 short ton` or `1.5 m3'
};

const EDGING: Goods = {
  sold: { loose: ['m'], piece: ['piece'], length: ['m'], pack: LONG, pallet: LONG, 'box-of': ['piece'], roll: ['m'] },
  counted: LONG,
  says: 'Edging is sold by the `piece` or `length`, in a `pack`, `pallet` or `box-of` so many, by the `roll`, or `loose` by its length',
  example: '12` or `36 ft'
};

const FIXINGS: Goods = {
  sold: { piece: ['piece'], pack: ['piece'], 'box-of': ['piece'] },
  counted: ['piece'],
  says: 'Spikes and the like are sold by the `piece`, or in a `pack` or `box-of` so many',
  example: '50'
};

const CLOTH: Goods = {
  sold: { loose: ['m2'], roll: ['m2'] },
  counted: ['m2'],
  says: 'Cloth is sold by the `roll`, or `loose` by its area',
  example: '500 sq ft` or `50 m2'
};

/** How a thing is sold; of a material for several uses in every way that fits one of them. */
export function goodsOf(thing: Unit | Material): Goods {
  return 'roles' in thing ? goodsOfRoles(thing.roles) : UNITS;
}

function goodsOfRoles(roles: readonly string[]): Goods {
  if (roles.includes('edging')) return EDGING;
  if (roles.includes('fixing')) return FIXINGS;
  return roles.includes('geotextile') ? CLOTH : GRAINS;
}

/** How what a price is of is sold, as far as its text tells; undefined where the name leads to nothing, as of a mixed pack. */
export function goodsNamed(name: string, text: SpecText, project: Project): Goods | undefined {
  const declared = new Names(project.visible).priced(text, ['material', 'unit'], name);
  return declared && (declared.kind === 'unit' ? UNITS : goodsOfRoles(rolesOf(declared)));
}

const EVERY: readonly GoodsMeasure[] = ['piece', 'm2', 'kg', 'm3', 'm'];

/** By the way of selling, in what it may be measured where the thing is not known; of mixed packs each unit is counted. */
const ANY_GOODS: Goods['sold'] = {
  loose: ['kg', 'm3', 'm2', 'm'],
  bag: BAGGED,
  'bulk-bag': BAGGED,
  pallet: EVERY,
  pack: EVERY,
  'pack-layer': EVERY,
  'box-of': ['piece'],
  roll: ['m2', 'm'],
  length: ['m']
};

/** In what a way of selling may be measured; `goods` where the thing is known. */
export function measuresOfSale(goods: Goods | undefined, word: PackWord): readonly GoodsMeasure[] {
  return goods?.sold[word] ?? ANY_GOODS[word] ?? [];
}

const MEASURE_WORDS: Readonly<Record<GoodsMeasure, readonly [kind: string, example: string]>> = {
  kg: ['a mass', '25 kg'],
  m3: ['a volume', '0.5 cu ft'],
  m2: ['an area', '500 sq ft'],
  m: ['a length', '915 mm'],
  piece: ['a number of pieces', '90']
};

/** `a mass or a volume, such as 25 kg`. */
export function measuresInWords(measures: readonly GoodsMeasure[]): string {
  const kinds = measures.map(measure => MEASURE_WORDS[measure][0]).join(' or ');
  return `${kinds}, such as \`${MEASURE_WORDS[measures[0]!][1]}\``;
}
