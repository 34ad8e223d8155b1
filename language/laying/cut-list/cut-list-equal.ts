import { distanceToSide, pointAlong, type Side } from '../../geometry/index.ts';
import { plainTurn, type PreparedCut, turnedCut, turnedSidesOf } from './cut-list-prepared.ts';
import { WITHIN } from './saw-lines.ts';

/** Cuts alike: the smallest of them, turned to lie plain, and all with the turn that lays it on each. */
export interface AlikeCuts {
  readonly pattern: PreparedCut;
  readonly members: { readonly cut: PreparedCut; readonly turn: number }[];
}

/**
 * Puts equal cuts together. From the smallest up, each cut joins the pattern that it equals or becomes a pattern of its
 * own: so all in a group equal its pattern, and the order in which the cuts come decides nothing.
 */
export function* equalCuts(cuts: readonly PreparedCut[], cutsPerStep: number): Generator<void, AlikeCuts[]> {
  const groups: AlikeCuts[] = [];
  const ofUnit = new Map<string, AlikeCuts[]>();
  for (const [index, cut] of [...cuts].sort(bySize).entries()) {
    const patterns = ofUnit.get(cut.unit) ?? [];
    ofUnit.set(cut.unit, patterns);
    if (!joined(cut, patterns)) {
      const turn = plainTurn(cut);
      const alike = { pattern: turnedCut(cut, turn), members: [{ cut, turn: turnedBack(turn) }] };
      patterns.push(alike);
      groups.push(alike);
    }
    if (index % cutsPerStep === cutsPerStep - 1) yield;
  }
  return groups;
}

type Sides = Pick<PreparedCut, 'sides' | 'bounds'>;

/** By area, then by anything that tells two cuts apart. */
function bySize(a: PreparedCut, b: PreparedCut): number {
  return a.area - b.area || a.sawLength - b.sawLength || byCorners(a.sides, b.sides);
}

function byCorners(a: readonly Side[], b: readonly Side[]): number {
  for (const [index, { from }] of a.entries()) {
    const other = b[index]?.from;
    const order = other ? from.x - other.x || from.y - other.y : 1;
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

/** Puts a cut with the nearest pattern in size that it equals; patterns stand from the smallest up. */
function joined(cut: PreparedCut, patterns: readonly AlikeCuts[]): boolean {
  const turned: Sides[] = [];
  for (let last = patterns.length - 1; last >= 0; last--) {
    const { pattern, members } = patterns[last]!;
    // Outlines within the tolerance of each other differ by a strip along them at most, a little more at corners.
    if (cut.area - pattern.area > 1.5 * WITHIN * cut.perimeter) return false;
    if (cut.pieces.length !== pattern.pieces.length) continue;
    for (const [index, turn] of cut.outline.turns.entries()) {
      turned[index] ??= turnedSidesOf(cut, turn);
      if (!isSame(turned[index], pattern)) continue;
      members.push({ cut, turn: turnedBack(turn) });
      return true;
    }
  }
  return false;
}

function turnedBack(turn: number): number {
  return turn === 0 ? 0 : 2 * Math.PI - turn;
}

/** Whether all outlines of two cuts lie within the cutting tolerance of each other. */
function isSame(a: Sides, b: Sides): boolean {
  const boxesAlike = (['left', 'right', 'bottom', 'top'] as const).every(
    side => Math.abs(a.bounds[side] - b.bounds[side]) <= WITHIN
  );
  return boxesAlike && liesOn(a.sides, b.sides) && liesOn(b.sides, a.sides);
}

/** Shares of a side at which it is looked up: its start (the end is the start of the next), and between. */
const LOOKED_UP_STRAIGHT = [0, 0.5];
const LOOKED_UP_ARC = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875];

function liesOn(sides: readonly Side[], others: readonly Side[]): boolean {
  return sides.every(side =>
    (side.arc ? LOOKED_UP_ARC : LOOKED_UP_STRAIGHT).every(share => {
      const point = pointAlong(side, share);
      return others.some(other => distanceToSide(other, point) <= WITHIN);
    })
  );
}
