import type { Point } from '../geometry/index.ts';
import { footOn } from '../setting-out/stationed-line.ts';
import type { Across, Surface } from './surface.ts';

type Along = Surface & { kind: 'along' };

/** In metres: of stations no further apart the first counts. */
const SAME_STATION = 1e-6;

/** Height of a surface that follows a line, in metres. */
export function heightOfAlong({ line, stations, across }: Along, point: Point): number {
  const { at, off } = footOn(line, point);
  const { height, grade, from } = gradeAt(stations, at);
  return height + grade * (at - from) - fallTo(across, off) * off;
}

/** Its slope, pointing uphill. */
export function gradientOfAlong({ line, stations, across }: Along, point: Point): Point {
  const { at, off, along, gain } = footOn(line, point);
  const rise = gradeAt(stations, at).grade * gain;
  const fall = fallTo(across, off);
  return { x: rise * along.x + fall * along.y, y: rise * along.y - fall * along.x };
}

/** How much the surface falls per metre further to the left. */
function fallTo(across: Across, off: number): number {
  return across.kind === 'fall' ? across.toLeft : across.fall * Math.sign(off);
}

/**
 * The stretch between stations that a station lies on, or the last one before it prolonged: height where the stretch
 * begins and rise per metre of station.
 */
function gradeAt(stations: Along['stations'], at: number): { height: number; grade: number; from: number } {
  const places: Along['stations'][number][] = [];
  for (const station of stations) {
    const before = places[places.length - 1];
    if (!before || station.at - before.at > SAME_STATION) places.push(station);
  }
  const next = places.findIndex((station, index) => index > 0 && at < station.at);
  const end = next > 0 ? next : places.length - 1;
  const from = places[end - 1] ?? places[0];
  const to = places[end];
  if (!from || !to) return { height: 0, grade: 0, from: 0 };
  const length = to.at - from.at;
  return { height: from.height, grade: length > 0 ? (to.height - from.height) / length : 0, from: from.at };
}
