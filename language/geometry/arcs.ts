import { distance } from './outline.ts';
import type { Point, Side } from './shapes.ts';

/** Which way an arc bows off its chord, seen in the direction of travel. */
export type Bulge = 'left' | 'right';

/** Two sides meeting in a rounded corner. A side used up entirely is left with no length. */
export interface RoundedCorner {
  readonly before: Side;
  readonly arc: Side;
  readonly after: Side;
}

/** Share by which a length may overrun before it no longer fits: keypad lengths such as a half circle must still fit. */
const FIT_TOLERANCE = 1e-9;

/** Sine below which three points, or two sides, count as lying on one line. */
const STRAIGHT_SINE = 1e-9;

/**
 * An arc side from its chord and its rise in metres: the height of the bow over the middle of the chord.
 * Undefined when chord or rise is nought or negative.
 */
export function arcByBow(from: Point, to: Point, rise: number, bulge: Bulge): Side | undefined {
  const chord = distance(from, to);
  if (!(chord > 0 && rise > 0)) return undefined;
  const radius = (chord * chord) / (8 * rise) + rise / 2;
  // Negative when the arc is more than a half turn: the centre then lies on the bulging side of the chord.
  const centreOffChord = radius - rise;
  return arcOnChord(from, to, bulge, centreOffChord, 4 * Math.atan((2 * rise) / chord));
}

/** An arc side through a third point on the way. Undefined when the three points lie on one line. */
export function arcThrough(from: Point, to: Point, through: Point): Side | undefined {
  const back = { x: from.x - through.x, y: from.y - through.y };
  const on = { x: to.x - through.x, y: to.y - through.y };
  const cross = on.x * back.y - on.y * back.x;
  const dot = back.x * on.x + back.y * on.y;
  const chord = distance(from, to);
  if (!(chord > 0) || !(Math.abs(cross) > STRAIGHT_SINE * distance(from, through) * distance(to, through))) {
    return undefined;
  }
  // The angle seen from a point on the arc is half the turn of the part of the circle across the chord.
  const seen = Math.atan2(Math.abs(cross), dot);
  const bulge = cross < 0 ? 'left' : 'right';
  return arcOnChord(from, to, bulge, -chord / 2 / Math.tan(seen), 2 * (Math.PI - seen));
}

/**
 * The shorter arc of a radius in metres over a chord, bulging left or right. Undefined when the chord is nought or
 * longer than the diameter.
 */
export function arcByRadius(from: Point, to: Point, radius: number, bulge: Bulge): Side | undefined {
  const half = distance(from, to) / 2;
  if (!(half > 0) || !(half <= radius * (1 + FIT_TOLERANCE))) return undefined;
  const sine = Math.min(1, half / radius);
  const centreOffChord = Math.sqrt(Math.max(0, (radius - half) * (radius + half)));
  return arcOnChord(from, to, bulge, centreOffChord, 2 * Math.asin(sine));
}

function arcOnChord(from: Point, to: Point, bulge: Bulge, centreOffChord: number, turn: number): Side {
  const chord = distance(from, to);
  const toLeft = (bulge === 'right' ? centreOffChord : -centreOffChord) / chord;
  const centre = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * toLeft,
    y: (from.y + to.y) / 2 + (to.x - from.x) * toLeft
  };
  return { from, to, arc: { centre, turn: bulge === 'right' ? turn : -turn } };
}

/**
 * Rounds the corner between two straight sides with a tangent arc, radius in metres. Undefined when a side is an arc,
 * the sides do not meet, run on in one line or fold back, or the arc does not fit on them.
 */
export function roundCorner(before: Side, after: Side, radius: number): RoundedCorner | undefined {
  const lengthBefore = distance(before.from, before.to);
  const lengthAfter = distance(after.from, after.to);
  if (before.arc || after.arc || !(radius > 0 && lengthBefore > 0 && lengthAfter > 0)) return undefined;
  const corner = before.to;
  if (distance(corner, after.from) > FIT_TOLERANCE * (lengthBefore + lengthAfter)) return undefined;
  const along = { x: (corner.x - before.from.x) / lengthBefore, y: (corner.y - before.from.y) / lengthBefore };
  const onward = { x: (after.to.x - corner.x) / lengthAfter, y: (after.to.y - corner.y) / lengthAfter };
  const cross = along.x * onward.y - along.y * onward.x;
  if (Math.abs(cross) < STRAIGHT_SINE) return undefined;
  const turn = Math.atan2(cross, along.x * onward.x + along.y * onward.y);
  const taken = radius * Math.tan(Math.abs(turn) / 2);
  if (taken > Math.min(lengthBefore, lengthAfter) * (1 + FIT_TOLERANCE)) return undefined;
  const start = taken >= lengthBefore ? before.from : { x: corner.x - along.x * taken, y: corner.y - along.y * taken };
  const end = taken >= lengthAfter ? after.to : { x: corner.x + onward.x * taken, y: corner.y + onward.y * taken };
  const inward = Math.sign(turn) * radius;
  const centre = { x: start.x - along.y * inward, y: start.y + along.x * inward };
  return {
    before: { from: before.from, to: start },
    arc: { from: start, to: end, arc: { centre, turn } },
    after: { from: end, to: after.to }
  };
}
