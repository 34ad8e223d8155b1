import { type Point } from '../geometry/index.ts';
import { SAME_SPOT } from './spots.ts';

/** A line along which the ground folds: the numbers of the spots that it runs through, in order. */
export type BreakLine = readonly number[];

/** A stretch of a break line from one spot to another, by their numbers. */
export interface Stretch {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** Two stretches of break lines that cross where there is no spot. */
export interface BreakLinesCross {
  readonly kind: 'break-lines-cross';
  readonly first: Stretch;
  readonly second: Stretch;
}

/** A break line that names a spot there is not; both by their numbers. */
export interface NoSuchSpot {
  readonly kind: 'no-such-spot';
  readonly line: number;
  readonly spot: number;
}

/** The stretches of break lines between spots, each once, parted at every spot that they run through. */
export function stretchesOf(
  lines: readonly BreakLine[],
  points: readonly Point[],
  firstAt: readonly number[]
): Stretch[] | BreakLinesCross | NoSuchSpot {
  for (const [line, members] of lines.entries()) {
    const spot = members.find(member => points[member] === undefined);
    if (spot !== undefined) return { kind: 'no-such-spot', line, spot };
  }
  const places = [...new Set(firstAt)];
  const seen = new Set<string>();
  const parts = lines
    .flatMap((members, line) =>
      members.slice(1).flatMap((member, index) => {
        const whole = { line, from: firstAt[members[index]!]!, to: firstAt[member]! };
        return partedAtSpots(whole, points, places);
      })
    )
    .filter(({ from, to }) => {
      const key = `${Math.min(from, to)} ${Math.max(from, to)}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  return crossingOf(parts, points) ?? parts;
}

function partedAtSpots({ line, from, to }: Stretch, points: readonly Point[], places: readonly number[]): Stretch[] {
  if (from === to) return [];
  const [start, end] = [points[from]!, points[to]!];
  const length = Math.hypot(end.x - start.x, end.y - start.y);
  const way = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  const stops = places
    .filter(place => place !== from && place !== to)
    .map(place => {
      const { x, y } = points[place]!;
      const along = (x - start.x) * way.x + (y - start.y) * way.y;
      return { place, along, off: (y - start.y) * way.x - (x - start.x) * way.y };
    })
    .filter(({ along, off }) => Math.abs(off) <= SAME_SPOT && along > 0 && along < length)
    .sort((a, b) => a.along - b.along)
    .map(({ place }) => place);
  return [...stops, to].map((place, index) => ({ line, from: index === 0 ? from : stops[index - 1]!, to: place }));
}

function crossingOf(parts: readonly Stretch[], points: readonly Point[]): BreakLinesCross | undefined {
  for (const [index, second] of parts.entries()) {
    for (const first of parts.slice(0, index)) {
      const [a, b, c, d] = [points[first.from]!, points[first.to]!, points[second.from]!, points[second.to]!];
      const shared = [second.from, second.to].some(end => end === first.from || end === first.to);
      if (shared || !boxesMeet(a, b, c, d)) continue;
      if (turning(a, b, c) > 0 === turning(a, b, d) > 0 || turning(c, d, a) > 0 === turning(c, d, b) > 0) continue;
      return { kind: 'break-lines-cross', first, second };
    }
  }
  return undefined;
}

function boxesMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  return (
    Math.max(a.x, b.x) >= Math.min(c.x, d.x) &&
    Math.max(c.x, d.x) >= Math.min(a.x, b.x) &&
    Math.max(a.y, b.y) >= Math.min(c.y, d.y) &&
    Math.max(c.y, d.y) >= Math.min(a.y, b.y)
  );
}

/** Twice the area of a triangle: positive when it runs anticlockwise. */
function turning(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
