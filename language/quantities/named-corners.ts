import { distance, type Loop, type Point } from '../geometry/index.ts';
import type { NamedPoint } from '../job/job.ts';

/** A point lies on a corner when it is nearer than this, m. */
export const AT_CORNER = 0.001;

/** A corner of an outline: called by the point that lies on it, else by its number. */
export interface NamedCorner {
  readonly name: string;
  readonly at: Point;
  readonly isPoint: boolean;
}

/** In their order; the first is `corner 1`. */
export function namedCorners(
  outline: Loop,
  points: readonly Pick<NamedPoint, 'name' | 'x' | 'y'>[]
): readonly NamedCorner[] {
  return outline.map(({ from: at }, index) => {
    const point = points.find(one => distance(one, at) <= AT_CORNER);
    return { name: point?.name ?? `corner ${index + 1}`, at, isPoint: point !== undefined };
  });
}
