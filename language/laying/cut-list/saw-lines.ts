import {
  CUTTING_TOLERANCE,
  distance,
  distanceToSide,
  type Loop,
  type Point,
  pointAlong,
  radiusOf,
  type Side,
  sideLength
} from '../../geometry/index.ts';
import type { UnitOutline } from './unit-shape.ts';

/** The cutting tolerance in metres, and a hair for rounding. */
export const WITHIN = CUTTING_TOLERANCE + 1e-9;

/** In metres: parts of one arc have one centre but for rounding. */
const ONE_CENTRE = 1e-6;

/** Sawn sides one after another along the outline of a piece; closed when they go all round. */
export interface SawLine {
  readonly sides: readonly Side[];
  readonly closed: boolean;
}

/** The saw lines of an outline, each as plain as the cutting tolerance allows. */
export function sawLinesOf(loop: Loop, unit: UnitOutline): SawLine[] {
  const firstOnUnit = loop.findIndex(side => isOnUnitSide(side, unit));
  if (firstOnUnit < 0) return [{ sides: plainRound(loop), closed: true }];
  const lines: Side[][] = [];
  let line: Side[] = [];
  for (const side of [...loop.slice(firstOnUnit + 1), ...loop.slice(0, firstOnUnit + 1)]) {
    if (!isOnUnitSide(side, unit)) line.push(side);
    else if (line.length > 0) {
      lines.push(line);
      line = [];
    }
  }
  return lines.map(sides => ({ sides: withoutStubs(plain(sides)), closed: false }));
}

/** Whether a side of a piece lies on the unit's own: it is not sawn. */
export function isOnUnitSide(side: Side, unit: UnitOutline): boolean {
  const points = [side.from, pointAlong(side, 0.5), side.to];
  return unit.sides.some(edge => points.every(point => distanceToSide(edge, point) <= WITHIN));
}

/** Arcs that go on as one are joined, flat ones are straight, straight ones in one line are joined. */
function plain(sides: readonly Side[]): Side[] {
  const flat = joinedArcs(sides).map(side => (bowOf(side) <= WITHIN ? { from: side.from, to: side.to } : side));
  const done: Side[] = [];
  let run: Point[] = [];
  const endRun = (): void => {
    const points = straightened(run);
    points.slice(1).forEach((to, index) => done.push({ from: points[index]!, to }));
    run = [];
  };
  for (const side of flat) {
    if (side.arc) {
      endRun();
      done.push(side);
    } else run.push(...(run.length === 0 ? [side.from, side.to] : [side.to]));
  }
  endRun();
  return done;
}

/** The same of sides that close, begun where none that belong together are parted. */
function plainRound(loop: Loop): Side[] {
  const parted = loop.findIndex((side, index) => !goesOn(loop[(index + loop.length - 1) % loop.length]!, side));
  const arcs = joinedArcs(begunAt(loop, Math.max(0, parted)));
  const bowed = arcs.findIndex(side => bowOf(side) > WITHIN);
  return plain(begunAt(arcs, bowed < 0 ? furthestOut(arcs) : bowed));
}

function begunAt(loop: Loop, index: number): Side[] {
  return [...loop.slice(index), ...loop.slice(0, index)];
}

/** The side whose start lies furthest from the first: surely a corner. */
function furthestOut(loop: Loop): number {
  const away = loop.map(side => distance(side.from, loop[0]!.from));
  return away.indexOf(Math.max(...away));
}

function joinedArcs(sides: readonly Side[]): Side[] {
  const joined: Side[] = [];
  for (const side of sides) {
    const last = joined[joined.length - 1];
    if (last && goesOn(last, side)) {
      joined[joined.length - 1] = {
        from: last.from,
        to: side.to,
        arc: { centre: last.arc!.centre, turn: last.arc!.turn + side.arc!.turn }
      };
    } else joined.push(side);
  }
  return joined;
}

function goesOn(before: Side, after: Side): boolean {
  if (!before.arc || !after.arc || before === after) return false;
  const sameWay = before.arc.turn > 0 === after.arc.turn > 0;
  return sameWay && distance(before.arc.centre, after.arc.centre) <= ONE_CENTRE;
}

/** How far an arc bows off its chord, metres; nought for a straight side. */
export function bowOf(side: Side): number {
  return side.arc ? 2 * radiusOf(side, side.arc) * Math.sin(side.arc.turn / 4) ** 2 : 0;
}

/** Points along a line without those that lie no further off it than the saw is exact. */
function straightened(points: readonly Point[]): Point[] {
  const first = points[0];
  const last = points[points.length - 1];
  if (!first || !last || points.length < 3) return [...points];
  const off = points.map(point => distanceToSide({ from: first, to: last }, point));
  const furthest = off.indexOf(Math.max(...off));
  if (off[furthest]! <= WITHIN) return [first, last];
  return [...straightened(points.slice(0, furthest + 1)), ...straightened(points.slice(furthest)).slice(1)];
}

/** A line without ends too short to be sawn. */
function withoutStubs(sides: readonly Side[]): Side[] {
  const long = sides.map(side => sideLength(side) > WITHIN);
  return long.includes(true) ? sides.slice(long.indexOf(true), long.lastIndexOf(true) + 1) : [...sides];
}
