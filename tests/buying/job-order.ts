import type { Evaluation } from '../../language/paving.ts';
import type { NeedQuantities, OrderQuantities } from '../../language/buying/order-contract.ts';
import type { JobQuantities } from '../../language/quantities/contract.ts';
import { wrongWorkings } from '../quantities/workings.ts';
import { evaluated } from '../language/in-memory.ts';
import { expect } from 'vitest';

/** The quantities of a text without faults, whose workings all hold. */
export async function ordered(text: string): Promise<JobQuantities> {
  const evaluation: Evaluation = await evaluated(text);
  expect(evaluation.findings.filter(({ family, severity }) => family === 'fault' && severity === 'error')).toEqual([]);
  const { quantities, workings } = evaluation.numbers!;
  expect(wrongWorkings(quantities, workings)).toEqual([]);
  return quantities;
}

export function needOf({ needs }: JobQuantities, item: string): NeedQuantities {
  return needs!.find(need => need.item === item)!;
}

/** One measure of a need. */
export function needIn(job: JobQuantities, item: string, measure: string): NeedQuantities['in'][number] {
  return needOf(job, item).in.find(one => one.measure === measure)!;
}

/** What is bought of an item: `54 bag of 0.5 cu ft`. */
export function bought({ order }: JobQuantities, item: string): string[] {
  return order!.filter(line => line.item === item).map(({ count, pack }) => `${count} ${pack}`);
}

export function linesOf({ order }: JobQuantities, item: string): readonly OrderQuantities[] {
  return order!.filter(line => line.item === item);
}
