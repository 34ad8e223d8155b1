// Lines and outlines of a plan: as paths on the screen, as chords for what has to be measured.
import type { LiveCorners } from '../../../server/plan-protocol.ts';
import { around, type Bounds, type OnScreen, type Place, type Size } from './view.ts';

/** Tangent of a quarter of the turn: below it a side is straight on every screen. */
const STRAIGHT = 1e-7;

/** Radians of an arc for one chord. */
const TURN_PER_CHORD = 0.12;

/** A tenth of a pixel. */
export function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

/** Words of a path of SVG, in pixels. */
export function pathOf(corners: LiveCorners, closed: boolean, at: OnScreen): string {
  const count = corners.length / 3;
  if (count === 0) return '';
  const x = (index: number): number => at.a * corners[3 * index]! + at.c * corners[3 * index + 1]! + at.e;
  const y = (index: number): number => at.b * corners[3 * index]! + at.d * corners[3 * index + 1]! + at.f;
  let path = `M${tenth(x(0))} ${tenth(y(0))}`;
  const sides = closed ? count : count - 1;
  for (let side = 0; side < sides; side++) {
    const to = (side + 1) % count;
    const bend = corners[3 * side + 2]!;
    if (Math.abs(bend) < STRAIGHT) {
      // The last straight side of an outline is drawn by closing it.
      if (to !== 0) path += `L${tenth(x(to))} ${tenth(y(to))}`;
      continue;
    }
    const chord = Math.hypot(x(to) - x(side), y(to) - y(side));
    const radius = tenth((chord * (1 + bend * bend)) / (4 * Math.abs(bend)));
    // y runs down on the screen: what turns anticlockwise on the ground sweeps the other way in SVG.
    path += `A${radius} ${radius} 0 0 ${bend > 0 ? 0 : 1} ${tenth(x(to))} ${tenth(y(to))}`;
  }
  return closed ? `${path}z` : path;
}

/** The same as chords: x and y by turns. */
export function chordsOf(corners: LiveCorners, closed: boolean): number[] {
  const count = corners.length / 3;
  const chords: number[] = [];
  for (let side = 0; side < count; side++) {
    const [fromX, fromY, bend] = [corners[3 * side]!, corners[3 * side + 1]!, corners[3 * side + 2]!];
    chords.push(fromX, fromY);
    if (Math.abs(bend) < STRAIGHT || (!closed && side === count - 1)) continue;
    const next = (side + 1) % count;
    const [toX, toY] = [corners[3 * next]!, corners[3 * next + 1]!];
    // The middle of the circle lies to the left of a side that turns anticlockwise by less than half.
    const aside = (1 / bend - bend) / 4;
    const middleX = (fromX + toX) / 2 - aside * (toY - fromY);
    const middleY = (fromY + toY) / 2 + aside * (toX - fromX);
    const turn = 4 * Math.atan(bend);
    const parts = Math.max(2, Math.ceil(Math.abs(turn) / TURN_PER_CHORD));
    for (let part = 1; part < parts; part++) {
      const [cosine, sine] = [Math.cos((turn * part) / parts), Math.sin((turn * part) / parts)];
      const [x, y] = [fromX - middleX, fromY - middleY];
      chords.push(middleX + x * cosine - y * sine, middleY + x * sine + y * cosine);
    }
  }
  return chords;
}

export function boundsOf(chords: readonly number[]): Bounds | undefined {
  const points: Bounds[] = [];
  for (let at = 0; at < chords.length; at += 2) {
    points.push([chords[at]!, chords[at + 1]!, chords[at]!, chords[at + 1]!]);
  }
  return around(points);
}

/** Whether a place lies inside an odd number of outlines. */
export function isInside(outlines: readonly (readonly number[])[], { x, y }: Place): boolean {
  let odd = false;
  for (const chords of outlines) {
    const { length } = chords;
    let [beforeX, beforeY] = [chords[length - 2] ?? 0, chords[length - 1] ?? 0];
    for (let at = 0; at < length; at += 2) {
      const [cornerX, cornerY] = [chords[at]!, chords[at + 1]!];
      if (beforeY > y !== cornerY > y && beforeX + ((y - beforeY) / (cornerY - beforeY)) * (cornerX - beforeX) > x)
        odd = !odd;
      [beforeX, beforeY] = [cornerX, cornerY];
    }
  }
  return odd;
}

/** How far a place lies from a line of chords. */
export function distanceTo(chords: readonly number[], closed: boolean, { x, y }: Place): number {
  let nearest = Infinity;
  const count = chords.length / 2;
  if (count === 1) return Math.hypot(x - chords[0]!, y - chords[1]!);
  for (let side = 0; side < (closed ? count : count - 1); side++) {
    const next = (side + 1) % count;
    const [fromX, fromY] = [chords[2 * side]!, chords[2 * side + 1]!];
    const [alongX, alongY] = [chords[2 * next]! - fromX, chords[2 * next + 1]! - fromY];
    const square = alongX * alongX + alongY * alongY;
    const share = square === 0 ? 0 : ((x - fromX) * alongX + (y - fromY) * alongY) / square;
    const foot = Math.min(1, Math.max(0, share));
    nearest = Math.min(nearest, Math.hypot(x - fromX - foot * alongX, y - fromY - foot * alongY));
  }
  return nearest;
}

/** From a place inside outlines to the nearer of them, ahead or behind; `turn` is anticlockwise. */
export function roomAlong(outlines: readonly (readonly number[])[], { x, y }: Place, turn: number): number {
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  let nearest = Infinity;
  for (const chords of outlines) {
    for (let at = 0; at < chords.length; at += 2) {
      const next = (at + 2) % chords.length;
      const across = (index: number): number => (chords[index + 1]! - y) * cosine - (chords[index]! - x) * sine;
      const along = (index: number): number => (chords[index]! - x) * cosine + (chords[index + 1]! - y) * sine;
      const [from, to] = [across(at), across(next)];
      if (from > 0 === to > 0) continue;
      nearest = Math.min(nearest, Math.abs(along(at) + (from / (from - to)) * (along(next) - along(at))));
    }
  }
  return nearest;
}

/** Places on a straight line, so far from each other at most, of what is seen of it. */
export function placesAlong(from: Place, to: Place, step: number, { width, height }: Size): Place[] {
  let [begins, ends] = [0, 1];
  for (const [first, way, most] of [
    [from.x, to.x - from.x, width],
    [from.y, to.y - from.y, height]
  ] as const) {
    if (way === 0) {
      if (first < 0 || first > most) return [];
      continue;
    }
    const [one, other] = [-first / way, (most - first) / way];
    begins = Math.max(begins, Math.min(one, other));
    ends = Math.min(ends, Math.max(one, other));
  }
  if (begins > ends) return [];
  const length = Math.hypot(to.x - from.x, to.y - from.y) * (ends - begins);
  const parts = Math.max(1, Math.ceil(length / step));
  return Array.from({ length: parts + 1 }, (_, part) => {
    const share = begins + ((ends - begins) * part) / parts;
    return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
  });
}
