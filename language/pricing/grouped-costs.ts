import type { Key, System } from '../job/job.ts';
import { TASK_WORDS, type TaskWord } from '../job/work.ts';
import { measureNamed } from '../measures/measures.ts';
import type { From } from '../quantities/contract.ts';
import type { PricedArea } from './cost-inputs.ts';
import { type Work, WORKS } from './cost-line.ts';
import { type Ledger, over, quantity, type Reckoned, times } from '../money/ledger.ts';
import type { Minor } from '../money/money.ts';
import type { PricedPart } from './price.ts';

/** Cost and price of what belongs together. */
export interface Sum {
  readonly cost: Minor;
  readonly price: Minor;
}

/** One piece of work of an area or of the job as a whole; a line of one's own under its title. */
export interface WorkSum extends Sum {
  readonly work: Work;
  readonly title?: string;
  /** In an area that has a size: for one square foot or square metre of it. */
  readonly perUnit?: Sum;
  /** Nothing of it bears tax. */
  readonly untaxed: boolean;
}

export interface AreaSum extends Sum {
  readonly area: Key;
  readonly name: string;
  /** m2. */
  readonly netArea: number;
  /** For one square foot or square metre; absent of an area without size. */
  readonly perUnit?: Sum;
  readonly works: readonly WorkSum[];
  readonly edges: readonly (Sum & { readonly edge: string })[];
}

/** Sums of parts: by area, and within it by work and by side; by task over the whole job. */
export interface GroupedCosts {
  readonly areas: readonly AreaSum[];
  readonly wholeJob: readonly WorkSum[];
  readonly tasks: readonly (Sum & { readonly task: TaskWord })[];
}

export function groupedCosts(
  parts: readonly PricedPart[],
  areas: readonly PricedArea[],
  system: System,
  ledger: Ledger
): GroupedCosts {
  const known = new Set(areas.map(({ key }) => key));
  return {
    areas: areas.map(({ key, name, netArea, pointer: netAreaAt }, index): AreaSum => {
      const own = parts.filter(({ area }) => area === key);
      const at = `/costs/areas/${index}`;
      const sum = summed(own, at, ledger);
      const size = quantity('net area', netArea, 'm2', { pointer: netAreaAt });
      const perUnit = perUnitOfArea(sum, at, size, system, ledger);
      return {
        area: key,
        name,
        netArea,
        ...sum,
        ...(perUnit === undefined ? {} : { perUnit }),
        works: byWork(own, `${at}/works`, ledger).map((work, place) => {
          const each = perUnitOfArea(work, `${at}/works/${place}`, size, system, ledger);
          return { ...work, ...(each === undefined ? {} : { perUnit: each }) };
        }),
        edges: by(own, ({ edge }) => edge).map(([edge, all], place) => ({
          edge,
          ...summed(all, `${at}/edges/${place}`, ledger)
        }))
      };
    }),
    wholeJob: byWork(
      parts.filter(({ area }) => area === undefined || !known.has(area)),
      '/costs/wholeJob',
      ledger
    ),
    tasks: by(parts, ({ task }) => task)
      .sort(([a], [b]) => TASK_WORDS.indexOf(a) - TASK_WORDS.indexOf(b))
      .map(([task, all], index) => ({ task, ...summed(all, `/costs/tasks/${index}`, ledger) }))
  };
}

/** Cost and price of one square foot or square metre of what stands at a pointer; undefined where it has no size. */
function perUnitOfArea(
  { cost, price }: Sum,
  at: string,
  netArea: Reckoned,
  system: System,
  ledger: Ledger
): Sum | undefined {
  const perUnit = (key: 'cost' | 'price', amount: Minor): Minor =>
    amountPerUnit(ledger.named(key, amount, `${at}/${key}`), `${at}/perUnit/${key}`, netArea, system, ledger);
  return netArea.exact.compare(0) > 0 ? { cost: perUnit('cost', cost), price: perUnit('price', price) } : undefined;
}

/** An amount for one square foot or square metre of an area that is not nought. */
export function amountPerUnit(
  amount: Reckoned,
  pointer: string,
  netArea: Reckoned,
  system: System,
  ledger: Ledger
): Minor {
  const from: From = { assumed: 'what areas are told in' };
  const spelling = areaMeasure(system);
  const one = quantity(`one ${spelling}`, measureNamed(spelling)!.factor.valueOf(), 'm2', from);
  return ledger.put(pointer, over(times(amount, one), netArea));
}

export function areaMeasure(system: System): 'sq ft' | 'm2' {
  return system === 'imperial' ? 'sq ft' : 'm2';
}

/** In the order of the trade; lines of one's own in the order of the text. */
function byWork(parts: readonly PricedPart[], at: string, ledger: Ledger): WorkSum[] {
  return by(parts, ({ work, title }) => JSON.stringify([work, title]))
    .map(([, all]) => all)
    .sort(([a], [b]) => WORKS.indexOf(a!.work) - WORKS.indexOf(b!.work))
    .map((all, index): WorkSum => {
      const { work, title } = all[0]!;
      const untaxed = all.every(({ line }) => line.untaxed);
      return { work, ...(title === undefined ? {} : { title }), untaxed, ...summed(all, `${at}/${index}`, ledger) };
    });
}

function summed(parts: readonly PricedPart[], at: string, ledger: Ledger): Sum {
  const sum = (key: 'cost' | 'price'): Minor =>
    ledger.sum(
      `${at}/${key}`,
      parts.map(part => ledger.named(part.line.title, part[key], `${part.pointer}/${key}`))
    );
  return { cost: sum('cost'), price: sum('price') };
}

function by<K>(parts: readonly PricedPart[], keyOf: (part: PricedPart) => K | undefined): [K, PricedPart[]][] {
  const groups = new Map<K, PricedPart[]>();
  for (const part of parts) {
    const key = keyOf(part);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [part]);
    else group.push(part);
  }
  return [...groups];
}
