import type { Datum } from '../../job/heights.ts';
import type { System } from '../../job/job.ts';
import { printHeight, printLength, printSlope } from '../../measures/print.ts';

/** A height on a drawing: `2 1/2 in below`, `level` (with the benchmark), or `9.985 m` where heights count from nought. */
export function levelText(z: number, datum: Datum, system: System): string {
  if (datum.fromNought) return printLength(z, system);
  return printHeight(z - datum.z, '', system)
    .replace(/^level with $/, 'level')
    .trim();
}

/** What the heights of a drawing count from. */
export function heightsText(datum: Datum, system: System): string {
  if (!datum.fromNought) return `Heights are below or above ${datum.benchmark}.`;
  return `Heights count from nought; ${datum.benchmark} lies at ${printLength(datum.z, system)}.`;
}

/** `1:48`, or `1/4 in per ft`: short enough for an arrow; `level` where it falls by next to nothing. */
export function fallText(ratio: number, system: System): string {
  return printSlope(ratio, system).replace(/ \(.*\)$/, '');
}
