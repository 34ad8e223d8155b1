import { distanceToSide } from '../geometry/contacts.ts';
import { crossedOddly, runsOf } from '../geometry/level-line.ts';
import { EDGE_TOLERANCE, type Loop, type Point } from '../geometry/index.ts';

/** How deep the underside lies below the ground at a place, in metres; negative where it lies above. */
export interface Depth {
  readonly depth: number;
  readonly at: Point;
}

/** What parts of a dig come to. Depths are over the least dig: depth below ground less the topsoil stripped anyway. */
export interface Sums {
  /** Square metres. */
  readonly area: number;
  /** Depth times area over all of it, cubic metres: what lies above the least dig counts negative. */
  readonly net: number;
  /** The same, where it is deeper than the least dig only. */
  readonly deeper: number;
  /** Square metres where it is not as deep as the least dig. */
  readonly shallowArea: number;
}

export const NOTHING: Sums = { area: 0, net: 0, deeper: 0, shallowArea: 0 };

export function added(a: Sums, b: Sums): Sums {
  return {
    area: a.area + b.area,
    net: a.net + b.net,
    deeper: a.deeper + b.deeper,
    shallowArea: a.shallowArea + b.shallowArea
  };
}

/** Keeps the deepest and the shallowest of the places shown to it that lie in an area, its edge included. */
export class Extremes {
  deepest: Depth | undefined;
  shallowest: Depth | undefined;
  readonly #sides;
  readonly #runs;

  constructor(area: readonly Loop[]) {
    this.#sides = area.flat();
    this.#runs = runsOf(area);
  }

  consider(depth: number, at: Point): void {
    const isDeepest = !(depth <= (this.deepest?.depth ?? -Infinity));
    const isShallowest = !(depth >= (this.shallowest?.depth ?? Infinity));
    if ((!isDeepest && !isShallowest) || !this.#includes(at)) return;
    if (isDeepest) this.deepest = { depth, at };
    if (isShallowest) this.shallowest = { depth, at };
  }

  #includes(at: Point): boolean {
    return crossedOddly(this.#runs, at) || this.#sides.some(side => distanceToSide(side, at) <= EDGE_TOLERANCE);
  }
}
