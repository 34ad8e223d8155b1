import type { Arc, Loop, Point, Region, Side } from './shapes.ts';

/** Radius of a side's arc, in metres. */
export function radiusOf(side: Side, arc: Arc): number {
  return Math.hypot(side.from.x - arc.centre.x, side.from.y - arc.centre.y);
}

/** Length along a side, straight or arc, in metres. */
export function sideLength(side: Side): number {
  if (side.arc) return radiusOf(side, side.arc) * Math.abs(side.arc.turn);
  return Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y);
}

/** Length round an outline, in metres. */
export function perimeterOf(loop: Loop): number {
  return loop.reduce((sum, side) => sum + sideLength(side), 0);
}

/** Area within an outline in square metres, exact with arcs: positive when it runs anticlockwise, else negative. */
export function signedAreaOf(loop: Loop): number {
  const first = loop[0];
  if (!first) return 0;
  // Measured from the outline's own first corner, so that plans far from the origin lose no digits.
  const { x, y } = first.from;
  let twice = 0;
  for (const side of loop) {
    twice += (side.from.x - x) * (side.to.y - y) - (side.to.x - x) * (side.from.y - y);
    if (side.arc) {
      const radius = radiusOf(side, side.arc);
      twice += radius * radius * turnLessSine(side.arc.turn);
    }
  }
  return twice / 2;
}

/** Area within an outline in square metres, whichever way round it runs. */
export function areaOf(loop: Loop): number {
  return Math.abs(signedAreaOf(loop));
}

/** Area of the outer outline less its holes, in square metres. The holes are taken to lie inside, apart from each other. */
export function regionArea(region: Region): number {
  return region.holes.reduce((sum, hole) => sum - areaOf(hole), areaOf(region.outer));
}

/** Below this turn (radians) the difference `turn - sin turn` is summed as a series: subtracting would lose digits. */
const SMALL_TURN = 0.5;

/** Twice the area between chord and arc of radius one: `turn - sin turn`, without cancellation for flat arcs. */
export function turnLessSine(turn: number): number {
  if (Math.abs(turn) > SMALL_TURN) return turn - Math.sin(turn);
  const square = turn * turn;
  let term = (turn * square) / 6;
  let sum = term;
  // Five more terms leave less than 1e-17 of the sum at the largest small turn.
  for (let n = 4; n <= 12; n += 2) {
    term *= -square / (n * (n + 1));
    sum += term;
  }
  return sum;
}

/** The same outline run the other way round. */
export function reversedLoop(loop: Loop): Loop {
  return loop.map(reversedSide).reverse();
}

function reversedSide(side: Side): Side {
  if (!side.arc) return { from: side.to, to: side.from };
  return { from: side.to, to: side.from, arc: { centre: side.arc.centre, turn: -side.arc.turn } };
}

/** The point a share (0 to 1) of the way along a side. */
export function pointAlong(side: Side, share: number): Point {
  const { from, to, arc } = side;
  if (share === 0) return from;
  if (share === 1) return to;
  if (!arc) return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
  return turnedAbout(from, arc.centre, share * arc.turn);
}

/** A point turned about a centre, by radians anticlockwise. */
export function turnedAbout(point: Point, centre: Point, turn: number): Point {
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  const x = point.x - centre.x;
  const y = point.y - centre.y;
  return { x: centre.x + x * cosine - y * sine, y: centre.y + x * sine + y * cosine };
}

/** Distance between two points, in metres. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
