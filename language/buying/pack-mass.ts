import type { Given, Key } from '../job/job.ts';
import type { SoldAs } from '../job/prices.ts';
import { type Expression, given, multiply, plainNumber, sum } from '../quantities/arithmetic.ts';
import { isSize } from '../quantities/layer-volumes.ts';
import { si } from './used.ts';

/** What is sold in a pack. */
export interface Packed {
  /** Absent of a pack of several sizes. */
  readonly thing?: Key;
  /** One step of what is sold loose. */
  readonly step?: Given;
  /** Loose, kg/m3. */
  readonly density?: Given;
  /** kg of one piece. */
  readonly weightOf: (unit: Key) => Given | undefined;
}

/** kg of one pack, or one step: as its price tells it, else by what it holds; undefined where that is not known. */
export function packMass(way: SoldAs, { thing, step, density, weightOf }: Packed): Expression | undefined {
  if (way.weight !== undefined) return given('weight of one', way.weight, 'kg');
  if (way.word === 'mixed-pack') return mixedMass(way.holds, weightOf);
  const [measure, holds] = way.word === 'loose' ? [way.per, step] : [way.measure, way.holds];
  if (holds === undefined) return undefined;
  // Of what is sold by the piece there is nothing to tell.
  const held =
    way.word === 'piece'
      ? plainNumber(1)
      : given(way.word === 'loose' ? 'one step' : 'what one holds', holds, si(measure));
  if (measure === 'kg') return held;
  if (measure === 'm3') return isSize(density) ? multiply(held, given('loose density', density, 'kg/m3')) : undefined;
  const weight = measure !== 'piece' || thing === undefined ? undefined : weightOf(thing);
  return weight && multiply(held, given('weight of a piece', weight, 'kg'));
}

function mixedMass(
  holds: readonly { readonly unit: Key; readonly count: Given }[],
  weightOf: Packed['weightOf']
): Expression | undefined {
  const masses = holds.map(({ unit, count }) => {
    const weight = weightOf(unit);
    return weight && multiply(given('pieces of one kind', count, ''), given('weight of a piece', weight, 'kg'));
  });
  const [first, ...others] = masses.filter(mass => mass !== undefined);
  if (first === undefined || others.length + 1 < masses.length) return undefined;
  return others.length === 0 ? first : sum(first, ...others);
}
