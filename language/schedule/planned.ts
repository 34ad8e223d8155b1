import { listed } from '../findings/listed.ts';
import type { Area, Job, System } from '../job/job.ts';
import { type PrintStyle, printAs } from '../measures/print.ts';
import type { AreaQuantities, JobQuantities } from '../quantities/contract.ts';
import type { Amount } from './contract.ts';
import type { Effort } from './draft.ts';
import { Logged } from './logged.ts';

/** A job as its tasks are drafted from it: areas with numbers, and what the log tells as done. */
export interface Planned {
  readonly job: Job;
  readonly quantities: JobQuantities;
  readonly areas: readonly PlannedArea[];
  readonly logged: Logged;
}

export interface PlannedArea {
  readonly area: Area;
  readonly numbers: AreaQuantities;
  /** Of its numbers. */
  readonly pointer: string;
}

export function plannedOf(job: Job, quantities: JobQuantities): Planned {
  const byKey = new Map(job.areas.map(area => [area.key, area]));
  return {
    job,
    quantities,
    areas: quantities.areas.flatMap((numbers, index) => {
      const area = byKey.get(numbers.id);
      return area === undefined ? [] : [{ area, numbers, pointer: `/areas/${index}` }];
    }),
    logged: new Logged(job.log)
  };
}

/** An amount where there is any of it. */
export function some(
  name: string,
  value: number | undefined,
  per: Amount['per'],
  from: Pick<Amount, 'pointer' | 'area' | 'side'> = {}
): Amount[] {
  return value === undefined || value === 0 ? [] : [{ name, value, per, ...from }];
}

/** One part of a task, where there is anything to do. */
export function effort(
  task: Effort['task'],
  words: readonly string[],
  amounts: readonly Amount[],
  more: { readonly done?: string | undefined; readonly brings?: true } = {}
): Effort[] {
  const [first, ...others] = amounts;
  if (first === undefined) return [];
  return [
    {
      task,
      words,
      amounts: [first, ...others],
      ...(more.done === undefined ? {} : { done: more.done }),
      ...(more.brings === undefined ? {} : { brings: more.brings })
    }
  ];
}

/** What the usual amounts of all efforts come to, those in one measure alone. */
export function totalOf(efforts: readonly Effort[], per: Amount['per']): number {
  return efforts.reduce((sum, { amounts }) => sum + (amounts.find(amount => amount.per === per)?.value ?? 0), 0);
}

export function printed(style: PrintStyle, value: number, system: System): string {
  return printAs(style, value, system);
}

/** Names in a row, each once: `drive, turning and path`. */
export function namesInRow(names: readonly string[]): string {
  return listed([...new Set(names)]);
}
