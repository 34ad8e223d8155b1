import type { System } from '../../job/job.ts';
import { USUAL_VALUES, type BothWays } from '../../library/usual-values.ts';
import { measureNamed } from '../../measures/measures.ts';

/**
 * What kind of quantity a property wants, by SI measure; `any` where it may be of any kind, `share` for shares in %,
 * `goods` for so much of what is bought, by whatever measure that is sold.
 */
export type QuantityKind =
  'm' | 'm2' | 'm3' | 'kg' | 'kg/m3' | 's' | 'degrees' | 'share' | 'slope' | 'number' | 'money' | 'goods' | 'any';

interface Usual extends BothWays {
  readonly kind: QuantityKind;
  /** Written in feet or metres rather than in inches or millimetres. */
  readonly large?: true;
}

const lengthOf = (values: BothWays): Usual => ({ kind: 'm', ...values });
const length = (imperial: string, metric: string): Usual => ({ kind: 'm', imperial, metric });
const long = (imperial: string, metric: string): Usual => ({ kind: 'm', imperial, metric, large: true });
const density = (imperial: string, metric: string): Usual => ({ kind: 'kg/m3', imperial, metric });
const money = (usual: string): Usual => same('money', usual);
const same = (kind: QuantityKind, value: string): Usual => ({ kind, imperial: value, metric: value });

/**
 * By the property that the quantity is read into. The word before the quantity, the statement's word or the block's name
 * stands before it where the same property means several things. All are common practice, and there to be changed.
 */
const USUAL: Readonly<Record<string, Usual>> = {
  'Let.value': { kind: 'any', imperial: '6 in', metric: '150 mm' },
  'SiteTopsoil.thickness': lengthOf(USUAL_VALUES.topsoil),
  'SoilFact.bearing': same('share', '3 %'),
  'Benchmark.height': long('100 ft', '10.000 m'),
  'site Height.by': lengthOf(USUAL_VALUES.groundBelowSill),
  'finish Height.by': lengthOf(USUAL_VALUES.finishBelowSill),
  'Mark.at': long('(0, 0)', '(0, 0)'),

  'unit Size.sides': lengthOf(USUAL_VALUES.unitSize),
  'Weight.value': { kind: 'kg', imperial: '42 lb', metric: '2.7 kg' },
  'material Size.sides': lengthOf(USUAL_VALUES.kerbSize),
  'compacted MeasureItem.value': density('140 lb per cu ft', '2.2 t/m3'),
  'loose MeasureItem.value': density('112 lb per cu ft', '1.76 t/m3'),
  'compaction-factor MeasureItem.value': same('number', '1.25'),
  'width MeasureItem.value': length('2 in', '50 mm'),
  'base-past MeasureItem.value': length('6 in', '150 mm'),
  'lap MeasureItem.value': length('12 in', '300 mm'),
  'Spikes.spacing': length('12 in', '300 mm'),
  'concrete Size.sides': length('12 x 4 in', '300 x 100 mm'),
  'Concrete.under': length('2 in', '50 mm'),
  'haunch Size.sides': lengthOf(USUAL_VALUES.haunchSize),
  'roll Size.sides': long('12 x 100 ft', '4.5 x 100 m'),
  'swell SoilMeasure.value': same('share', '25 %'),
  'density SoilMeasure.value': density('100 lb per cu ft', '1.6 t/m3'),
  'BondOffset.offset': same('number', '1/3'),
  'BondTurned.turn': same('degrees', '45 degrees'),
  'BondApart.apart': length('3 in', '75 mm'),

  'BondSeed.seed': same('number', '1'),
  'JobKeep.count': same('number', '4'),
  'breakage JobMeasure.value': same('share', '2 %'),
  'saw-cut JobMeasure.value': length('1/8 in', '3 mm'),
  'existing Size.sides': length('8 x 4 in', '200 x 100 mm'),
  'ExistingJoints.joint': lengthOf(USUAL_VALUES.joint),

  'area Size.sides': long('12 x 16 ft', '3 x 4 m'),
  'area Circle.across': long('10 ft', '3 m'),
  'area Circle.radius': long('5 ft', '1.5 m'),
  'kept-out Size.sides': length('20 x 14 in', '500 x 350 mm'),
  'kept-out Circle.across': length('10 in', '250 mm'),
  'kept-out Circle.radius': length('5 in', '125 mm'),
  'existing PlaceClause.at': long('(0, 0)', '(0, 0)'),
  'area PlaceClause.at': long('(0, 0)', '(0, 0)'),
  'kept-out PlaceClause.at': long('(6 ft, 3 ft)', '(1.8, 0.9) m'),
  'PlaceClause.turn': same('degrees', '12 degrees'),
  'Walk.start': long('(0, 0)', '(0, 0)'),
  'Step.length': long('12 ft', '3.6 m'),
  'bowed Bend.by': length('12 in', '300 mm'),
  'radius Bend.by': long('20 ft', '6 m'),
  'Rounding.radius': long('4 ft', '1.2 m'),

  'inset Size.sides': long('6 x 4 ft', '1.8 x 1.2 m'),
  'inset Circle.across': long('6 ft', '1.8 m'),
  'inset Circle.radius': long('3 ft', '0.9 m'),
  'inset PlaceClause.at': long('(6 ft, 3 ft)', '(1.8, 0.9) m'),

  'Joints.joint': lengthOf(USUAL_VALUES.joint),
  'Joints.least': length('1/16 in', '2 mm'),
  'Joints.most': length('3/16 in', '5 mm'),
  'StartClause.by': length('(2 in, 0)', '(50, 0) mm'),
  'StartClause.turn': same('degrees', '45 degrees'),
  'InboardCuts.least': length('2 in', '50 mm'),
  'Band.at': long('3 ft', '1 m'),
  'bed Layer.thickness': lengthOf(USUAL_VALUES.bed),
  'base Layer.thickness': length('6 in', '150 mm'),
  'sub-base Layer.thickness': length('6 in', '150 mm'),
  'base LayerClause.past': length('6 in', '150 mm'),
  'sub-base LayerClause.past': length('6 in', '150 mm'),
  'LayerClause.settles': length('1/4 in', '8 mm'),

  'FromLine.along': long('6 ft', '1.8 m'),
  'FromPoint.away': long('6 ft', '1.8 m'),
  'FromPoint.turn': same('degrees', '40 degrees'),
  'Aside.off': long('3 ft', '0.9 m'),
  'TapeClause.read': long('12 ft 6 in', '3.8 m'),
  'StripWidth.width': long('4 ft', '1.2 m'),
  'StripWidth.station': long('20 ft', '6 m'),
  'StationHeight.station': long('20 ft', '6 m'),
  'Fall.rate': { kind: 'slope', imperial: '1/4 in per ft', metric: '1:60' },
  'Across.rate': { kind: 'slope', imperial: '1/4 in per ft', metric: '1:40' },

  'heights Backsight.reading': length('31 1/4 in', '1482 mm'),
  'heights Height.by': length('34 in', '1480 mm'),
  'benchmark Height.by': long('100 ft', '10.000 m'),
  'lid Height.by': length('4 in', '100 mm'),
  'grate Height.by': length('2 3/4 in', '70 mm'),
  'underside Height.by': length('1 in', '25 mm'),
  'sill Height.by': length('1 in', '25 mm'),
  'string Height.by': length('1 in', '25 mm'),
  'edges Height.by': length('3 in', '75 mm'),
  'log Height.by': length('8 1/2 in', '215 mm'),
  'EdgeClause.up': length('1 in', '25 mm'),
  'Offset.offset': length('1/4 in', '6 mm'),
  'Offset.at': long('4 ft', '1.2 m'),
  'thickness ExistingMeasure.value': length('4 in', '100 mm'),
  'density ExistingMeasure.value': density('145 lb per cu ft', '2.3 t/m3'),
  'UseClause.depth': length('3 in', '80 mm'),
  'NoDig.across': long('10 ft', '3 m'),
  'NoDig.radius': long('5 ft', '1.5 m'),

  'Channel.width': length('5 in', '130 mm'),
  'Channel.depth': length('6 in', '150 mm'),
  'Channel.concrete': length('6 in', '150 mm'),
  'drain Size.sides': length('12 x 12 in', '300 x 300 mm'),
  'drain Circle.across': length('12 in', '300 mm'),
  'drain Circle.radius': length('6 in', '150 mm'),
  'drain PlaceClause.at': long('(6 ft, 3 ft)', '(1.8, 0.9) m'),
  'PipeDepth.depth': length('18 in', '450 mm'),
  'LeafClause.leaf': long('3 ft', '0.9 m'),
  'LeafClause.opens': same('degrees', '95 degrees'),
  'GateClearance.least': length('1/2 in', '12 mm'),
  'Opening.first': long('4 ft', '1.2 m'),
  'Opening.last': long('7 ft', '2.1 m'),
  'SheetEvery.spacing': long('6 ft', '2 m'),
  'SheetString.above': length('6 in', '150 mm'),
  'SheetOffset.out': long('2 ft', '0.6 m'),

  'JobDig.machine': { kind: 'kg', imperial: '3300 lb', metric: '1.5 t' },
  'JobAccess.width': long('3 ft', '0.9 m'),
  'JobAccess.run': long('40 ft', '12 m'),
  'barrow-load JobMeasure.value': { kind: 'm3', imperial: '3 cu ft', metric: '85 l' },
  'truck-load JobMeasure.value': { kind: 'kg', imperial: '10 short ton', metric: '8 t' },
  'curve-pieces MeasureItem.value': length('12 in', '305 mm'),
  'CurePause.pause': same('s', '3 days'),

  'Delivered.amount': { kind: 'kg', imperial: '8 short ton', metric: '8 t' },
  'Measured.gap': length('1/8 in', '3 mm'),
  'Measured.straightedge': long('10 ft', '3 m'),
  'Measured.slope': { kind: 'slope', imperial: '1/4 in per ft', metric: '1:60' },
  'log Size.sides': long('3 x 4 ft', '0.9 x 1.2 m'),
  'SoftSpotClause.at': long('(6 ft, 3 ft)', '(1.8, 0.9) m'),
  'SoftSpotClause.deeper': length('4 in', '100 mm'),

  'PackSize.count': same('number', '430'),
  'loss MeasureItem.value': same('share', '5 %'),
  'moisture MeasureItem.value': same('share', '4 %'),
  'settling MeasureItem.value': same('share', '8 %'),
  'kept-back MeasureItem.value': same('share', '20 %'),
  'PricesOn.valid': same('s', '60 days'),
  'Delivery.charge': money('65 USD'),
  'load DeliveryClause.amount': { kind: 'goods', imperial: '8 short ton', metric: '8 t' },
  'order DeliveryClause.amount': { kind: 'goods', imperial: '2 short ton', metric: '2 t' },
  'from DeliveryClause.amount': money('500 USD'),
  'pack Holds.sides': same('goods', '430'),
  'pack-layer Holds.sides': same('goods', '15'),
  'pallet Holds.sides': same('goods', '90'),
  'box-of Holds.sides': same('number', '24'),
  'bag Holds.sides': { kind: 'goods', imperial: '50 lb', metric: '25 kg' },
  'bulk-bag Holds.sides': { kind: 'goods', imperial: '1 short ton', metric: '850 kg' },
  'length Holds.sides': length('8 ft', '915 mm'),
  'price Holds.sides': { kind: 'goods', imperial: '12 x 100 ft', metric: '4.5 x 100 m' },
  'loose SoldBy.price': { kind: 'money', imperial: '38 USD per short ton', metric: '32 USD per tonne' },
  'SoldBy.price': money('57 USD'),
  'loose SoldClause.price': { kind: 'money', imperial: '35 USD per short ton', metric: '29 USD per tonne' },
  'SoldClause.price': money('54 USD'),
  'deposit SoldClause.amount': money('20 USD'),
  'weight SoldClause.amount': { kind: 'kg', imperial: '3900 lb', metric: '1200 kg' },
  'steps SoldClause.amount': { kind: 'goods', imperial: '1/2 short ton', metric: '0.5 t' },
  'loose SoldClause.amount': { kind: 'goods', imperial: '10 short ton', metric: '10 t' },
  'SoldClause.amount': same('number', '4'),
  'MixedSize.count': same('number', '10'),
  'Stock.amount': same('goods', '12'),

  'JobCrew.people': same('number', '2'),
  'CrewClause.hours': same('s', '8 h'),
  'JobTask.hours': same('s', '6 h'),
  'JobLabour.charge': money('24 USD per hour'),
  'JobHire.charge': money('45 USD'),
  'JobDisposal.charge': money('28 USD per tonne'),
  'for JobDisposal.charge': money('290 USD'),
  // Behind the volume stands the mass.
  ', JobDisposal.holds': { kind: 'kg', imperial: '8 short ton', metric: '8 t' },
  'JobDisposal.holds': { kind: 'm3', imperial: '8 cu yd', metric: '6 m3' },
  'JobContingency.share': same('share', '8 %'),
  'overhead JobShare.value': same('share', '10 %'),
  'margin JobShare.value': same('share', '18 %'),
  'markup JobShare.value': same('share', '25 %'),
  'tax JobShare.value': same('share', '20 %'),
  'JobExtra.cost': money('180 USD'),
  'JobQuote.valid': same('s', '30 days'),
  'RateTakes.time': { kind: 's', imperial: '0.12 h per sq ft', metric: '1.3 h per m2' }
};

/** A place that wants a quantity. */
export interface WantedQuantity {
  readonly property: string;
  readonly kind: QuantityKind;
  /** What is usual here; absent within a pair or brackets. */
  readonly usual?: string;
  readonly large: boolean;
  /** Of what is bought, in what it may be measured. */
  readonly fits?: readonly string[];
}

/**
 * The quantity that a property on the way to a number or bracket wants; undefined if none of them is one. `words` are
 * those that it may hang on: of the statement so far, then of its block.
 */
export function wantedQuantity(
  path: readonly string[],
  words: readonly string[],
  system: System
): WantedQuantity | undefined {
  // The nearest property says most, and so does the nearest word; the block comes last.
  const nearest = [...words.slice(0, -1).reverse(), ...words.slice(-1)];
  for (const property of path.toReversed()) {
    const keys = [...nearest.map(word => `${word} ${property}`), property];
    const usual = keys.map(key => USUAL[key]).find(found => found !== undefined);
    if (usual === undefined) continue;
    const isWithin = path.some(each => WITHIN.includes(each));
    const value = isWithin
      ? {}
      : { usual: /^(?:Size|Holds)\.sides$/.test(property) ? sizesLeft(usual[system], words) : usual[system] };
    return { property, kind: usual.kind, large: usual.large ?? false, ...value };
  }
  return undefined;
}

/** In a pair or in brackets a usual whole makes no sense. */
const WITHIN: readonly string[] = ['Pair.x', 'Pair.y', 'Group.value'];

/** Of `12 x 16 ft` behind `12 x` the `16 ft`. */
function sizesLeft(usual: string, words: readonly string[]): string {
  const given = words.filter(word => word === 'BY').length;
  return usual.split(' x ').slice(given).join(' x ');
}

/** The measures that can stand behind a number, the job's own system first. */
export function measuresFor({ kind, large, fits }: WantedQuantity, system: System): readonly string[] {
  const [imperial, metric] = MEASURES_OF[kind].map(measures => fitting(measures, fits)) as [string[], string[]];
  const [near, far] = system === 'imperial' ? [imperial, metric] : [metric, imperial];
  // An outline is measured in feet or metres, a layer in inches or millimetres.
  const [first, second, ...others] = near;
  const sized = kind === 'm' && large ? [second!, first!, ...others] : near;
  return [...sized, ...far];
}

function fitting(measures: readonly string[], fits: readonly string[] | undefined): readonly string[] {
  return fits === undefined ? measures : measures.filter(measure => fits.includes(kindOfMeasure(measure) ?? ''));
}

/** Of a mass, volume, area or length. */
export function kindOfMeasure(measure: string): 'kg' | 'm3' | 'm2' | 'm' | undefined {
  const dimensions = measureNamed(measure)?.dimensions;
  const { kg = 0, m = 0 } = dimensions ?? {};
  if (dimensions === undefined || Object.values(dimensions).filter(power => power !== 0).length !== 1) return undefined;
  if (kg === 1) return 'kg';
  return ([undefined, 'm', 'm2', 'm3'] as const)[m];
}

/** The words that follow `per`. */
export function measuresAfterPer(system: System, wanted: WantedQuantity | undefined): readonly string[] {
  const told = PER[wanted?.property ?? ''];
  if (told !== undefined) return fitting(told[system], wanted?.fits);
  if (wanted?.kind === 'slope') return system === 'imperial' ? ['ft', 'm'] : ['m', 'ft'];
  return system === 'imperial' ? ['cu ft', 'cu yd', 'm3'] : ['m3', 'cu ft', 'cu yd'];
}

const LOOSELY = {
  imperial: ['short ton', 'cu yd', 'sq ft', 'ft'],
  metric: ['tonne', 'm3', 'm2', 'm']
} as const;

/** What so much time or money may be for, by the property that it is read into. */
export const PER: Readonly<Record<string, Readonly<Record<System, readonly string[]>>>> = {
  'SoldBy.price': LOOSELY,
  'SoldClause.price': LOOSELY,
  'JobLabour.charge': { imperial: ['hour'], metric: ['hour'] },
  'JobDisposal.charge': { imperial: ['cu yd', 'short ton', 'tonne', 'm3'], metric: ['tonne', 'm3'] },
  'RateTakes.time': { imperial: ['sq ft', 'ft', 'cu yd', 'short ton'], metric: ['m2', 'm', 'm3', 'tonne'] }
};

const LENGTHS = [
  ['in', 'ft', 'yd'],
  ['mm', 'm', 'cm']
] as const;

const MEASURES_OF: Readonly<Record<QuantityKind, readonly [readonly string[], readonly string[]]>> = {
  m: LENGTHS,
  m2: [['sq ft', 'sq in'], ['m2']],
  m3: [['cu yd', 'cu ft'], ['m3']],
  kg: [
    ['lb', 'short ton'],
    ['kg', 't', 'tonne']
  ],
  'kg/m3': [['lb per cu ft'], ['t/m3', 'kg/m3']],
  s: [['days', 'h'], []],
  degrees: [['degrees'], []],
  share: [['%'], []],
  slope: [
    ['in per ft', '%'],
    ['mm per m', '%']
  ],
  number: [[], []],
  money: [['USD', 'CAD', 'GBP', 'EUR', 'AUD', 'NZD'], []],
  goods: [
    ['short ton', 'cu yd', 'lb', 'cu ft', 'sq ft', 'ft'],
    ['t', 'm3', 'kg', 'm2', 'm', 'mm']
  ],
  any: [
    ['in', 'ft', 'sq ft', 'cu yd', 'lb', '%'],
    ['mm', 'm', 'm2', 'm3', 'kg']
  ]
};

/** What the words of a usual quantity are to the grammar. */
export function kindsOf(quantity: string): string[] {
  const words = quantity.match(/[0-9]+(?:[ ./:][0-9]+(?:\/[0-9]+)?)*|per|x|[(),]|(?:cu|sq|short) \w+|[A-Za-z%][\w/]*/g);
  return (words ?? []).map(word => {
    if (/^[0-9]/.test(word)) return 'NUMBER';
    if (word === 'x') return 'BY';
    return /^(?:per|[(),])$/.test(word) ? word : 'MEASURE';
  });
}
