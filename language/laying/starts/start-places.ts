import type { Region } from '../../geometry/index.ts';
import type { BondPattern } from '../bonds/pattern.ts';
import { endLines, pitchOf, reachOf, sizeOf, unitEdges, type Way } from './unit-lines.ts';

/** Places looked at each way: the rest would lie on short sides. */
const MOST_PLACES = 12;

/** In steps of the tape: what is no further from one lies on it. */
const ON_STEP = 1e-4;

/**
 * How far the first unit's corner can be moved one way so that units begin or end at a line where the field ends, or the
 * cuts at both ends are alike: metres from where it lies in the pattern, less than a pitch, in whole steps of a tape. A
 * unit is never rounded over its line.
 */
export function startPlaces(regions: readonly Region[], pattern: BondPattern, way: Way, step: number): number[] {
  const pitch = pitchOf(pattern, way);
  if (!(pitch > step)) return [];
  const { begin, end } = unitEdges(pattern, way);
  const within = (place: number): number => {
    const rest = ((place % pitch) + pitch) % pitch;
    return pitch - rest <= ON_STEP * step ? 0 : rest;
  };
  const up = (place: number): number => Math.ceil(within(place) / step - ON_STEP) * step;
  const down = (place: number): number => Math.floor(within(place) / step + ON_STEP) * step;
  const places = endLines(regions, pattern, way).flatMap(({ at, units }) => [
    ...(units === 'end' ? [] : begin.map(edge => up(at - edge))),
    ...(units === 'begin' ? [] : end.map(edge => down(at - edge)))
  ]);
  const middles = evenPlaces(regions, pattern, way).map(place => down(place + step / 2));
  const firstOfEach = [...new Set([...middles, ...places].map(place => Math.round(place / step)))];
  return firstOfEach.slice(0, MOST_PLACES).map(steps => steps * step);
}

/** A joint in the middle of the field, and the middle of a unit. */
function evenPlaces(regions: readonly Region[], pattern: BondPattern, way: Way): number[] {
  const [unit] = pattern.units;
  if (unit === undefined) return [];
  const [low, high] = reachOf(regions, pattern, way);
  const middle = (low + high) / 2;
  const size = sizeOf(unit, way);
  return [middle + (pitchOf(pattern, way) - size) / 2, middle - size / 2];
}
