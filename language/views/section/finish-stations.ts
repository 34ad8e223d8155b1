import { stationOf } from '../../setting-out/stationed-line.ts';
import { type CutLine, placeAt } from './section-line.ts';
import type { Stretch } from './stretches.ts';

/** Halvings until a place is found to a hair: a stretch is short. */
const HALVINGS = 30;

/** m: along a line that a finish follows the cut gains at least so much in a stretch, else it runs across. */
const GAIN = 1e-6;

/** Where the cut passes the stations at which a finish along a line has its heights. */
export function finishStations(line: CutLine, stretches: readonly Stretch[]): number[] {
  return stretches.flatMap(({ from, to, paved }) => {
    const surface = paved?.heights.surface;
    if (surface?.kind !== 'along') return [];
    const passed = (at: number): number => stationOf(surface.line, placeAt(line, at)).at;
    const [start, end] = [passed(from), passed(to)];
    if (Math.abs(end - start) < GAIN) return [];
    const [low, high] = [Math.min(start, end), Math.max(start, end)];
    return surface.stations
      .filter(({ at }) => at >= low && at <= high)
      .map(({ at }) => whereReached(passed, from, to, at, end > start));
  });
}

function whereReached(passed: (at: number) => number, from: number, to: number, wanted: number, up: boolean): number {
  let [low, high] = [from, to];
  for (let count = 0; count < HALVINGS; count++) {
    const middle = (low + high) / 2;
    if (passed(middle) < wanted === up) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
