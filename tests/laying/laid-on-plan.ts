// What was laid, seen as polygons on the plan: checked with the general polygon library on fine chords.
import { Clipper, FillRule } from 'clipper2-ts';
import { loopWithin, type Loop, type Point, type Region, selfCrossing } from '../../language/geometry/index.ts';
import { pointAlong, reversedLoop, signedAreaOf } from '../../language/geometry/outline.ts';
import type { LaidUnits, Placement } from '../../language/laying/laid.ts';
import { randomHoles, randomOutline, seededNumbers } from '../geometry/random-outlines.ts';

/** Whole numbers per metre. */
const SCALE = 1e8;

/** What an arc turns per chord is so many times the root of its turn, in radians: flat arcs are long. */
const TURN_PER_CHORD = 0.003;

/** Steps a laying to its end. */
export function layToEnd<Result>(laying: Generator<void, Result>): Result {
  for (let step = laying.next(); ; step = laying.next()) if (step.done) return step.value;
}

/** The same, and it has to be laid. */
export function laidBy<Result extends object>(laying: Generator<void, Result>): Extract<Result, LaidUnits> {
  const result = layToEnd(laying);
  if (!('wholes' in result)) throw new Error(`not laid: ${JSON.stringify(result)}`);
  return result as Extract<Result, LaidUnits>;
}

/** Random outlines with arcs and keep-outs, and the numbers to go on with. */
export function randomRegions(count: number, seed: number): { region: Region; next: () => number }[] {
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

export function wholeCount({ wholes }: LaidUnits): number {
  return wholes.reduce((sum, { count }) => sum + count, 0);
}

export function wholePlaces({ wholes }: LaidUnits): { unit: string; at: Placement }[] {
  return wholes.flatMap(({ unit, first, step, count }) =>
    Array.from({ length: count }, (_, index) => ({
      unit,
      at: { ...first, x: first.x + index * step.x, y: first.y + index * step.y }
    }))
  );
}

export interface OnPlan {
  /** Square metres of all whole units and pieces, one by one. */
  readonly oneByOne: number;
  /** Square metres of ground under them: less, where some lie on each other. */
  readonly together: number;
  /** Square metres of that within the region. */
  readonly inside: number;
}

/** Whole units and pieces laid out on the plan, the shape of a whole unit by its key. */
export function onPlan(laid: LaidUnits, shapes: Readonly<Record<string, readonly Point[]>>, region: Region): OnPlan {
  const paths = [
    ...wholePlaces(laid).map(({ unit, at }) => [(shapes[unit] ?? []).map(point => placed(point, at))]),
    ...laid.cuts.flatMap(({ at, pieces }) =>
      pieces.map(({ outline, holes }) => [outline, ...holes].map(loop => chordsOf(loop).map(p => placed(p, at))))
    )
  ].map(loops => loops.map(scaled));
  const oneByOne = paths.reduce((sum, loops) => sum + Clipper.areaPaths(loops), 0);
  const together = Clipper.union(paths.flat(), FillRule.NonZero);
  const ground = [region.outer, ...region.holes.map(hole => (signedAreaOf(hole) > 0 ? reversedLoop(hole) : hole))];
  const inside = Clipper.intersect(
    together,
    ground.map(loop => scaled(chordsOf(loop))),
    FillRule.NonZero
  );
  const metres = (area: number): number => area / SCALE / SCALE;
  return {
    oneByOne: metres(oneByOne),
    together: metres(Clipper.areaPaths(together)),
    inside: metres(Clipper.areaPaths(inside))
  };
}

function chordsOf(loop: Loop): Point[] {
  return loop.flatMap(side => {
    const chords = side.arc ? Math.ceil(Math.sqrt(Math.abs(side.arc.turn)) / TURN_PER_CHORD) : 1;
    return Array.from({ length: chords }, (_, part) => pointAlong(side, part / chords));
  });
}

function placed({ x, y }: Point, at: Placement): Point {
  const [cosine, sine] = [Math.cos(at.direction), Math.sin(at.direction)];
  return { x: at.x + x * cosine - y * sine, y: at.y + x * sine + y * cosine };
}

function scaled(points: readonly Point[]): Point[] {
  return points.map(({ x, y }) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));
}
