import type { Bounds } from '../../geometry/bounds.ts';
import { boxShape } from '../../geometry/convex.ts';
import { cutToColumns, cutToRows } from '../../geometry/courses.ts';
import { type CourseFrame, inFrame } from '../../geometry/grid-frame.ts';
import { CUTTING_TOLERANCE, type Loop, MOST_UNITS, type Point, type Region, unitsAbout } from '../../geometry/index.ts';
import { crossedOddly, type Run, runsOf } from '../../geometry/level-line.ts';
import { boxRound, loopOf, type Path, pathOf } from '../../geometry/path-clip.ts';
import type { LaidUnits, TooManyUnits } from '../laid.ts';
import type { OwnFrame } from './own-frame.ts';
import { sectorsBetween } from './ring-border.ts';
import { discInside, jointByUnit, jointInside } from './ring-joints.ts';
import { leastRadius, type Ring, ringOn, type RingSizes } from './ring-sizes.ts';
import { type Gathering, gathering, NOTHING_LAID, type UnitKind } from './unit-cut.ts';

/**
 * Rings about a centre, the origin of their frame; in its direction lies the middle of a unit in every odd ring, counted
 * from one outward, and the middle of a joint in every even one. Metres.
 */
export interface Rings extends CourseFrame, RingSizes {
  readonly unit: string;
}

/** What rings over a region take. */
export interface LaidRings extends LaidUnits {
  /** The disc about the centre too tight for rings, left open: its radius, and how much of the region lies in it. */
  readonly open: { readonly radius: number; readonly area: number };
  /** Rings whose joints open further than meant at the outer corners, and how far, in metres. */
  readonly wide: readonly { readonly ring: number; readonly opening: number }[];
}

/**
 * No ring keeps its joints within limits so near together: joints open outward in any ring. Where the limits leave some,
 * but none so small as the region, `least` is the least radius.
 */
export interface NoRing {
  readonly noRingWithin: number;
  readonly least?: number;
}

/**
 * Lays concentric rings over a region, from the least radius at which the joints keep within their limits. The units
 * have flat faces: what lies between these and the circles counts as joint. Joints that the region's edge cuts are
 * exact to a millionth of the region, all else as exact as numbers are. Yields after each ring; the tolerance is in metres.
 * Sizes or a region that hold no area, or no numbers, take no units.
 */
export function* layRings(
  region: Region,
  pattern: Rings,
  tolerance = CUTTING_TOLERANCE
): Generator<void, LaidRings | TooManyUnits | NoRing> {
  const about = unitsAbout(region, { ...pattern, offset: 0 });
  if (!isLayable(pattern) || !Number.isFinite(about))
    return { ...NOTHING_LAID, open: { radius: 0, area: 0 }, wide: [] };
  if (about > MOST_UNITS) return { tooMany: about };
  const least = leastRadius(pattern);
  if (least === undefined) return { noRingWithin: pattern.mostJoint };

  const loops = inFrame(region, pattern);
  const paths = loops.map(pathOf);
  const furthest = furthestFromCentre(paths);
  const rings = furthest / pattern.width;
  if (rings > MOST_UNITS) return { tooMany: rings };

  const laid = gathering(pattern, tolerance);
  const shape = boxShape({ left: 0, right: pattern.length, bottom: 0, top: pattern.width });
  const laying = { pattern, loops, paths, runs: runsOf(loops), laid, kind: { unit: pattern.unit, shape } };
  const wide: { ring: number; opening: number }[] = [];
  for (
    let ring = ringOn(1, least, pattern);
    ring.inner < furthest;
    ring = ringOn(ring.number + 1, ring.next, pattern)
  ) {
    const isMet = layRing(ring, laying);
    if (isMet && ring.opening > pattern.mostJoint + ROUNDING) wide.push({ ring: ring.number, opening: ring.opening });
    yield;
  }
  return { ...laid.laid(), open: { radius: least, area: openArea(least, laying) }, wide };
}

/** In metres and in shares of a unit: rounding that must not open a joint, or miss a unit that the edge touches. */
const ROUNDING = 1e-9;

function isLayable({ origin, direction, length, width, joint, mostJoint }: Rings): boolean {
  const numbers = [origin.x, origin.y, direction, length, width, joint, mostJoint];
  return numbers.every(Number.isFinite) && length > 0 && width > 0 && joint >= 0;
}

function furthestFromCentre(paths: readonly Path[]): number {
  const { left, right, bottom, top } = boxRound(paths);
  return Math.hypot(Math.max(-left, right), Math.max(-bottom, top));
}

interface Laying {
  readonly pattern: Rings;
  /** Outlines as seen from the centre, and the same as paths and runs. */
  readonly loops: readonly Loop[];
  readonly paths: readonly Path[];
  readonly runs: readonly Run[];
  readonly kind: UnitKind;
  readonly laid: Gathering;
}

/** Lays one ring, and tells whether the region has any of it. */
function layRing(ring: Ring, laying: Laying): boolean {
  const { loops, runs, kind, laid } = laying;
  let isMet = false;
  for (const { first, end, onBorder } of stretchesOf(ring, loops)) {
    if (onBorder) {
      isMet = true;
      layAlongBorder(ring, first, end, laying.paths, laying);
    } else if (crossedOddly(runs, middleOf(ring, first))) {
      isMet = true;
      for (let unit = first; unit < end; unit++) {
        laid.wholes(kind, ownFrame(ring, unit, laying.pattern), { count: 1, stepX: 0, stepY: 0 });
      }
      laid.joints((end - first) * jointByUnit(ring, kind.shape.area));
    }
  }
  return isMet;
}

interface Stretch {
  readonly first: number;
  readonly end: number;
  readonly onBorder: boolean;
}

/** The units of a ring in stretches: those that the region's edge may run through, and those it does not. */
function stretchesOf({ inner, next, count, step, start }: Ring, loops: readonly Loop[]): Stretch[] {
  const onBorder = new Uint8Array(count);
  for (const { from, to } of sectorsBetween(loops, inner, next)) {
    const first = Math.floor((from - start) / step + 0.5 - ROUNDING);
    const last = Math.floor((to - start) / step + 0.5 + ROUNDING);
    for (let unit = first; unit <= last; unit++) onBorder[((unit % count) + count) % count] = 1;
  }
  const stretches: Stretch[] = [];
  for (let first = 0, end = 0; first < count; first = end) {
    while (end < count && onBorder[end] === onBorder[first]) end++;
    stretches.push({ first, end, onBorder: onBorder[first] === 1 });
  }
  return stretches;
}

/** Halves units that lie next to each other, down to each one and what of the region lies about it. */
function layAlongBorder(ring: Ring, first: number, end: number, paths: readonly Path[], laying: Laying): void {
  const { left, right, bottom, top } = boxAround(ring, first, end);
  const near = cutToRows(cutToColumns(paths, left, right), bottom, top);
  if (near.length === 0) return;
  if (end - first > 1) {
    const middle = Math.floor((first + end) / 2);
    layAlongBorder(ring, first, middle, near, laying);
    layAlongBorder(ring, middle, end, near, laying);
    return;
  }
  const { pattern, kind, laid } = laying;
  const own = ownFrame(ring, first, pattern);
  laid.clip(kind, own, near);
  laid.joints(jointInside(near.map(loopOf), ring, ring.start + first * ring.step, cornersOf(own, pattern)));
}

/** A box round units of a ring and the joints about them. */
function boxAround({ inner, next, step, start }: Ring, first: number, end: number): Bounds {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  // Straight lines along the next circle from one of these directions to the other stay outside it.
  const outer = next / Math.cos(step / 2);
  for (let edge = first; edge <= end; edge++) {
    const angle = start + (edge - 0.5) * step;
    for (const radius of [inner, outer]) {
      box.left = Math.min(box.left, radius * Math.cos(angle));
      box.right = Math.max(box.right, radius * Math.cos(angle));
      box.bottom = Math.min(box.bottom, radius * Math.sin(angle));
      box.top = Math.max(box.top, radius * Math.sin(angle));
    }
  }
  return box;
}

function middleOf({ inner, next, step, start }: Ring, unit: number): Point {
  const radius = (inner + next) / 2;
  const angle = start + unit * step;
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}

/** A unit lies with its length along the ring and its own nought on the inner face. */
function ownFrame({ inner, start, step }: Ring, unit: number, { length, mirrored }: Rings): OwnFrame {
  const angle = start + unit * step;
  const [outX, outY] = [Math.cos(angle), Math.sin(angle)];
  const way = mirrored ? 1 : -1;
  const [ux, uy] = [-way * outY, way * outX];
  return { x: inner * outX - (length / 2) * ux, y: inner * outY - (length / 2) * uy, ux, uy, mirrored };
}

/** The corners of a unit, anticlockwise as seen from the centre. */
function cornersOf({ x, y, ux, uy, mirrored }: OwnFrame, { length, width }: Rings): Point[] {
  const [outX, outY] = mirrored ? [uy, -ux] : [-uy, ux];
  const corner = (along: number, out: number): Point => ({
    x: x + along * ux + out * outX,
    y: y + along * uy + out * outY
  });
  const corners = [corner(0, 0), corner(length, 0), corner(length, width), corner(0, width)];
  return mirrored ? corners.reverse() : corners;
}

function openArea(radius: number, { loops, runs }: Laying): number {
  if (sectorsBetween(loops, 0, radius).length > 0) return discInside(loops, radius);
  return crossedOddly(runs, { x: 0, y: 0 }) ? Math.PI * radius * radius : 0;
}
