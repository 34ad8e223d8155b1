import { Clipper, FillRule } from 'clipper2-ts';
import { boundsOf } from '../../geometry/bounds.ts';
import { type ChordPlan, inWindow, planArea, planFor } from '../../geometry/chords.ts';
import type { Loop, Point } from '../../geometry/shapes.ts';
import type { Ring } from './ring-sizes.ts';

/** In metres: how far a chord may lie within its circle. */
const CHORD_RISE = 1e-6;

/** Square metres of joint that go with one whole unit: its part of the ring without the unit. */
export function jointByUnit({ inner, next, step }: Ring, unitArea: number): number {
  return (step / 2) * (next - inner) * (next + inner) - unitArea;
}

/**
 * Square metres of the joint round one unit, its corners given anticlockwise, that lie inside outlines near it. Arcs as
 * fine chords, clipped with the general polygon library: exact to a millionth of the ring's area.
 */
export function jointInside(near: readonly Loop[], ring: Ring, middle: number, unit: readonly Point[]): number {
  const from = middle - ring.step / 2;
  const cell = [...circlePart(ring.next, from, ring.step), ...circlePart(ring.inner, from + ring.step, -ring.step)];
  return sharedArea(near, [cell, [...unit].reverse()]);
}

/** Square metres of a disc about the origin inside outlines: as exact as the joints. */
export function discInside(loops: readonly Loop[], radius: number): number {
  return sharedArea(loops, [circlePart(radius, 0, 2 * Math.PI)]);
}

/** Chords along a circle about the origin that keep its area: their ends lie a hair outside it. */
function circlePart(radius: number, from: number, turn: number): Point[] {
  const chords = Math.ceil(Math.abs(turn) / Math.sqrt((8 * CHORD_RISE) / radius));
  const chord = turn / chords;
  const reach = radius * Math.sqrt(chord / Math.sin(chord));
  return Array.from({ length: chords + 1 }, (_, index) => ({
    x: reach * Math.cos(from + index * chord),
    y: reach * Math.sin(from + index * chord)
  }));
}

function sharedArea(loops: readonly Loop[], shape: readonly (readonly Point[])[]): number {
  const outlines = shape.map(corners =>
    corners.map((from, index) => ({ from, to: corners[(index + 1) % corners.length] ?? from }))
  );
  const plan = planFor([...loops, ...outlines]);
  const [first] = outlines;
  if (!plan || !first) return 0;
  const corners = (outline: Loop): Point[][] => inWindow(outline, plan, boundsOf(first));
  return clippedArea(loops.flatMap(corners), outlines.flatMap(corners), plan);
}

function clippedArea(loops: Point[][], shape: Point[][], plan: ChordPlan): number {
  return planArea(Clipper.intersect(loops, shape, FillRule.Positive), plan);
}
