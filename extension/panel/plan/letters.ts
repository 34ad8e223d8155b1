// Letters on the screen: the size they have, and where they find room.
import { BOLD, textWidth } from '../../../language/drawing/lettering.ts';
import type { Content } from '../../../server/plan-protocol.ts';
import { tenth } from './corners.ts';
import type { Place, Size } from './view.ts';

/** Pixels. */
export const LETTER_SIZE = 12;
/** Smaller letters are not read. */
export const SMALLEST_LETTERS = 9;

export interface Letters {
  readonly text: string;
  /** Half of their height up. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  /** Radians clockwise, as the screen turns. */
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold: boolean;
  /** Key of what they tell of. */
  readonly thing: string;
}

export function widthOf({ text, size, bold }: Pick<Letters, 'text' | 'size' | 'bold'>): number {
  return textWidth(text) * size * (bold ? BOLD : 1);
}

/** Turned so that they can be read: what would stand on its head is turned about, and begins at its other end. */
export function upright(
  turn: number,
  anchor: Letters['anchor']
): { readonly turn: number; readonly anchor: Letters['anchor'] } {
  const full = Math.atan2(Math.sin(turn), Math.cos(turn));
  if (full > -Math.PI / 2 - HAIR && full <= Math.PI / 2 - HAIR) return { turn: full, anchor };
  const other = { start: 'end', middle: 'middle', end: 'start' } as const;
  return { turn: full > 0 ? full - Math.PI : full + Math.PI, anchor: other[anchor] };
}

/** An upright text is read from the right of the sheet, whatever was lost in rounding, and so is one that stands a little askew. */
const HAIR = 0.09;

/** Beside a sign, pixels. */
const BESIDE = 13;
/** Above the line that letters run along, and from line to line, as shares of their size. */
const ABOVE = 1.1;
const NEXT_LINE = 1.3;
/** Beside an arrow, pixels: clear of its head. */
const BESIDE_ARROW = 18;
/** Kept free before and behind letters, pixels: two texts in a row don't read as one. */
const BETWEEN = 3;

/** How far from a sign letters reach that stand beside it, pixels. */
export function reachBeside(letters: Pick<Letters, 'text' | 'size' | 'bold'>): number {
  return BESIDE + widthOf(letters) + BETWEEN;
}

/** Where letters may stand, the best place first: what is told of a line beside it, what is told of a point about it. */
export function waysOf(letters: Letters, content: Content, isAlongLine: boolean): readonly Letters[] {
  const { x, y, size, turn } = letters;
  const off = (down: number): Letters => ({ ...letters, x: x - down * Math.sin(turn), y: y + down * Math.cos(turn) });
  if (content === 'falls') return [off(-BESIDE_ARROW), off(BESIDE_ARROW)];
  if (content === 'dimensions') return [off(-ABOVE * size), off(ABOVE * size)];
  if (isAlongLine) return [off(-ABOVE * size), off(ABOVE * size), letters];
  if (content !== 'points' && content !== 'heights') return [letters, off(-NEXT_LINE * size), off(NEXT_LINE * size)];
  const about = (right: number, down: number, anchor: Letters['anchor']): Letters => ({
    ...letters,
    x: x + right,
    y: y + down,
    turn: 0,
    anchor
  });
  return [
    about(BESIDE, -BESIDE, 'start'),
    about(-BESIDE, -BESIDE, 'end'),
    about(BESIDE, BESIDE, 'start'),
    about(-BESIDE, BESIDE, 'end'),
    about(0, -BESIDE - size / 2, 'middle'),
    about(0, BESIDE + size / 2, 'middle')
  ];
}

/** Squares of the screen in which taken places are looked up, pixels. */
const SQUARE = 32;

export type Box = readonly [number, number, number, number];

/** Where on the screen something stands that no letters may lie over. */
export class TakenPlaces {
  private readonly squares = new Map<number, Box[]>();

  isFree(boxes: readonly Box[]): boolean {
    return boxes.every(box =>
      this.under(box).every(square => !this.squares.get(square)?.some(other => overlap(box, other)))
    );
  }

  take(boxes: readonly Box[]): void {
    for (const box of boxes) {
      for (const square of this.under(box)) {
        const known = this.squares.get(square);
        if (known === undefined) this.squares.set(square, [box]);
        else known.push(box);
      }
    }
  }

  private under([left, top, right, bottom]: Box): number[] {
    const squares: number[] = [];
    for (let column = Math.floor(left / SQUARE); column <= Math.floor(right / SQUARE); column++) {
      for (let row = Math.floor(top / SQUARE); row <= Math.floor(bottom / SQUARE); row++) {
        squares.push(column * 65_536 + row);
      }
    }
    return squares;
  }
}

function overlap(one: Box, other: Box): boolean {
  return one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3];
}

/** The boxes that letters stand in: one if they are level, else a row of small ones along them. */
export function boxesOf(letters: Letters): Box[] {
  const own = widthOf(letters);
  const width = own + 2 * BETWEEN;
  const half = letters.size * 0.55;
  const begins = (letters.anchor === 'start' ? 0 : letters.anchor === 'middle' ? -own / 2 : -own) - BETWEEN;
  if (Math.abs(Math.sin(letters.turn)) < 0.01)
    return [[letters.x + begins, letters.y - half, letters.x + begins + width, letters.y + half]];
  const parts = Math.max(1, Math.ceil(width / (2 * half)));
  return Array.from({ length: parts }, (_, part): Box => {
    const along = begins + ((part + 0.5) * width) / parts;
    const [x, y] = [letters.x + along * Math.cos(letters.turn), letters.y + along * Math.sin(letters.turn)];
    return [x - half, y - half, x + half, y + half];
  });
}

export function boxAbout({ x, y }: Place, half: number): Box {
  return [x - half, y - half, x + half, y + half];
}

/** Whether all of it is seen. */
export function isInView([left, top, right, bottom]: Box, { width, height }: Size): boolean {
  return left >= 0 && top >= 0 && right <= width && bottom <= height;
}

/** Whether a place of the screen lies on letters. */
export function isOnLetters(letters: Letters, { x, y }: Place): boolean {
  return boxesOf(letters).some(([left, top, right, bottom]) => x >= left && x <= right && y >= top && y <= bottom);
}

/** Height of figures over the line they stand on, half of it, as a share of their size: SVG places text by that line. */
const HALF_FIGURE = 0.36;

/** How SVG is told where letters stand. */
export function placeOfLetters({ x, y, size, turn }: Letters): {
  readonly x: number;
  readonly y: number;
  readonly transform?: string;
} {
  const base = tenth(y + size * HALF_FIGURE);
  if (Math.abs(turn) < 1e-4) return { x: tenth(x), y: base };
  return { x: tenth(x), y: base, transform: `rotate(${((turn * 180) / Math.PI).toFixed(2)} ${tenth(x)} ${tenth(y)})` };
}
