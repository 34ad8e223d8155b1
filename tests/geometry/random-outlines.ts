import {
  arcByBow,
  circleLoop,
  cornerLoop,
  loopWithin,
  rectangleLoop,
  selfCrossing,
  type Loop,
  type Point
} from '../../language/geometry/index.ts';
import { pointAlong, turnedAbout } from '../../language/geometry/outline.ts';
import type { Region, Side } from '../../language/geometry/index.ts';

/** Numbers from 0 up to 1 that are the same in every run with the same seed. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** An outline whose corners lie round a centre in order, 2 to 6 m away, some sides bowed either way. */
export function randomOutline(next: () => number, bowed: boolean): Loop {
  const count = 5 + Math.floor(next() * 8);
  const corners = Array.from({ length: count }, (_, index) => {
    const angle = ((index + 0.8 * next()) / count) * 2 * Math.PI;
    const reach = 2 + 4 * next();
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  });
  return cornerLoop(corners).map(side => {
    const rise = 0.02 + 0.2 * next();
    const bulge = next() < 0.5 ? 'left' : 'right';
    return bowed && next() < 0.4 ? (arcByBow(side.from, side.to, rise, bulge) ?? side) : side;
  });
}

/** A comb: teeth and notches 0.1 to 1.3 m wide, of all depths, turned anyhow. */
export function randomComb(next: () => number): Loop {
  const corners: Point[] = [{ x: 0, y: 0 }];
  const steps = Array.from({ length: 6 }, () => ({ width: 0.1 + 1.2 * next(), height: 1 + 3 * next() }));
  let x = steps.reduce((sum, { width }) => sum + width, 0);
  corners.push({ x, y: 0 });
  for (const { width, height } of steps) {
    corners.push({ x, y: height });
    x -= width;
    corners.push({ x, y: height });
  }
  return movedLoop(cornerLoop(corners), { mirrored: false, turn: 6 * next(), move: { x: 0, y: 0 } });
}

/** Up to three keep-outs near the centre, apart from each other. */
export function randomHoles(next: () => number, round: boolean): Loop[] {
  return Array.from({ length: Math.floor(next() * 4) }, (_, index) => {
    const angle = (index / 3) * 2 * Math.PI;
    const size = 0.05 + 0.3 * next();
    const middle = { x: 0.5 * Math.cos(angle), y: 0.5 * Math.sin(angle) };
    const corner = { x: middle.x - size / 2, y: middle.y - size / 2 };
    return round ? circleLoop(middle, size) : rectangleLoop(size, size, corner, next());
  });
}

/** Random outlines with bowed sides and keep-outs, and the numbers that they were made from. */
export function curvedRegions(count: number, seed: number): { region: Region; next: () => number }[] {
  const next = seededNumbers(seed);
  const found: { region: Region; next: () => number }[] = [];
  while (found.length < count) {
    const outer = randomOutline(next, true);
    const holes = randomHoles(next, next() < 0.5);
    if (!selfCrossing(outer) && holes.every(hole => loopWithin(hole, outer)))
      found.push({ region: { outer, holes }, next });
  }
  return found;
}

/** Each arc as so many chords. */
export function chorded(loop: Loop, chords: number): Loop {
  const points = loop.flatMap(side =>
    side.arc ? Array.from({ length: chords }, (_, part) => pointAlong(side, part / chords)) : [side.from]
  );
  return cornerLoop(points);
}

/** A change of place that keeps shapes: mirrored in the x axis or not, then turned about the origin, then moved. */
export interface Motion {
  readonly mirrored: boolean;
  readonly turn: number;
  readonly move: Point;
}

export function moved(point: Point, { mirrored, turn, move }: Motion): Point {
  const turned = turnedAbout({ x: point.x, y: mirrored ? -point.y : point.y }, { x: 0, y: 0 }, turn);
  return { x: turned.x + move.x, y: turned.y + move.y };
}

export function movedLoop(loop: Loop, motion: Motion): Loop {
  return loop.map((side): Side => {
    const ends = { from: moved(side.from, motion), to: moved(side.to, motion) };
    if (!side.arc) return ends;
    const turn = motion.mirrored ? -side.arc.turn : side.arc.turn;
    return { ...ends, arc: { centre: moved(side.arc.centre, motion), turn } };
  });
}

export function movedRegion(region: Region, motion: Motion): Region {
  return { outer: movedLoop(region.outer, motion), holes: region.holes.map(hole => movedLoop(hole, motion)) };
}
