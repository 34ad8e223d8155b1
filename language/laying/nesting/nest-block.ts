import { type Blank, turnedSize } from './nest-blank.ts';

/** What a block must fit into: a unit's size, what pieces stay apart, and whether they keep their place across it. */
export interface Room {
  readonly length: number;
  readonly width: number;
  readonly gap: number;
  readonly keepsAcross: boolean;
}

/** A piece in a block: its kind, degrees of turn, and where the lower left corner of its turned box comes. */
export interface PlacedBlank {
  readonly kind: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

/** A size in metres. The bottom is nought but where pieces keep their place across. */
export interface Box {
  readonly length: number;
  readonly width: number;
  readonly bottom: number;
}

/** A rectangle that pieces can be cut from. */
export interface Block extends Box {
  readonly made: Made;
}

type Made =
  | { readonly of: 'blanks'; readonly blanks: readonly PlacedBlank[] }
  | { readonly of: 'beside' | 'above'; readonly first: Block; readonly second: Block };

/** In metres: rounding that must not keep pieces from filling a unit exactly. */
const ROUNDING = 1e-9;

export function fitsIn(room: Room, { length, width }: { length: number; width: number }): boolean {
  return length <= room.length + ROUNDING && width <= room.width + ROUNDING;
}

export function blockOfOne(kind: number, blank: Blank, quarterTurns: number, { keepsAcross }: Room): Block {
  const bottom = keepsAcross ? blank.bottom : 0;
  const blanks = [{ kind, turn: 90 * quarterTurns, x: 0, y: bottom }];
  return { ...turnedSize(blank, quarterTurns), bottom, made: { of: 'blanks', blanks } };
}

/** Two blocks with a cut across the unit between them. */
export function beside(first: Block, second: Block, { gap }: Room): Block {
  const bottom = Math.min(first.bottom, second.bottom);
  return {
    length: first.length + gap + second.length,
    width: Math.max(topOf(first), topOf(second)) - bottom,
    bottom,
    made: { of: 'beside', first, second }
  };
}

/** Two blocks with a cut along the unit between them; undefined where they keep their places, which have no room for it. */
export function above(first: Block, second: Block, { gap, keepsAcross }: Room): Block | undefined {
  const length = Math.max(first.length, second.length);
  const made = { of: 'above', first, second } as const;
  if (!keepsAcross) return { length, width: first.width + gap + second.width, bottom: 0, made };
  const [lower, upper] = first.bottom < second.bottom ? [first, second] : [second, first];
  if (topOf(lower) + gap > upper.bottom + ROUNDING) return undefined;
  return { length, width: topOf(upper) - lower.bottom, bottom: lower.bottom, made };
}

/** Adds a block to those found, unless one of them is no larger; those that it is no larger than go. */
export function addUnlessWorse(found: Block[], block: Block): void {
  if (isBeaten(found, block)) return;
  const kept = found.filter(other => !isNoLarger(block, other));
  found.splice(0, found.length, ...kept, block);
}

/** Whether one of the blocks found is no larger than a box. */
export function isBeaten(found: readonly Block[], box: Box): boolean {
  return found.some(block => isNoLarger(block, box));
}

function isNoLarger(one: Box, other: Box): boolean {
  return (
    one.length <= other.length + ROUNDING &&
    one.bottom >= other.bottom - ROUNDING &&
    topOf(one) <= topOf(other) + ROUNDING
  );
}

function topOf({ bottom, width }: Box): number {
  return bottom + width;
}

/** The places of all pieces of a block that lies in the lower left corner of a unit. */
export function blanksIn(block: Block, room: Room): PlacedBlank[] {
  const blanks: PlacedBlank[] = [];
  const put = ({ length, width, made }: Block, x: number, y: number): void => {
    if (made.of === 'blanks') {
      blanks.push(...made.blanks.map(blank => ({ ...blank, x: x + blank.x, y: y + blank.y })));
      return;
    }
    put(made.first, x, y);
    if (made.of === 'beside') put(made.second, x + length - made.second.length, y);
    else put(made.second, x, room.keepsAcross ? y : y + width - made.second.width);
  };
  put(block, 0, 0);
  return blanks;
}
