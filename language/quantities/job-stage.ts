import type { Carting, Soil } from '../job/job.ts';
import { divide, type Expression, given, leaf, measured, multiply, plainNumber, subtract, sum } from './arithmetic.ts';
import type { KeyOf, NumbersOf } from './catalogue.ts';
import type { Workings } from './contract.ts';
import { Book } from './page.ts';
import type { SoftSpotQuantities } from './soft-spots.ts';
import { cartingOf } from './carting.ts';
import { type JobBuying, type Taken, takenTogether, type Together } from './together.ts';

/** What the whole job's numbers are taken from. */
export interface JobInputs {
  readonly key: string;
  /** In the order of their keys. */
  readonly areas: readonly AreaTotals[];
  readonly buying: JobBuying;
  readonly carting: Carting;
}

/** Ground of one area that others take up too, m2, and which, by index. */
export interface Shared {
  readonly area: number;
  readonly with: readonly number[];
}

export interface AreaTotals extends Taken {
  readonly key: string;
  readonly netArea: number;
  readonly dig: NumbersOf<'dig'>;
  readonly softSpots: readonly SoftSpotQuantities[];
  readonly soil: Pick<Soil, 'swell' | 'density'>;
  /** What deeper digs take up of its dig; of digs as deep, those whose key comes first. */
  readonly dug?: Shared;
  /** What areas whose key comes first pave of it. */
  readonly paved?: Shared;
}

export interface JobResult extends Together {
  readonly dig: NumbersOf<'job-dig'>;
  readonly totals: NumbersOf<'totals'>;
  readonly workings: () => Workings;
}

/** What the digs of the areas add up to, and what is taken off where several dig one ground. */
const DUG = [
  { quantity: 'area', words: 'dig area', twice: 'area dug twice', measure: 'm2' },
  { quantity: 'bankVolume', words: 'bank volume', twice: 'volume dug twice', measure: 'm3' },
  { quantity: 'looseVolume', words: 'loose volume', twice: 'volume dug twice', measure: 'm3' },
  { quantity: 'mass', words: 'mass', twice: 'mass dug twice', measure: 'kg' }
] as const satisfies readonly { quantity: KeyOf<'job-dig'>; words: string; twice: string; measure: string }[];

/** Totals of the whole job. Ground that several areas dig is counted once, to the depth of the deepest dig. */
export function jobStage({ key, areas, buying, carting }: JobInputs): JobResult {
  const book = new Book();
  const dig = book.page('job-dig', '/dig');
  const shared = areas.flatMap((area, index) => sharedDig(area, index, areas));
  const once = (all: readonly Expression[], twice: readonly Expression[], words: string, measure: string): Expression =>
    subtract(total(all, measure, key), ...(twice.length > 0 ? twice : [measured(words, 0, measure, key)]));
  const dug = new Map<string, Expression>();
  for (const { quantity, words, twice, measure } of DUG) {
    const all = areas.map((area, index) =>
      leaf(`${words} of ${area.name}`, area.dig[quantity], measure, { pointer: `/areas/${index}/dig/${quantity}` })
    );
    const again = shared.map(one => one[quantity]);
    dug.set(quantity, dig.put(quantity, once(all, again, twice, measure)));
  }
  cartingOf(areas, dug.get('looseVolume')!, dug.get('mass')!, carting, dig);

  const totals = book.page('totals', '/totals');
  const nets = areas.map((area, index) =>
    leaf(`net area of ${area.name}`, area.netArea, 'm2', { pointer: `/areas/${index}/netArea` })
  );
  const pavedTwice = areas.flatMap(area => {
    const words = `area of ${area.name} paved by others too`;
    return area.paved === undefined ? [] : [measured(words, area.paved.area, 'm2', shapes(area, area.paved, areas))];
  });
  totals.put('netArea', once(nets, pavedTwice, 'area paved twice', 'm2'));
  const together = takenTogether(areas, buying, key, book);
  return { dig: dig.numbers, totals: totals.numbers, ...together, workings: () => book.workings };
}

function total(all: readonly Expression[], measure: string, key: string): Expression {
  const [first, ...others] = all;
  return first === undefined ? measured('all areas', 0, measure, key) : sum(first, ...others);
}

/** What deeper digs take up of a dig: the shared ground down to its own bottom. */
function sharedDig(
  area: AreaTotals,
  index: number,
  areas: readonly AreaTotals[]
): Record<(typeof DUG)[number]['quantity'], Expression>[] {
  if (area.dug === undefined) return [];
  const { name, soil } = area;
  const ground = measured(`dig area of ${name} dug by others too`, area.dug.area, 'm2', shapes(area, area.dug, areas));
  const depth = depthDug(area, index);
  const bank = multiply(ground, depth);
  return [
    {
      area: ground,
      bankVolume: bank,
      looseVolume: multiply(bank, sum(plainNumber(1), given('swell of the soil', soil.swell, ''))),
      mass: multiply(bank, given('density of the soil', soil.density, 'kg/m3'))
    }
  ];
}

/** The depth of a dig; of an uneven one its mean. */
function depthDug({ name, dig }: AreaTotals, index: number): Expression {
  const at = `/areas/${index}/dig`;
  if (dig.shallowest === dig.deepest || dig.area === 0)
    return leaf(`depth of ${name}`, dig.deepest, 'm', { pointer: `${at}/deepest` });
  return divide(
    leaf(`bank volume of ${name}`, dig.bankVolume, 'm3', { pointer: `${at}/bankVolume` }),
    leaf(`dig area of ${name}`, dig.area, 'm2', { pointer: `${at}/area` })
  );
}

function shapes(area: AreaTotals, shared: Shared, areas: readonly AreaTotals[]): string {
  return [area, ...shared.with.map(index => areas[index]!)].map(({ key }) => key).join('+');
}
