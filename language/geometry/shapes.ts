/** A place on the plan, in metres: x to the right, y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** One side of a closed outline, straight unless it carries an arc. Lengths in metres. */
export interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly arc?: Arc;
}

/** The arc of a side about its centre; `turn` in radians, anticlockwise positive, never nought, at most a full turn. */
export interface Arc {
  readonly centre: Point;
  readonly turn: number;
}

/** Sides that follow each other and close: the last ends where the first begins. */
export type Loop = readonly Side[];

/** What lies inside `outer` and outside every hole. Outer and holes may run either way round. */
export interface Region {
  readonly outer: Loop;
  readonly holes: readonly Loop[];
}
