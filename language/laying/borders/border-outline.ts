import { heading, SAME_POINT } from '../../geometry/moved-side.ts';
import { distance, radiusOf, reversedLoop, sideLength, signedAreaOf } from '../../geometry/outline.ts';
import type { Loop, Side } from '../../geometry/index.ts';

/** A side of an outline as courses leave it, and which sides of the outline first given it stems from; none for a step. */
export interface OutlineSide {
  readonly side: Side;
  readonly sides: readonly number[];
}

/** Sine of a turn, and metres between centres, below which sides run on in one line or round one circle. */
const SAME_LINE = 1e-9;

/**
 * The sides of an outline with its ground on their right. Sides that run on in one line or round one circle, and are
 * alike to every course, become one.
 */
export function outlineSides(
  loop: Loop,
  ground: 'inside' | 'outside',
  alike: (side: number, other: number) => boolean
): OutlineSide[] {
  const turned = signedAreaOf(loop) > 0 === (ground === 'inside');
  const sides = (turned ? reversedLoop(loop) : loop)
    .map((side, index) => ({ side, sides: [turned ? loop.length - 1 - index : index] }))
    .filter(({ side }) => sideLength(side) > SAME_POINT);
  const joined: OutlineSide[] = [];
  for (const side of sides) {
    const last = joined.at(-1);
    const both = last && together(last, side, alike);
    if (both) joined[joined.length - 1] = both;
    else joined.push(side);
  }
  const [first] = joined;
  const last = joined.at(-1);
  const both = first && last && joined.length > 1 && together(last, first, alike);
  return both ? [both, ...joined.slice(1, -1)] : joined;
}

function together(
  before: OutlineSide,
  after: OutlineSide,
  alike: (side: number, other: number) => boolean
): OutlineSide | undefined {
  const [one, other] = [before.sides[0], after.sides[0]];
  if (one === undefined || other === undefined || !alike(one, other)) return undefined;
  const side = joinedSide(before.side, after.side);
  return side && { side, sides: [...before.sides, ...after.sides].sort((a, b) => a - b) };
}

function joinedSide(before: Side, after: Side): Side | undefined {
  const ends = { from: before.from, to: after.to };
  if (before.arc && after.arc) {
    const same =
      distance(before.arc.centre, after.arc.centre) < SAME_LINE &&
      Math.abs(radiusOf(before, before.arc) - radiusOf(after, after.arc)) < SAME_LINE &&
      before.arc.turn * after.arc.turn > 0;
    return same ? { ...ends, arc: { ...before.arc, turn: before.arc.turn + after.arc.turn } } : undefined;
  }
  if (before.arc || after.arc) return undefined;
  const one = heading(before, before.to);
  const other = heading(after, after.from);
  const inLine = Math.abs(one.x * other.y - one.y * other.x) < SAME_LINE && one.x * other.x + one.y * other.y > 0;
  return inLine ? ends : undefined;
}
