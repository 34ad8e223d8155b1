import { circleLoop, type Loop, type Path, type Point, pointAlong, type Side } from '../geometry/index.ts';
import { cutToLeft } from '../geometry/line-clip.ts';
import { differenceOf, intersectionOf } from '../geometry/loop-clip.ts';
import { radiusOf } from '../geometry/outline.ts';
import type { Surface } from './surface.ts';

/**
 * Where a surface along a line may bend sharply: along its sides, prolonged, and square to it at stations and where sides
 * meet. Between seams it is smooth, and plane along straights.
 */
export interface Seams {
  /** Two points on each. */
  readonly lines: readonly (readonly [Point, Point])[];
  readonly circles: readonly Loop[];
}

export const NO_SEAMS: Seams = { lines: [], circles: [] };

/** The most seams of either kind that an area is parted by; what bends along others is left to sampling. */
const MOST_SEAMS = 60;

export function seamsOf({ line, stations }: Extract<Surface, { kind: 'along' }>): Seams {
  const lines: (readonly [Point, Point])[] = [];
  const circles: Loop[] = [];
  for (const { side, start, length } of line.parts) {
    const within = stations.map(({ at }) => at).filter(at => at > start && at < start + length);
    const shares = [0, ...within.map(at => (at - start) / length), 1];
    lines.push(...shares.map(share => squareTo(side, share)));
    if (side.arc) circles.push(circleLoop(side.arc.centre, radiusOf(side, side.arc)));
    else lines.push([side.from, side.to]);
  }
  return { lines: lines.slice(0, MOST_SEAMS), circles: circles.slice(0, MOST_SEAMS) };
}

function squareTo(side: Side, share: number): readonly [Point, Point] {
  const at = pointAlong(side, share);
  if (side.arc) return [side.arc.centre, at];
  return [at, { x: at.x - (side.to.y - side.from.y), y: at.y + (side.to.x - side.from.x) }];
}

/** An area parted by circles; outlines as `intersectionOf` takes and leaves them. */
export function partedByCircles(region: readonly Loop[], circles: readonly Loop[]): (readonly Loop[])[] {
  return circles.reduce<(readonly Loop[])[]>(
    (parts, circle) =>
      parts
        .flatMap(part => [intersectionOf(part, [circle]), differenceOf(part, [circle])])
        .filter(part => part.length > 0),
    [region]
  );
}

/** Paths parted by lines. */
export function partedByLines(paths: readonly Path[], lines: Seams['lines']): (readonly Path[])[] {
  return lines.reduce<(readonly Path[])[]>(
    (parts, [from, to]) =>
      parts.flatMap(part => [cutToLeft(part, from, to), cutToLeft(part, to, from)]).filter(part => part.length > 0),
    [paths]
  );
}
