import type { Loop, Point } from '../geometry/index.ts';
import { pointAlong } from '../geometry/outline.ts';

/** Radians of an arc for one chord: fine enough for where text finds room, and nothing else. */
const TURN_PER_CHORD = 0.15;

/** The corners of an outline, arcs as a few chords each. */
export function chordCorners(loop: Loop): Point[] {
  return loop.flatMap(side => {
    const chords = side.arc ? Math.max(2, Math.ceil(Math.abs(side.arc.turn) / TURN_PER_CHORD)) : 1;
    return Array.from({ length: chords }, (_, index) => pointAlong(side, index / chords));
  });
}

/** Whether a point lies inside an odd number of outlines given by their corners; on the edge it may be either. */
export function insideCorners(outlines: readonly (readonly Point[])[], { x, y }: Point): boolean {
  let odd = false;
  for (const corners of outlines) {
    let before = corners[corners.length - 1];
    for (const corner of corners) {
      if (before && before.y > y !== corner.y > y) {
        const reach = before.x + ((y - before.y) / (corner.y - before.y)) * (corner.x - before.x);
        if (reach > x) odd = !odd;
      }
      before = corner;
    }
  }
  return odd;
}
