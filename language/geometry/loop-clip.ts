import { apart, boundsOfSide } from './bounds.ts';
import { contactsBetween, distanceToSide } from './contacts.ts';
import { shareAlong } from './containment.ts';
import { crossedOddly, type Run, runsOf } from './level-line.ts';
import { type Corners, cornersApart, type Part, stitched } from './loop-stitch.ts';
import { SAME_POINT } from './moved-side.ts';
import { pointAlong } from './outline.ts';
import type { Loop, Point, Side } from './shapes.ts';

/**
 * What two areas have in common. An area is what its outlines enclose: outer ones anticlockwise, holes clockwise, none
 * crossing another; so is the answer. Arcs stay arcs. Corners and sides within a nanometre of each other are the same.
 */
export function intersectionOf(a: readonly Loop[], b: readonly Loop[]): Loop[] {
  return combined(a, b, 'intersection');
}

/** What of an area does not lie in another; both as for {@link intersectionOf}. */
export function differenceOf(a: readonly Loop[], b: readonly Loop[]): Loop[] {
  return combined(a, b, 'difference');
}

type Operation = 'intersection' | 'difference';

/** Where a part of one area's edge lies as seen from the other area. */
type Lies = 'inside' | 'outside' | 'along' | 'against';

function combined(a: readonly Loop[], b: readonly Loop[], operation: Operation): Loop[] {
  const corners = cornersApart();
  const [partsOfA, partsOfB] = partsBetween(a.flat(), b.flat(), corners);
  const ofA = whereEachLies(partsOfA, partsOfB, runsOf(b));
  const ofB = whereEachLies(partsOfB, partsOfA, runsOf(a));
  const taken =
    operation === 'intersection'
      ? [...chosen(partsOfA, ofA, 'inside', 'along'), ...chosen(partsOfB, ofB, 'inside')]
      : [...chosen(partsOfA, ofA, 'outside', 'against'), ...chosen(partsOfB, ofB, 'inside').map(turnedRound)];
  return stitched(taken);
}

function chosen(parts: readonly Part[], lie: readonly Lies[], ...wanted: readonly Lies[]): Part[] {
  return parts.filter((_, index) => wanted.includes(lie[index] ?? 'outside'));
}

function turnedRound({ side, from, to }: Part): Part {
  const ends = { from: side.to, to: side.from };
  const turned = side.arc ? { ...ends, arc: { centre: side.arc.centre, turn: -side.arc.turn } } : ends;
  return { side: turned, from: to, to: from };
}

/** The sides of two areas, each parted wherever a corner, or a contact between the two, lies on it. */
function partsBetween(a: readonly Side[], b: readonly Side[], corners: Corners): [Part[], Part[]] {
  // The ends of sides come first, so that a contact within a nanometre of one is that corner.
  for (const { from, to } of [...a, ...b]) for (const end of [from, to]) corners.numberOf(end);
  const boxes = b.map(boundsOfSide);
  for (const side of a) {
    const box = boundsOfSide(side);
    for (const [place, other] of b.entries()) {
      const otherBox = boxes[place];
      if (!otherBox || apart(box, otherBox, SAME_POINT)) continue;
      for (const point of contactsBetween(side, other, SAME_POINT)) corners.numberOf(point);
    }
  }
  // Where an arc leaves a tangent, one contact lies on sides of both areas that do not know of each other.
  const points = corners.all();
  const parted = (side: Side): Part[] => partsOf(side, cornersOn(side, points), corners);
  return [a.flatMap(parted), b.flatMap(parted)];
}

function cornersOn(side: Side, points: readonly Point[]): number[] {
  const { left, right, bottom, top } = boundsOfSide(side);
  const on: number[] = [];
  for (const [corner, point] of points.entries()) {
    if (point.x < left - SAME_POINT || point.x > right + SAME_POINT) continue;
    if (point.y < bottom - SAME_POINT || point.y > top + SAME_POINT) continue;
    if (distanceToSide(side, point) <= SAME_POINT) on.push(corner);
  }
  return on;
}

function partsOf(side: Side, cuts: readonly number[], corners: Corners): Part[] {
  const first = corners.numberOf(side.from);
  const last = corners.numberOf(side.to);
  const stops = cuts
    .filter(corner => corner !== first && corner !== last)
    .map(corner => ({ corner, share: shareAlong(side, corners.at(corner)) }))
    .sort((one, two) => one.share - two.share);
  const parts: Part[] = [];
  let from = { corner: first, share: 0 };
  for (const to of [...stops, { corner: last, share: 1 }]) {
    const ends = { from: corners.at(from.corner), to: corners.at(to.corner) };
    const turn = side.arc ? side.arc.turn * (to.share - from.share) : 0;
    // From a corner back to itself there is only a full turn, or nothing.
    if (from.corner !== to.corner || Math.abs(turn) > Math.PI) {
      const part = side.arc ? { ...ends, arc: { centre: side.arc.centre, turn } } : ends;
      parts.push({ side: part, from: from.corner, to: to.corner });
    }
    from = to;
  }
  return parts;
}

function whereEachLies(parts: readonly Part[], others: readonly Part[], area: readonly Run[]): Lies[] {
  return parts.map(part => {
    const middle = pointAlong(part.side, 0.5);
    const same = others.find(
      other => joinsSameCorners(part, other) && distanceToSide(other.side, middle) <= SAME_POINT
    );
    if (same) return runsAlong(part, same) ? 'along' : 'against';
    return crossedOddly(area, middle) ? 'inside' : 'outside';
  });
}

function joinsSameCorners(a: Part, b: Part): boolean {
  return (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);
}

function runsAlong(a: Part, b: Part): boolean {
  if (a.from === a.to) return Math.sign(a.side.arc?.turn ?? 0) === Math.sign(b.side.arc?.turn ?? 0);
  return a.from === b.from;
}
