// Random pieces: rectangles against an exhaustive search, other shapes against the rules of cutting (nesting.ts).
import { describe, expect, test } from 'vitest';
import { arcByBow, type Point } from '../../language/geometry/index.ts';
import type { Piece } from '../../language/laying/laid.ts';
import { seededNumbers } from '../geometry/random-outlines.ts';
import { type Case, cornered, nest, pieceOf, rectangle } from './nesting.ts';

/** A rectangle in tenths of a block's width, the gap beside it counted in, and how far up it lies. */
interface Tenths {
  readonly length: number;
  readonly width: number;
  readonly bottom: number;
}

/**
 * Fewest units that rectangles can be cut from: all ways to share them out, and in each unit all straight cuts right
 * through at all tenths, from the whole unit down. All sizes are whole tenths, so that no other cut can do better.
 */
function fewestUnits(pieces: readonly Tenths[], length: number, width: number, keepsAcross: boolean): number {
  const all = (1 << pieces.length) - 1;
  const known = new Map<string, boolean>();
  const inSet = (set: number): Tenths[] => pieces.filter((_, index) => set & (1 << index));
  const canCut = (set: number, long: number, wide: number): boolean => {
    const key = `${set} ${long} ${wide}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = tryCuts(set, long, wide);
    known.set(key, found);
    return found;
  };
  const tryCuts = (set: number, long: number, wide: number): boolean => {
    const cut = inSet(set);
    if (cut.reduce((sum, piece) => sum + piece.length * piece.width, 0) > long * wide) return false;
    const [only] = cut;
    if (cut.length === 1) {
      return (
        (only!.length <= long && only!.width <= wide) || (!keepsAcross && only!.width <= long && only!.length <= wide)
      );
    }
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
      const rest = set & ~part;
      for (let at = 1; at < long; at++) if (canCut(part, at, wide) && canCut(rest, long - at, wide)) return true;
      if (keepsAcross) {
        const top = Math.max(...inSet(part).map(piece => piece.bottom + piece.width));
        const lies = inSet(rest).every(({ bottom }) => bottom >= top);
        if (lies && canCut(part, long, wide) && canCut(rest, long, wide)) return true;
      } else {
        for (let at = 1; at < wide; at++) if (canCut(part, long, at) && canCut(rest, long, wide - at)) return true;
      }
    }
    return false;
  };
  const fewest = [0];
  for (let set = 1; set <= all; set++) {
    fewest[set] = Infinity;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if (canCut(part, length, width)) fewest[set] = Math.min(fewest[set]!, 1 + fewest[set & ~part]!);
    }
  }
  return fewest[all]!;
}

describe('Up to seven rectangles take as few units as an exhaustive search finds', () => {
  /** The saw, what it leaves between pieces, and the unit's size in tenths, the gap counted in; millimetres. */
  const SAWS = [
    { saw: 0, gap: 0, length: 20, width: 10 },
    { saw: 3, gap: 2.5, length: 20, width: 10 },
    { saw: 10.5, gap: 10, length: 21, width: 11 }
  ];

  test.each([
    ['turned as need be', false, 3, 12],
    ['of many small ones', false, 4, 6],
    ['with a finished edge', true, 3, 12]
  ])('%s', (_, finishedEdge, seed, longest) => {
    const next = seededNumbers(seed);
    const whole = (from: number, to: number): number => from + Math.floor((to - from + 1) * next());
    for (let round = 0; round < 60; round++) {
      const { saw, gap, length, width } = SAWS[round % SAWS.length]!;
      const pieces = Array.from({ length: whole(2, 7) }, (): Tenths => {
        const wide = whole(2, 10);
        return { length: whole(2, longest), width: wide, bottom: whole(0, 10 - wide) };
      });
      const demand = pieces.map((piece): readonly [Piece, number] => [
        rectangle(10 * piece.length - gap, 10 * piece.width - gap, 0, 10 * piece.bottom),
        1
      ]);
      const { unitsUsed, lowerBound, proven } = nest(demand, { saw, finishedEdge });
      const fewest = fewestUnits(pieces, length, width, finishedEdge);
      expect({ round, pieces, unitsUsed, proven }).toEqual({ round, pieces, unitsUsed: fewest, proven: true });
      expect(lowerBound).toBeLessThanOrEqual(fewest);
    }
  });
});

describe('Pieces of any shape are nested so that they can be cut', () => {
  /** A convex piece with corners on the sides of a block, some sides bowed outward as far as the block reaches. */
  function randomPiece(next: () => number): Piece {
    const [left, right] = [100 * next() ** 2, 200 - 150 * next()];
    const [lean, back] = [Math.min(left, 30) * (next() - 0.5), 60 * (next() - 0.5)];
    const corners: [number, number][] = [
      [Math.max(0, left + lean), 0],
      [Math.min(200, Math.max(left + 20, right + back)), 0],
      [Math.max(left + 20, right - Math.max(0, back)), 40 + 60 * next()],
      [left, 100 * Math.max(0.4, next())]
    ];
    const piece = cornered(...corners);
    const bowed = (from: Point, to: Point, rise: number) => arcByBow(from, to, rise, 'right');
    return pieceOf(
      piece.outline.map((side, index) =>
        index === 3 && left > 40 && next() < 0.5 ? (bowed(side.from, side.to, 0.008) ?? side) : side
      )
    );
  }

  test.each([
    ['loosely', { saw: 3 }],
    ['with nothing lost to the saw', { saw: 0 }],
    ['with a finished edge', { saw: 3, finishedEdge: true }],
    ['with little work', { saw: 3, workLimit: 60 }]
  ] satisfies [string, Case][])('%s', (_, given) => {
    const next = seededNumbers(8);
    let shared = 0;
    for (let round = 0; round < 40; round++) {
      const demand = Array.from({ length: 1 + Math.floor(9 * next()) }, (): readonly [Piece, number] => [
        randomPiece(next),
        1 + Math.floor(3 * next() ** 3)
      ]);
      const { unitsUsed } = nest(demand, given);
      shared += demand.reduce((sum, [, count]) => sum + count, 0) - unitsUsed;
    }
    // Some pieces do share a unit, so that something has been looked at.
    expect(shared).toBeGreaterThan(20);
  });

  test('a hair more or less never makes the bound too high: pieces that fill units exactly', () => {
    for (let parts = 2; parts <= 12; parts++) {
      const { unitsUsed, lowerBound } = nest([[rectangle(200 / parts, 100), 5 * parts]], { saw: 0 });
      expect({ parts, unitsUsed, lowerBound }).toEqual({ parts, unitsUsed: 5, lowerBound: 5 });
    }
  });
});
