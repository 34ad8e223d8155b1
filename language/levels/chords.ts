import type { Path, Point } from '../geometry/index.ts';
import { turnLessSine } from '../geometry/outline.ts';

/** A stretch of a path laid straight, with what lies between it and its arc: square metres, negative when it bows in. */
export interface Chord {
  readonly from: Point;
  readonly to: Point;
  readonly bow?: { readonly area: number; readonly middle: Point };
}

/**
 * The most an arc turns per chord, in radians. What lies between chord and arc is reckoned by its middle, which misses a
 * share of about 1e-9 of a volume.
 */
const TURN_PER_CHORD = 0.02;

/** The stretches of a path, its arcs in chords. */
export function chordsOf(path: Path): Chord[] {
  return path.flatMap(({ x0, y0, x1, y1, centreX, centreY, radius, start, turn }): Chord[] => {
    if (radius === 0) return [{ from: { x: x0, y: y0 }, to: { x: x1, y: y1 } }];
    const count = Math.max(1, Math.ceil(Math.abs(turn) / TURN_PER_CHORD));
    const part = turn / count;
    const at = (angle: number, reach: number): Point => ({
      x: centreX + reach * Math.cos(angle),
      y: centreY + reach * Math.sin(angle)
    });
    const half = Math.cos(part / 2);
    return Array.from({ length: count }, (_, index) => ({
      from: index === 0 ? { x: x0, y: y0 } : at(start + index * part, radius),
      to: index === count - 1 ? { x: x1, y: y1 } : at(start + (index + 1) * part, radius),
      bow: {
        area: (radius * radius * turnLessSine(part)) / 2,
        // The middle of a flat bow lies two fifths of its rise off the chord.
        middle: at(start + (index + 0.5) * part, radius * (half + 0.4 * (1 - half)))
      }
    }));
  });
}
