import { Clipper, FillRule } from 'clipper2-ts';
import { type Bounds, boundsOf, boundsOfSide } from './bounds.ts';
import { pointAlong } from './outline.ts';
import type { Arc, Loop, Point, Side } from './shapes.ts';

/**
 * The most an arc turns per chord, in radians. Chords fall short of the area between an arc and its centre by a sixth
 * of the square of this: 8.2e-8 of it.
 */
const TURN_PER_CHORD = 7e-4;

/**
 * The same for flat arcs, whose centre is far away: times the root of the arc's turn, so that its chords fall short by
 * 7.5e-9 of the square of its length. An outline ten times as long as it is wide still loses less than 1e-7.
 */
const TURN_PER_FLAT_CHORD = 3e-4;

/** Share of an outline's area by which chords may fall short: see the turns per chord. */
export const CHORD_AREA_ERROR = 1e-7;

/** Whole-number units per metre for clipping: nanometres. */
const UNITS_PER_METRE = 1e9;

/** The furthest coordinate, in those units: a few bits below the 53 a number holds exactly, for sums and differences. */
const FURTHEST_UNIT = 2 ** 50;

/** Outlines as corners in whole numbers about a local origin, ready for clipping. */
export interface ChordPlan {
  readonly origin: Point;
  readonly scale: number;
}

/** A plan that holds all the outlines. Undefined when there is no outline or a coordinate is no number. */
export function planFor(loops: readonly Loop[]): ChordPlan | undefined {
  const boxes = loops.map(boundsOf);
  const left = Math.min(...boxes.map(box => box.left));
  const right = Math.max(...boxes.map(box => box.right));
  const bottom = Math.min(...boxes.map(box => box.bottom));
  const top = Math.max(...boxes.map(box => box.top));
  const extent = Math.max(right - left, top - bottom);
  if (!(extent > 0 && extent < Infinity)) return undefined;
  const origin = { x: (left + right) / 2, y: (bottom + top) / 2 };
  return { origin, scale: Math.min(UNITS_PER_METRE, FURTHEST_UNIT / extent) };
}

function chordsFor(turn: number): number {
  return Math.ceil(turn / Math.min(TURN_PER_CHORD, TURN_PER_FLAT_CHORD * Math.sqrt(turn)));
}

/** The corners of an outline in a plan, arcs as chords, its own crossings resolved. */
export function inPlan(loop: Loop, plan: ChordPlan): Point[][] {
  const corners = loop.flatMap(side => cornersOf(side, plan));
  // The clipping library fails on a path of no corners.
  return corners.length === 0 ? [] : Clipper.union([corners], FillRule.NonZero);
}

/**
 * The corners of an outline in a plan, for what is asked within a window only: of a stretch of arc that stays beyond one
 * side of the window its ends are enough.
 */
export function inWindow(loop: Loop, plan: ChordPlan, window: Bounds): Point[][] {
  const corners = loop.flatMap(side => cornersOf(side, plan, window));
  return corners.length === 0 ? [] : [corners];
}

/** The corners along a side but its last, which is the first of the next. */
function cornersOf(side: Side, { origin, scale }: ChordPlan, window?: Bounds): Point[] {
  const { arc } = side;
  const chords = arc ? chordsFor(Math.abs(arc.turn)) : 1;
  const corners: Point[] = [];
  const follow = (first: number, end: number): void => {
    if (end - first > 1 && !(arc && window && isBeyond(partOf(side, arc, first / chords, end / chords), window))) {
      const middle = Math.floor((first + end) / 2);
      follow(first, middle);
      follow(middle, end);
      return;
    }
    const { x, y } = pointAlong(side, first / chords);
    corners.push({ x: Math.round((x - origin.x) * scale), y: Math.round((y - origin.y) * scale) });
  };
  follow(0, chords);
  return corners;
}

function partOf(side: Side, arc: Arc, from: number, to: number): Side {
  return { from: pointAlong(side, from), to: pointAlong(side, to), arc: { ...arc, turn: (to - from) * arc.turn } };
}

function isBeyond(side: Side, window: Bounds): boolean {
  const { left, right, bottom, top } = boundsOfSide(side);
  return right < window.left || left > window.right || top < window.bottom || bottom > window.top;
}

/** A corner of a plan, back to metres. */
export function fromPlan(point: Point, { origin, scale }: ChordPlan): Point {
  return { x: origin.x + point.x / scale, y: origin.y + point.y / scale };
}

/** Area in square metres of what lies inside outlines of a plan, holes among them counting negative. */
export function planArea(paths: Point[][], { scale }: ChordPlan): number {
  return Clipper.areaPaths(paths) / (scale * scale);
}
