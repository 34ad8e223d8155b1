// Numbers by the arithmetic that a job was told with, beside ours.
import { expect } from 'vitest';
import type { Entered } from './read.ts';

/** A number by the item's own arithmetic, beside ours. */
export interface Compared {
  readonly what: string;
  readonly told: number;
  readonly ours: (job: Entered) => number;
  /** The most by which the two may differ, and why. */
  readonly apart: number;
  readonly because: string;
  readonly spec?: string;
}

export const EXACT = 1e-6;
export const LAST_DIGIT = 'the last digit told';
export const NEAR_BY_AREA = 'half of one in a hundred: the field begins with a unit, not with half a joint';
export const CONSISTENT = 'a tenth: loads, and densities that were not told';

/** Expects that the two are near enough; the cells of its line in the table. */
export function expectCompared(job: Entered, { what, told, ours, apart, because }: Compared): string[] {
  const value = ours(job);
  expect(Math.abs(value - told), `${what}: ${value}`).toBeLessThanOrEqual(apart);
  const allowed = apart === 0 ? 'none' : Number(apart.toPrecision(2)).toString();
  return [what, String(told), shortly(value), `${allowed}: ${because}`];
}

/** Without digits that tell nothing. */
export function shortly(value: number): string {
  return Number(value.toFixed(3)).toString();
}
