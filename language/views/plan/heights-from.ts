import type { Datum } from '../../job/heights.ts';
import type { System } from '../../job/job.ts';
import { levelStyleOf, printLevel } from '../../measures/print-level.ts';

/** Which heights a plan shows, and what they count from. */
export function ofTheFinish(countedFrom: string): string {
  return `Heights at points and corners are of the finish. ${countedFrom}`;
}

/** What the heights of a drawing count from. */
export function heightsFrom(datum: Datum, system: System): string {
  const { benchmark, fromNought, z } = datum;
  if (!fromNought) return `Heights are below or above ${benchmark}.`;
  return `Heights count from nought; ${benchmark} lies at ${printLevel(z, datum, levelStyleOf(system))}.`;
}
