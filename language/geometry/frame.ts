import type { Loop, Point, Side } from './shapes.ts';

/** A right-handed frame on the plan: where its nought lies, and the direction of its x axis, radians anticlockwise. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly direction: number;
}

/** An outline of the plan as seen in a frame. */
export function seenFrom(frame: Frame, loop: Loop): Loop {
  const cosine = Math.cos(frame.direction);
  const sine = Math.sin(frame.direction);
  const place = (point: Point): Point => {
    const x = point.x - frame.x;
    const y = point.y - frame.y;
    return { x: x * cosine + y * sine, y: y * cosine - x * sine };
  };
  return loop.map(({ from, to, arc }): Side => {
    const ends = { from: place(from), to: place(to) };
    return arc ? { ...ends, arc: { centre: place(arc.centre), turn: arc.turn } } : ends;
  });
}

/** A frame given within another, as it lies on the plan. */
export function onPlan(frame: Frame, within: Frame): Frame {
  const cosine = Math.cos(frame.direction);
  const sine = Math.sin(frame.direction);
  return {
    x: frame.x + within.x * cosine - within.y * sine,
    y: frame.y + within.x * sine + within.y * cosine,
    direction: frame.direction + within.direction
  };
}
