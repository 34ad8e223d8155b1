import {
  distance,
  EDGE_TOLERANCE,
  type Loop,
  type Point,
  pointAlong,
  type Side,
  turnedAbout
} from '../geometry/index.ts';
import { extremesBetween, whereItBegins } from './extremes.ts';
import { heightAt, type Surface } from './surface.ts';
import { lookUpWithin, stretchesWithin } from './within.ts';

/** A gate or door leaf: a level line of no thickness from its hinge. */
export interface Leaf {
  readonly hinge: Point;
  /** The way the leaf points when it is shut, of any length. */
  readonly shut: Point;
  /** Metres from hinge to end. */
  readonly length: number;
  /** How far it opens, radians, anticlockwise positive; at most a full turn counts. */
  readonly opens: number;
  /** Height of its underside, in metres. */
  readonly underside: number;
}

/** Where a leaf clears the finish least. */
export interface Clearance {
  /** From the finish up to the underside, in metres; negative where the leaf stands too low. */
  readonly clearance: number;
  /** The highest finish under the leaf. */
  readonly finish: number;
  readonly at: Point;
  /** Radians from shut, the way the leaf opens. */
  readonly opening: number;
}

/** Clearances over a finish; absent where no part of the leaf is over it. */
export interface Swing {
  readonly shut?: Clearance;
  /** Least over the whole swing, both ends included. */
  readonly whole?: Clearance;
  /** The least opening, radians, at which the leaf strikes the finish; absent when it never does. */
  readonly strikesAt?: number;
}

/** The leaf has no length, or points nowhere. */
export interface NoLeaf {
  readonly fault: 'no-leaf';
}

/** In metres: a leaf no lower than this below the finish does not strike it. */
const STRIKES = 1e-6;

/** Openings looked up for the first at which the leaf strikes: every third of a degree of a swing of 120. */
const OPENINGS = 360;

/** How a leaf clears a finish, of which only what lies within the outlines, edges included, counts. */
export function swingOf(leaf: Leaf, finish: Surface, region: readonly Loop[]): Swing | NoLeaf {
  if (!isLeaf(leaf)) return { fault: 'no-leaf' };
  const under = new Underneath(leaf, finish, region);
  const shut = under.atOpening(0);
  const whole = under.wholeSwing();
  const strikesAt = whole && whole.clearance < -STRIKES ? under.firstStrike(whole.opening) : undefined;
  return {
    ...(shut ? { shut } : {}),
    ...(whole ? { whole } : {}),
    ...(strikesAt === undefined ? {} : { strikesAt })
  };
}

/** Least clearance of a leaf at one opening, radians from shut; undefined where no part of it is over the finish. */
export function clearanceAt(
  leaf: Leaf,
  finish: Surface,
  region: readonly Loop[],
  opening: number
): Clearance | NoLeaf | undefined {
  return isLeaf(leaf) ? new Underneath(leaf, finish, region).atOpening(opening) : { fault: 'no-leaf' };
}

function isLeaf({ length, shut }: Leaf): boolean {
  return length > EDGE_TOLERANCE && Math.hypot(shut.x, shut.y) > 0;
}

/** The finish under a leaf. */
class Underneath {
  readonly #edges: readonly Side[];
  readonly #isWithin: (point: Point) => boolean;
  readonly #end: Point;
  readonly #way: number;
  readonly #opens: number;

  constructor(
    readonly leaf: Leaf,
    readonly finish: Surface,
    region: readonly Loop[]
  ) {
    const { hinge, shut, length, opens } = leaf;
    const reach = length / Math.hypot(shut.x, shut.y);
    this.#edges = region.flat();
    this.#isWithin = lookUpWithin(region);
    this.#end = { x: hinge.x + reach * shut.x, y: hinge.y + reach * shut.y };
    this.#way = opens < 0 ? -1 : 1;
    this.#opens = Math.min(2 * Math.PI, Math.abs(opens));
  }

  /** Least clearance at one opening. */
  atOpening(opening: number): Clearance | undefined {
    const found = this.#highestOn(this.#leafAt(opening), this.#edges, this.#isWithin);
    return found && { ...found, opening };
  }

  /**
   * Least clearance over the swing. No finish is highest inside an area but on the line it follows, so that edges, leaf at
   * both ends of the swing, the path of the leaf's end and that line are enough.
   */
  wholeSwing(): Clearance | undefined {
    const shut = this.#leafAt(0);
    const open = this.#leafAt(this.#opens);
    const rim = this.#opens > 0 ? [this.#pathOfEnd()] : [];
    const swept = [shut, open, ...rim];
    const crests = this.finish.kind === 'along' ? this.finish.line.parts.map(({ side }) => side) : [];
    const inBoth = (point: Point): boolean => this.#isSwept(point) && this.#isWithin(point);
    const found = [
      ...swept.map(side => this.#highestOn(side, this.#edges, this.#isWithin)),
      ...this.#edges.map(side => this.#highestOn(side, swept, point => this.#isSwept(point))),
      ...crests.map(side => this.#highestOn(side, [...swept, ...this.#edges], inBoth))
    ].filter(clearance => clearance !== undefined);
    return found.reduce<Clearance | undefined>(
      (least, next) => (least && least.clearance <= next.clearance ? least : next),
      undefined
    );
  }

  /** The least opening at which the leaf strikes, given one at which it does. */
  firstStrike(known: number): number {
    const strikes = (opening: number): boolean => (this.atOpening(opening)?.clearance ?? 0) < -STRIKES;
    const openings = [known, ...this.#openingsOfCorners()];
    for (let step = 0; step <= OPENINGS; step++) openings.push((this.#opens * step) / OPENINGS);
    openings.sort((a, b) => a - b);
    const first = openings.findIndex(strikes);
    const before = openings[first - 1];
    const at = openings[first] ?? known;
    return before === undefined ? at : whereItBegins(strikes, before, at);
  }

  /** Openings at which the leaf comes to a corner of the finish: there it may begin to lie over it. */
  #openingsOfCorners(): number[] {
    return this.#edges
      .map(({ from }) => from)
      .filter(corner => this.#isSwept(corner))
      .map(corner => this.#openingAt(corner));
  }

  #leafAt(opening: number): Side {
    return { from: this.leaf.hinge, to: turnedAbout(this.#end, this.leaf.hinge, this.#way * opening) };
  }

  #pathOfEnd(): Side {
    const turn = this.#way * this.#opens;
    const to = turnedAbout(this.#end, this.leaf.hinge, turn);
    return { from: this.#end, to, arc: { centre: this.leaf.hinge, turn } };
  }

  #isSwept(point: Point): boolean {
    const reach = distance(point, this.leaf.hinge);
    if (reach > this.leaf.length + EDGE_TOLERANCE) return false;
    if (reach <= EDGE_TOLERANCE) return true;
    return this.#turnTo(point) * reach <= this.#opens * reach + EDGE_TOLERANCE;
  }

  /** Radians from shut to a point, the way the leaf opens; a hair before shut is shut. */
  #turnTo({ x, y }: Point): number {
    const { hinge } = this.leaf;
    const shut = { x: this.#end.x - hinge.x, y: this.#end.y - hinge.y };
    const [ahead, aside] = [x - hinge.x, y - hinge.y];
    const turn = this.#way * Math.atan2(shut.x * aside - shut.y * ahead, shut.x * ahead + shut.y * aside);
    const hair = EDGE_TOLERANCE / Math.max(EDGE_TOLERANCE, Math.hypot(ahead, aside));
    return turn < -hair ? turn + 2 * Math.PI : Math.max(0, turn);
  }

  #openingAt(point: Point): number {
    return distance(point, this.leaf.hinge) <= EDGE_TOLERANCE ? 0 : Math.min(this.#opens, this.#turnTo(point));
  }

  #highestOn(side: Side, bounds: readonly Side[], isWithin: (point: Point) => boolean): Clearance | undefined {
    const height = (share: number): number => heightAt(this.finish, pointAlong(side, share));
    let highest: { at: number; value: number } | undefined;
    for (const { from, to } of stretchesWithin(side, bounds, isWithin)) {
      const { most } =
        to > from ? extremesBetween(height, from, to, this.#bends(side)) : { most: { at: from, value: height(from) } };
      if (!highest || most.value > highest.value) highest = most;
    }
    if (!highest) return undefined;
    const at = pointAlong(side, highest.at);
    return {
      clearance: this.leaf.underside - highest.value,
      finish: highest.value,
      at,
      opening: this.#openingAt(at)
    };
  }

  /** Shares of a side at the stations of the finish. */
  #bends(side: Side): number[] {
    if (this.finish.kind !== 'along') return [];
    const part = this.finish.line.parts.find(one => one.side === side);
    return part ? this.finish.stations.map(({ at }) => (at - part.start) / part.length) : [];
  }
}
