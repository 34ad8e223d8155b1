import { type Loop, type Point, type Side, cornerLoop, rectangleLoop } from '../geometry/index.ts';
import type { Placement } from '../laying/laid.ts';

/** A point of a unit's own frame on the plan, m. */
export function pointOnPlan({ x, y }: Point, at: Placement): Point {
  const cosine = Math.cos(at.direction);
  const sine = Math.sin(at.direction);
  return { x: at.x + x * cosine - y * sine, y: at.y + x * sine + y * cosine };
}

/** An outline of a unit's own frame on the plan, m; arcs stay arcs. */
export function loopOnPlan(loop: Loop, at: Placement): Loop {
  return loop.map(({ from, to, arc }): Side => {
    const ends = { from: pointOnPlan(from, at), to: pointOnPlan(to, at) };
    return arc ? { ...ends, arc: { centre: pointOnPlan(arc.centre, at), turn: arc.turn } } : ends;
  });
}

export interface UnitSize {
  /** Hexagons: across corners, m. */
  readonly length: number;
  /** Hexagons: across flats, m. */
  readonly width: number;
  readonly shape: 'rectangle' | 'hexagon';
}

/** The outline of a whole unit in its own frame, m: its length along x, its lower left at nought. */
export function formOf({ length, width, shape }: UnitSize): Loop {
  if (shape === 'rectangle') return rectangleLoop(length, width, { x: 0, y: 0 }, 0);
  return cornerLoop([
    { x: length / 4, y: 0 },
    { x: (length * 3) / 4, y: 0 },
    { x: length, y: width / 2 },
    { x: (length * 3) / 4, y: width },
    { x: length / 4, y: width },
    { x: 0, y: width / 2 }
  ]);
}
