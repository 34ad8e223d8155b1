import { type Bounds, boundsOf, distance, inFrame, type Region, type Side } from '../../geometry/index.ts';
import { boundsIn } from '../field-frame.ts';
import type { BondPattern, UnitLattice } from '../bonds/pattern.ts';

/** A line square to one way of the courses that the field ends at, in metres along that way. */
export interface EndLine {
  readonly at: number;
  /** Units begin there, end there, or nobody knows: a corner of a slanted or round side. */
  readonly units: 'begin' | 'end' | 'meet';
  /** Metres of the outline that lie on it. */
  readonly length: number;
}

export type Way = 'along' | 'across';

/** In metres: sides no further out of square lie on one line. */
const SAME_LINE = 1e-6;

/** The lines that regions end at, seen in the frame of its courses, the longest first, each once. */
export function endLines(regions: readonly Region[], { frame }: BondPattern, way: Way): EndLine[] {
  const lines = new Map<string, EndLine>();
  for (const line of regions
    .flatMap(region => inFrame(region, frame))
    .flatMap(loop => loop.flatMap(side => linesOf(side, way)))) {
    const name = `${Math.round(line.at / SAME_LINE)} ${line.units}`;
    const before = lines.get(name);
    lines.set(name, { ...line, length: line.length + (before?.length ?? 0) });
  }
  return [...lines.values()].sort((one, other) => other.length - one.length || one.at - other.at);
}

/** Outlines run so that the field lies to the left of each side. */
function linesOf(side: Side, way: Way): EndLine[] {
  const { from, to, arc } = side;
  const onward = way === 'along' ? to.y - from.y : from.x - to.x;
  const [first, last] = way === 'along' ? [from.x, to.x] : [from.y, to.y];
  if (arc === undefined && Math.abs(last - first) <= SAME_LINE)
    return [{ at: first, units: onward > 0 ? 'end' : 'begin', length: distance(from, to) }];
  if (arc === undefined) return [{ at: first, units: 'meet', length: 0 }];
  const [low, high] = rangeOf(boundsOf([side]), way);
  return [low, high].map(at => ({ at, units: 'meet', length: 0 }));
}

/** How far regions reach one way. */
export function reachOf(regions: readonly Region[], { frame }: BondPattern, way: Way): readonly [number, number] {
  return rangeOf(boundsIn(frame, regions), way);
}

function rangeOf({ left, right, bottom, top }: Bounds, way: Way): [number, number] {
  return way === 'along' ? [left, right] : [bottom, top];
}

/** Courses after which a bond is taken to repeat; what does so later lies in so many ways that any is as good. */
const MOST_COURSES = 4;

/** Where the units of a pattern begin and end one way, less than a pitch from its start. */
export function unitEdges({ units }: BondPattern, way: Way): { readonly begin: number[]; readonly end: number[] } {
  const begin = units.flatMap(lattice => beginnings(lattice, way));
  const end = units.flatMap(lattice => beginnings(lattice, way).map(at => at + sizeOf(lattice, way)));
  return { begin: [...new Set(begin)], end: [...new Set(end)] };
}

function beginnings({ x, y, alongPitch, offset }: UnitLattice, way: Way): number[] {
  if (way === 'across') return [y];
  const courses = Array.from({ length: MOST_COURSES }, (_, course) => (course * offset) % 1);
  return [...new Set(courses)].map(moved => x + moved * alongPitch);
}

export function sizeOf({ length, width }: UnitLattice, way: Way): number {
  return way === 'along' ? length : width;
}

export function pitchOf({ units }: BondPattern, way: Way): number {
  const [unit] = units;
  return way === 'along' ? (unit?.alongPitch ?? 0) : (unit?.acrossPitch ?? 0);
}
