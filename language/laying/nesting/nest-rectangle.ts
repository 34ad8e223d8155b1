import { moveTo, turnedSize } from './nest-blank.ts';
import { above, addUnlessWorse, beside, type Block, blanksIn, blockOfOne, fitsIn, type Room } from './nest-block.ts';
import { type Cutting, isOver, type Work } from './nest-cutting.ts';
import { gapOf, MOST_SEARCHED, type PieceKind } from './nest-kinds.ts';
import { keyOf, parted, partingsOf, type PieceSet, setOf, sizeOf, without } from './nest-sets.ts';
import { addSlantedPairs } from './nest-slanted.ts';
import type { NestingInputs } from './nested.ts';

/**
 * The most pieces that are parted in all ways, in small demands and in others. Of more pieces, one or those of one kind
 * at a time are parted from the rest.
 */
const MOST_PARTED = 7;
const MOST_PARTED_OF_MANY = 4;

/** The same for equal pieces: there are as many ways as pieces only. A bound counts on all of them being tried. */
export const MOST_OF_A_KIND = 100;

/** The most blocks kept for a set of unequal pieces: seven rectangles seldom have half as many. */
const MOST_BLOCKS = 50;

/**
 * Cutting of rectangular units. For each set of pieces it knows the blocks it can be cut from that no other block beats
 * both ways: pieces alone, two on either side of a slanted cut, or two blocks on either side of a straight one. That is
 * all there is for rectangles. Of two pieces with slanted sides it finds every pair that fits a unit, of more pieces
 * pairs and boxes only.
 */
export function rectangleCutting(inputs: NestingInputs, kinds: readonly PieceKind[], work: Work): Cutting {
  const { unit, finishedEdge } = inputs;
  const room: Room = { length: unit.length, width: unit.width, gap: gapOf(inputs), keepsAcross: finishedEdge };
  const known = new Map<string, readonly Block[]>();
  const isSmall = kinds.reduce((sum, { count }) => sum + count, 0) <= MOST_SEARCHED;
  const mostParted = isSmall ? MOST_PARTED : MOST_PARTED_OF_MANY;
  let exact = true;

  const blocksOf = (set: PieceSet): readonly Block[] => {
    const key = keyOf(set);
    const before = known.get(key);
    if (before) return before;
    const blocks = sizeOf(set) === 1 ? alone(set) : together(set);
    known.set(key, blocks);
    return blocks;
  };

  const alone = (set: PieceSet): Block[] => {
    const { kind } = set[0]!;
    const { blank } = kinds[kind]!;
    // In its own place a piece always fits, whatever rounding says.
    const turns = finishedEdge || !fitsIn(room, turnedSize(blank, 1)) ? [0] : [0, 1];
    return turns.map(turn => blockOfOne(kind, blank, turn, room));
  };

  const together = (set: PieceSet): Block[] => {
    const share = set.reduce((sum, { kind, count }) => sum + count * kinds[kind]!.share, 0);
    if (share > 1) return [];
    const found: Block[] = [];
    const mostKept = set.length === 1 ? Infinity : MOST_BLOCKS;
    for (const [one, other] of partingsToTry(set)) {
      const ones = blocksOf(one);
      const others = ones.length > 0 ? blocksOf(other) : [];
      // What can't be cut from a unit can't be cut from it with more.
      if (others.length === 0) return [];
      for (const first of ones) for (const second of others) join(first, second, found, mostKept);
    }
    if (sizeOf(set) === 2) addSlantedPairs(found, kindAt(set, 0), kindAt(set, -1), room, work);
    if (found.length === 0 && sizeOf(set) > 2 && !set.every(({ kind }) => kinds[kind]!.blank.isBox)) exact = false;
    return found;
  };

  const join = (first: Block, second: Block, found: Block[], mostKept: number): void => {
    work.spent++;
    for (const block of [beside(first, second, room), above(first, second, room)]) {
      if (!block || !fitsIn(room, block)) continue;
      if (found.length < mostKept) addUnlessWorse(found, block);
      else exact = false;
    }
  };

  const partingsToTry = (set: PieceSet): (readonly [PieceSet, PieceSet])[] => {
    if (!isOver(work) && isTriedInAllWays(set, mostParted)) {
      // The second half of the ways is the first with the parts exchanged.
      return Array.from({ length: Math.ceil(partingsOf(set) / 2) - 1 }, (_, way) => parted(set, way + 1));
    }
    exact = false;
    const oneOff = set.map(({ kind }): [PieceSet, PieceSet] => [setOf(kind, 1), without(set, kind, 1)]);
    if (isOver(work)) return oneOff.filter(([, rest]) => known.has(keyOf(rest))).slice(0, 1);
    const kindOff = set.map(({ kind, count }): [PieceSet, PieceSet] => [setOf(kind, count), without(set, kind, count)]);
    return [...oneOff, ...kindOff.filter(([, rest]) => rest.length > 0)];
  };

  const kindAt = (set: PieceSet, place: number) => {
    const { kind } = set.at(place)!;
    return { kind, blank: kinds[kind]!.blank };
  };

  return {
    fits: set => blocksOf(set).length > 0,
    layout: set =>
      blocksOf(set)
        .slice(0, 1)
        .flatMap(block => blanksIn(block, room))
        .map(({ kind, turn, x, y }) => ({ kind, turn, ...moveTo(kinds[kind]!.blank, turn, { x, y }) })),
    isExact: () => exact
  };
}

function isTriedInAllWays(set: PieceSet, mostParted: number): boolean {
  return sizeOf(set) <= mostParted || (set.length === 1 && sizeOf(set) <= MOST_OF_A_KIND);
}
