import type { AreaToLay } from '../area-to-lay.ts';
import { fitBetween } from '../fitted-joints.ts';
import { setOutArea } from '../lay-area.ts';
import { type EndLine, endLines, type Way } from './unit-lines.ts';

/** Widths of joint looked at; each is a search of its own. */
const MOST_JOINTS = 3;

/** The long sides that face each other: widths between more of them would seldom be the same. */
const MOST_LINES = 3;

/**
 * Widths within the limits with which whole units lie between two sides that face each other, in whole steps of a rule:
 * never wider, so that the last unit is not pushed over the edge. Metres.
 */
export function* startJoints(area: AreaToLay, step: number): Generator<void, number[]> {
  const { bond, joint, units } = area.field;
  const [unit] = units;
  if (bond.way !== 'courses' || unit === undefined || joint.most - joint.least < step) return [];
  const set = yield* setOutArea(area);
  if ('part' in set || set.setOut.pattern === undefined) return [];
  const { pattern } = set.setOut;
  const widths = (['along', 'across'] as const).flatMap((way: Way) => {
    const size = way === 'along' ? unit.length : unit.width;
    return distances(endLines(set.ground.regions, pattern, way)).flatMap(distance => {
      const fit = fitBetween(distance, size, joint);
      const width = Math.floor(fit.joint / step + ON_STEP) * step;
      const isOther = Math.abs(width - joint.width) >= step / 2;
      return fit.fits && fit.units > 1 && isOther && width >= joint.least - ROUNDING ? [width] : [];
    });
  });
  return [...new Set(widths)].slice(0, MOST_JOINTS);
}

/** In steps, and in metres. */
const ON_STEP = 1e-4;
const ROUNDING = 1e-9;

/** From where units begin to where they end. */
function distances(lines: readonly EndLine[]): number[] {
  const longest = (units: EndLine['units']): EndLine[] =>
    lines.filter(line => line.units === units).slice(0, MOST_LINES);
  const ends = longest('end');
  return longest('begin').flatMap(begin => ends.map(end => end.at - begin.at).filter(distance => distance > 0));
}
