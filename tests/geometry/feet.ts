import { cornerLoop, type Loop } from '../../language/geometry/index.ts';

export const FOOT = 0.3048;
export const INCH = 0.0254;
export const SQUARE_FOOT = FOOT * FOOT;

/** Straight sides through corners given as pairs. */
export function loopOf(...corners: readonly (readonly [number, number])[]): Loop {
  return cornerLoop(corners.map(([x, y]) => ({ x, y })));
}
