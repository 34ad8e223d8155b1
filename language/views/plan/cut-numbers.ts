import type { Label, Shape, Sheet } from '../../drawing/drawing.ts';
import { chordCorners } from '../../drawing/chord-corners.ts';
import { BOLD, LETTER_HEIGHT, textWidth } from '../../drawing/lettering.ts';
import { loopOnPlan } from '../../drawing/on-plan.ts';
import { type Room, roomFor } from '../../drawing/room.ts';
import { type Box, lineBox, Taken } from '../../drawing/taken.ts';
import type { Point } from '../../geometry/index.ts';
import type { Piece, Placement } from '../../laying/laid.ts';
import { calledOut } from './call-out.ts';
import { ground } from './page.ts';
import type { PlanArea } from './plan-input.ts';
import { SQUARE, type Surroundings } from './surroundings.ts';
import { cutKey } from './unit-shapes.ts';

/** Sizes of numbers, mm on paper: the largest that finds room; below the last nothing can be read. */
const SIZES = [2.5, 2.1, 1.8, 1.5];

/** A number beside its piece, with a line to it. */
const BESIDE_SIZE = 1.9;

/** Pieces of one number less than this apart, mm on paper, have one number beside them for all. */
const NEAR = 16;

/** More lines than this from numbers to pieces are a thicket. */
const MOST_BESIDE = 150;

/** Level text is taken unless turned text can be so many times larger. */
const WORTH_TURNING = 1.25;

/** Free space round a number, in sizes of its letters. */
const CLEAR = 0.3;

/** A piece that wants its number. */
export interface Numbered {
  readonly key: string;
  readonly text: string;
  readonly corners: readonly (readonly Point[])[];
  readonly rooms: readonly TurnedRoom[];
}

/** How large letters can be, m on the ground, and where, for one turn of the text. */
interface TurnedRoom extends Room {
  readonly turn: number;
}

/** All pieces of cut units with the room in them: it depends on no scale. */
export function numberedPieces(area: PlanArea): Numbered[] {
  return area.parts.flatMap(part =>
    part.laid.cuts.flatMap(({ at, pieces }, index) => {
      const text = String(part.numbers[index]);
      return pieces.map((piece, order): Numbered => {
        const corners = cornersOfPiece(piece, at);
        const rooms = roomsIn(corners, at, text);
        const key = `${cutKey(area, part, index)}/number${order === 0 ? '' : `/${order + 1}`}`;
        return { key, text, corners, rooms };
      });
    })
  );
}

function cornersOfPiece({ outline, holes }: Piece, at: Placement): Point[][] {
  return [outline, ...holes].map(loop => chordCorners(loopOnPlan(loop, at)));
}

function roomsIn(corners: readonly (readonly Point[])[], at: Placement, text: string): TurnedRoom[] {
  const box = { width: textWidth(text) * BOLD + CLEAR, height: LETTER_HEIGHT + CLEAR };
  return turnsFor(at.direction).flatMap(turn => {
    const room = roomFor(corners, box, turn);
    return room ? [{ ...room, turn }] : [];
  });
}

/** Where a text can be read best in a piece of a unit; undefined where it has no room at all. */
export function roomOfPiece(piece: Piece, at: Placement, text: string): TurnedRoom | undefined {
  return roomToRead(roomsIn(cornersOfPiece(piece, at), at, text));
}

/** Level, along the unit and across it, each so that it reads from below or from the right. */
function turnsFor(direction: number): number[] {
  const turns = [0, direction, direction + Math.PI / 2].map(upright);
  return turns.filter((turn, index) => turns.findIndex(other => Math.abs(other - turn) < SAME_TURN) === index);
}

const SAME_TURN = 1e-6;

/** The same line of text in a turn over -90 degrees, and up to 90. */
export function upright(turn: number): number {
  const half = turn - Math.PI * Math.floor(turn / Math.PI);
  return half > Math.PI / 2 + SAME_TURN ? half - Math.PI : half;
}

export interface NumbersPlaced {
  readonly numbers: Label[];
  readonly leaders: Shape[];
  /** Small pieces near one of the same number that has it beside it. */
  readonly alike: number;
  /** Pieces too small for their number, with no room beside them either. */
  readonly without: number;
}

/** Numbers in their pieces where they can be read, else beside them at the end of a line. */
export function placeNumbers(pieces: readonly Numbered[], around: Surroundings): NumbersPlaced {
  const { sheet, taken } = around;
  const numbers: Label[] = [];
  const left: Numbered[] = [];
  for (const piece of pieces) {
    const label = labelWithin(piece, sheet);
    if (!label || !taken.isFree(labelBox(label))) {
      left.push(piece);
      continue;
    }
    taken.add(labelBox(label));
    numbers.push(label);
  }
  const beside = left.length === 0 ? NONE_BESIDE : numbersBeside(left, rimsOf(pieces, around), around);
  return { ...beside, numbers: [...numbers, ...beside.numbers] };
}

const NONE_BESIDE: NumbersPlaced = { numbers: [], leaders: [], alike: 0, without: 0 };

/** The rims of pieces: a number from elsewhere that lay across one would seem to be theirs. */
function rimsOf(pieces: readonly Numbered[], { sheet }: Surroundings): Taken {
  const rims = new Taken(ground(sheet, SQUARE));
  for (const corners of pieces.flatMap(piece => piece.corners)) {
    corners.forEach((from, index) => rims.add(lineBox(from, corners[(index + 1) % corners.length]!)));
  }
  return rims;
}

/** Numbers at the end of a line, one for pieces of the same number that lie near each other. */
function numbersBeside(pieces: readonly Numbered[], spared: Taken, around: Surroundings): NumbersPlaced {
  const { sheet } = around;
  const numbers: Label[] = [];
  const leaders: Shape[] = [];
  const called = new Map<string, Point[]>();
  let alike = 0;
  let without = 0;
  for (const piece of pieces) {
    const from = piece.rooms[0]?.at;
    const known = called.get(piece.text) ?? [];
    if (from && known.some(({ x, y }) => Math.hypot(x - from.x, y - from.y) <= ground(sheet, NEAR))) {
      alike++;
      continue;
    }
    const label = from && numberLabel(piece, from, ground(sheet, BESIDE_SIZE), 0);
    const placed =
      label && numbers.length < MOST_BESIDE ? calledOut({ label, from, boxOf: labelBox, around, spared }) : undefined;
    if (!from || !placed) {
      without++;
      continue;
    }
    numbers.push(placed.label);
    leaders.push(...placed.leader);
    called.set(piece.text, [...known, from]);
  }
  return { numbers, leaders, alike, without };
}

/** The number in its piece, where it is large enough to be read. */
function labelWithin(piece: Numbered, sheet: Sheet): Label | undefined {
  const room = roomToRead(piece.rooms);
  const size = room && SIZES.find(paper => ground(sheet, paper) <= room.times);
  return room && size !== undefined ? numberLabel(piece, room.at, ground(sheet, size), room.turn) : undefined;
}

function roomToRead(rooms: readonly TurnedRoom[]): TurnedRoom | undefined {
  const [level, ...turned] = rooms;
  return turned.reduce((best, room) => (best && best.times * WORTH_TURNING >= room.times ? best : room), level);
}

function numberLabel({ key, text }: Numbered, at: Point, size: number, turn: number): Label {
  return { kind: 'label', key, ink: 'number', at, text, size, turn, anchor: 'middle' };
}

/** What a label in the middle of its place takes up. */
export function labelBox({ at, text, size, turn }: Label): Box {
  return { at, width: textWidth(text) * BOLD * size, height: (LETTER_HEIGHT + CLEAR) * size, turn };
}
