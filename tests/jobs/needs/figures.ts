import type { AreaQuantities, EdgeQuantities, JobQuantities } from '../../../language/quantities/contract.ts';
import type { LevelQuantities } from '../../../language/quantities/levels-stage.ts';
import { CUBIC_FOOT, CUBIC_YARD, INCH, SHORT_TON, SQUARE_FOOT } from '../../quantities/jobs.ts';
import type { Entered } from '../read.ts';

/** What a figure is told in, m, m2, m3 or kg of each. */
export const MEASURES = {
  in: INCH,
  mm: 0.001,
  'sq ft': SQUARE_FOOT,
  m2: 1,
  'cu ft': CUBIC_FOOT,
  'cu yd': CUBIC_YARD,
  m3: 1,
  'short ton': SHORT_TON,
  '%': 0.01,
  '': 1
} as const;

/** The area of that name, or the only one. */
export function area(job: Entered, name?: string): AreaQuantities {
  const found = job.areas.filter(one => name === undefined || one.name === name);
  if (found.length !== 1) throw new Error(`${found.length} areas called ${name ?? 'anything'}`);
  return found[0]!;
}

/** Heights at a place, m against the datum. */
export function level(job: Entered, at: string, areaName?: string): LevelQuantities {
  return found(area(job, areaName).levels, ({ at: place }) => place === at, at);
}

export function edge(job: Entered, name: string, areaName?: string): EdgeQuantities {
  return found(area(job, areaName).edges, one => one.name === name, name);
}

type Things = 'boxes' | 'gates' | 'pipes' | 'drains';

/** A thing of the job by its name. */
export function thing<K extends Things>(job: Entered, kind: K, name: string): NonNullable<JobQuantities[K]>[number] {
  const things = job.evaluation.numbers!.quantities[kind] as
    readonly NonNullable<JobQuantities[K]>[number][] | undefined;
  return found(things, one => one.name === name, name);
}

/** Area whose water runs over a side, m2. */
export function waterOver(job: Entered, side: string): number {
  const over = (job.evaluation.numbers!.quantities.water ?? []).flatMap(one => one.over);
  return over.filter(one => one.side === side).reduce((total, { drained }) => total + drained, 0);
}

export function layer(job: Entered, role: string): AreaQuantities['layers'][number] {
  return found(area(job).layers, one => one.role === role, role);
}

/** A number that has to be there. */
export function told(value: number | undefined): number {
  if (value === undefined) throw new Error('no such number');
  return value;
}

function found<T>(all: readonly T[] | undefined, is: (one: T) => boolean, name: string): T {
  const one = all?.find(is);
  if (one === undefined) throw new Error(`no ${name}`);
  return one;
}
