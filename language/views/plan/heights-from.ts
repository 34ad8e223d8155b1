import type { Datum } from '../../job/heights.ts';
import type { System } from '../../job/job.ts';
import { levelStyleOf, printLevel } from '../../measures/print-level.ts';

/** What the heights of a drawing count from. */
export function heightsFrom(datum: Datum, system: System): string {
  const { benchmark, fromNought, z } = datum;
  if (!fromNought) return `Heights are below or above ${benchmark}.`;
  return `Heights count from nought; ${benchmark} lies at ${printLevel(z, datum, levelStyleOf(system))}.`;
}
