import { endsAround, type Network, type Places } from './tape-network.ts';

/** A point whose tapes run so nearly in one line that they tell little across it. */
export interface WeakPoint {
  readonly point: string;
  /** The widest angle at which two of its tapes cross, radians; nought where they lie in one line. */
  readonly angle: number;
}

/** Tapes that cross more narrowly than this, radians, hold a point loosely across them: common practice. */
export const WEAK_ANGLE = (15 * Math.PI) / 180;

export function weakPoints({ free, tapes }: Network, places: Places): WeakPoint[] {
  return free.flatMap(({ key }) => {
    const at = places.get(key)!;
    const lines = endsAround(tapes, key).map(end => {
      const { x, y } = places.get(end)!;
      return Math.atan2(y - at.y, x - at.x);
    });
    const angle = lines.reduce(
      (widest, one, index) =>
        lines.slice(index + 1).reduce((most, other) => Math.max(most, crossing(one, other)), widest),
      0
    );
    return angle < WEAK_ANGLE ? [{ point: key, angle }] : [];
  });
}

/** Angle between two lines by their directions, 0 to a right angle. */
function crossing(one: number, other: number): number {
  return Math.asin(Math.min(1, Math.abs(Math.sin(one - other))));
}
