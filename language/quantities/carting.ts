import type { Carting } from '../job/job.ts';
import { divide, type Expression, given, leaf, multiply, plainNumber, roundedUp, sum } from './arithmetic.ts';
import type { KeyOf, NumbersOf } from './catalogue.ts';
import type { Page } from './page.ts';
import type { SoftSpotQuantities } from './soft-spots.ts';

/** What an area adds to the dig besides its layers. */
export interface DugBesides {
  readonly name: string;
  readonly dig: NumbersOf<'dig'>;
  readonly softSpots: readonly SoftSpotQuantities[];
}

/** Soft spots, low ground and old paving of all areas, and how all that is dug is carted away. */
export function cartingOf(
  areas: readonly DugBesides[],
  loose: Expression,
  mass: Expression,
  { barrow, run, truck, digBy }: Carting,
  page: Page<'job-dig'>
): void {
  const soft = (['bankVolume', 'looseVolume', 'mass'] as const).map(key => softSpots(areas, key, page));
  for (const key of ['fillVolume', 'fillMass', 'oldPavingVolume', 'oldPavingMass'] as const) inAll(areas, key, page);
  if (digBy === 'machine' && run === undefined && truck === undefined) return;
  const [, softLoose, softMass] = soft;
  if (barrow.value > 0 && (digBy !== 'machine' || run !== undefined)) {
    const held = given('what a barrow holds', barrow, 'm3');
    const barrows = page.put('barrows', roundedUp(divide(loose, held)));
    const all =
      softLoose === undefined
        ? barrows
        : page.put('barrowsWithSoftSpots', roundedUp(divide(sum(loose, softLoose), held)));
    if (run !== undefined) page.put('barrowWalk', multiply(all, given('barrow run', run, 'm'), plainNumber(2)));
  }
  if (truck === undefined || !(truck.value > 0)) return;
  const away = softMass === undefined ? mass : sum(mass, softMass);
  page.put('truckLoads', roundedUp(divide(away, given('what a truck takes', truck, 'kg'))));
}

const SOFT_SPOTS = {
  bankVolume: { key: 'softSpotBankVolume', words: 'volume', measure: 'm3' },
  looseVolume: { key: 'softSpotLooseVolume', words: 'loose volume', measure: 'm3' },
  mass: { key: 'softSpotMass', words: 'mass', measure: 'kg' }
} as const;

function softSpots(
  areas: readonly DugBesides[],
  what: keyof typeof SOFT_SPOTS,
  page: Page<'job-dig'>
): Expression | undefined {
  const { key, words, measure } = SOFT_SPOTS[what];
  const all = areas.flatMap(({ name, softSpots: spots }, index) =>
    spots.map((spot, at) =>
      leaf(`${words} of soft spot ${at + 1} of ${name}`, spot[what], measure, {
        pointer: `/areas/${index}/softSpots/${at}/${what}`
      })
    )
  );
  return total(all, key, page);
}

/** Of what one area can't tell there is no sum. */
function inAll(
  areas: readonly DugBesides[],
  key: 'fillVolume' | 'fillMass' | 'oldPavingVolume' | 'oldPavingMass',
  page: Page<'job-dig'>
): void {
  const volume = key.startsWith('fill') ? 'fillVolume' : 'oldPavingVolume';
  const those = areas.flatMap((area, index) => (area.dig[volume] === undefined ? [] : [{ area, index }]));
  if (those.some(({ area }) => area.dig[key] === undefined)) return;
  const all = those.map(({ area, index }) =>
    leaf(
      `${key.startsWith('fill') ? 'fill' : 'old paving'} of ${area.name}`,
      area.dig[key]!,
      key.endsWith('Mass') ? 'kg' : 'm3',
      {
        pointer: `/areas/${index}/dig/${key}`
      }
    )
  );
  total(all, key, page);
}

function total(all: readonly Expression[], key: KeyOf<'job-dig'>, page: Page<'job-dig'>): Expression | undefined {
  const [first, ...others] = all;
  if (first === undefined) return undefined;
  return page.put(key, others.length === 0 ? multiply(plainNumber(1), first) : sum(first, ...others));
}
