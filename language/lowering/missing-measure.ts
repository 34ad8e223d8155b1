import type { Key, System } from '../job/job.ts';
import { measureNamed } from '../measures/measures.ts';
import { isGroup, isNegative, isQuantity, isSum, type Part, type Quantity } from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Wanted } from './context.ts';

/** What is measured in feet or metres. */
const LARGE = /^(?:point|box|pit|inset):|\/outline|\/band-\d+\/at$/;

/** What a length is likely to be, m, by the key of what it measures; the first that fits counts. */
const LIKELY: readonly (readonly [RegExp, least: number, most: number])[] = [
  [/\/outline/, 0.5, 1000],
  [LARGE, 0.15, 1000],
  [/\/(?:sub-)?base\/thickness$/, 0.025, 1],
  [/\/bed\/thickness$/, 0.01, 0.1],
  [/\/joints(?:\/(?:least|most))?$/, 0, 0.03],
  [/\/start\//, 0.005, 1],
  [/^job\/saw-cut$/, 0.001, 0.01],
  [/^unit:.*\/thickness$/, 0.02, 0.3],
  [/^unit:/, 0.02, 2],
  [/^/, 0.003, 5]
];

const LENGTHS: Readonly<Record<'large' | 'small', Readonly<Record<System, readonly string[]>>>> = {
  large: { imperial: ['ft', 'in'], metric: ['m', 'mm'] },
  small: { imperial: ['in'], metric: ['mm', 'm'] }
};

const OTHERS: Readonly<Partial<Record<Wanted, Readonly<Record<System, readonly string[]>>>>> = {
  kg: { imperial: ['lb'], metric: ['kg'] },
  'kg/m3': { imperial: ['lb per cu ft'], metric: ['t/m3', 'kg/m3'] },
  degrees: { imperial: ['degrees'], metric: [] }
};

/** Densities of soil, sand and stone, kg/m3. */
const LIKELY_DENSITY = [800, 3000] as const;

/** The measures that a bare number is likely to have, those of the job's system first; a fraction is read off no metric tape. */
export function fittingMeasures(
  wanted: Wanted,
  { value, written }: { readonly value: number; readonly written: string },
  key: Key,
  system: System
): string[] {
  const other = system === 'imperial' ? 'metric' : 'imperial';
  const use = LARGE.test(key) ? 'large' : 'small';
  const bySystem = wanted === 'm' ? LENGTHS[use] : OTHERS[wanted];
  if (bySystem === undefined) return [];
  const systems: readonly System[] = /\d ?\/ ?\d|[½¼¾⅓⅔⅛⅜⅝⅞]/.test(written) ? ['imperial'] : [system, other];
  return systems.flatMap(one => bySystem[one]).filter(measure => isLikely(wanted, Math.abs(value), measure, key));
}

function isLikely(wanted: Wanted, value: number, measure: string, key: Key): boolean {
  const si = value * factorOf(measure);
  if (wanted === 'kg/m3') return si >= LIKELY_DENSITY[0] && si <= LIKELY_DENSITY[1];
  if (wanted !== 'm') return true;
  const [, least, most] = LIKELY.find(([pattern]) => pattern.test(key))!;
  return si >= least && si <= most;
}

function factorOf(measure: string): number {
  const [first, per] = measure.split(' per ');
  return measureNamed(first!)!.factor.valueOf() / (per === undefined ? 1 : measureNamed(per)!.factor.valueOf());
}

/** Around what a measure is written so that the whole of it has one: nothing for a name, which has its own. */
export function aroundMeasured(node: Expression): readonly [before: string, after: string] | undefined {
  if (isQuantity(node) || isGroup(node)) return ['', ''];
  if (isNegative(node)) return aroundMeasured(node.value as Expression)?.[0] === '' ? ['', ''] : undefined;
  return isSum(node) ? ['(', ')'] : undefined;
}

/** The measure of a part that has none, beside parts that have: inches beside feet, feet beside inches. */
export function measureBeside({ parts }: Quantity, part: Part): string | undefined {
  const others = parts.filter(other => other !== part).map(other => other.measure?.toLowerCase() ?? '');
  if (others.some(measure => /^(?:ft|foot|feet|['′’])$/.test(measure))) return 'in';
  if (others.some(measure => /^(?:in|inch|inches|["″”]|''|′′|’’)$/.test(measure))) return 'ft';
  return undefined;
}
