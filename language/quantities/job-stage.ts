import type { Soil } from '../job/job.ts';
import { type Expression, given, leaf, measured, multiply, plainNumber, subtract, sum } from './arithmetic.ts';
import type { KeyOf, NumbersOf } from './catalogue.ts';
import type { Workings } from './contract.ts';
import { Book } from './page.ts';
import type { PairNumbers } from './pair-stage.ts';

/** What the whole job's numbers are taken from. */
export interface JobInputs {
  readonly key: string;
  /** In the order of their keys. */
  readonly areas: readonly AreaTotals[];
  /** Pairs of areas that share ground, by index. */
  readonly pairs: readonly (PairNumbers & { readonly areas: readonly [number, number] })[];
}

export interface AreaTotals {
  readonly key: string;
  readonly name: string;
  readonly netArea: number;
  readonly dig: NumbersOf<'dig'>;
  readonly soil: Pick<Soil, 'swell' | 'density'>;
}

export interface JobResult {
  readonly dig: NumbersOf<'job-dig'>;
  readonly totals: NumbersOf<'totals'>;
  readonly workings: Workings;
}

/**
 * Totals of the whole job. Ground that two areas dig is counted once, to the depth of the deeper dig; where three areas
 * dig the same ground it is taken off once a pair.
 */
export function jobStage({ key, areas, pairs }: JobInputs): JobResult {
  const book = new Book();
  const dig = book.page('job-dig', '/dig');
  const shared = pairs.filter(pair => pair.dug > 0).map(pair => sharedDig(pair, areas));
  const ofAreas = (quantity: KeyOf<'dig'>, words: string, measure: string): Expression[] =>
    areas.map((area, index) =>
      leaf(`${words} of ${area.name}`, area.dig[quantity], measure, { pointer: `/areas/${index}/dig/${quantity}` })
    );
  const once = (all: readonly Expression[], twice: readonly Expression[], words: string, measure: string): Expression =>
    subtract(total(all, measure, key), ...(twice.length > 0 ? twice : [measured(words, 0, measure, key)]));
  dig.put(
    'area',
    once(
      ofAreas('area', 'dig area', 'm2'),
      shared.map(one => one.area),
      'area dug twice',
      'm2'
    )
  );
  dig.put(
    'bankVolume',
    once(
      ofAreas('bankVolume', 'bank volume', 'm3'),
      shared.map(one => one.bank),
      'volume dug twice',
      'm3'
    )
  );
  dig.put(
    'looseVolume',
    once(
      ofAreas('looseVolume', 'loose volume', 'm3'),
      shared.map(one => one.loose),
      'volume dug twice',
      'm3'
    )
  );
  dig.put(
    'mass',
    once(
      ofAreas('mass', 'mass', 'kg'),
      shared.map(one => one.mass),
      'mass dug twice',
      'kg'
    )
  );

  const totals = book.page('totals', '/totals');
  const nets = areas.map((area, index) =>
    leaf(`net area of ${area.name}`, area.netArea, 'm2', { pointer: `/areas/${index}/netArea` })
  );
  const pavedTwice = pairs
    .filter(pair => pair.paved > 0)
    .map(pair => measured(`area paved by both ${names(pair, areas)}`, pair.paved, 'm2', shapes(pair, areas)));
  totals.put('netArea', once(nets, pavedTwice, 'area paved twice', 'm2'));
  return { dig: dig.numbers, totals: totals.numbers, workings: book.workings };
}

function total(all: readonly Expression[], measure: string, key: string): Expression {
  const [first, ...others] = all;
  return first === undefined ? measured('all areas', 0, measure, key) : sum(first, ...others);
}

type Pair = JobInputs['pairs'][number];

/** What two digs share: the shared ground down to the bottom of the shallower. */
function sharedDig(pair: Pair, areas: readonly AreaTotals[]): Record<'area' | 'bank' | 'loose' | 'mass', Expression> {
  const [first, second] = pair.areas;
  const index = areas[first]!.dig.deepest <= areas[second]!.dig.deepest ? first : second;
  const shallower = areas[index]!;
  const area = measured(`area dug by both ${names(pair, areas)}`, pair.dug, 'm2', shapes(pair, areas));
  const depth = leaf(`depth of ${shallower.name}`, shallower.dig.deepest, 'm', {
    pointer: `/areas/${index}/dig/deepest`
  });
  const bank = multiply(area, depth);
  return {
    area,
    bank,
    loose: multiply(bank, sum(plainNumber(1), given('swell of the soil', shallower.soil.swell, ''))),
    mass: multiply(bank, given('density of the soil', shallower.soil.density, 'kg/m3'))
  };
}

function names(pair: Pair, areas: readonly AreaTotals[]): string {
  return pair.areas.map(index => areas[index]!.name).join(' and ');
}

function shapes(pair: Pair, areas: readonly AreaTotals[]): string {
  return pair.areas.map(index => areas[index]!.key).join('+');
}
