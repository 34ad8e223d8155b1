import type { Point } from '../../geometry/index.ts';
import { type Blank, type Corners, turnedSize } from './nest-blank.ts';
import { addUnlessWorse, type Block, type Box, fitsIn, isBeaten, type PlacedBlank, type Room } from './nest-block.ts';
import type { Work } from './nest-cutting.ts';

/** A blank and the kind of its piece. */
interface Kind {
  readonly kind: number;
  readonly blank: Blank;
}

/** A cut along a slanted side of one of two pieces: the other may be moved by (x, y) where `along * x + across * y >= least`. */
interface SlantedCut {
  readonly along: number;
  readonly across: number;
  readonly least: number;
}

/** Places that are tried along each cut. */
const PLACES_PER_CUT = 12;

/** In metres, or of a direction: less is rounding. */
const ROUNDING = 1e-9;

/**
 * Adds to the blocks found those that two pieces can be cut from with one slanted cut between them, the second piece
 * turned each way against the first and slid along the cut. Where the two alone fit a unit, one of the blocks does.
 */
export function addSlantedPairs(found: Block[], one: Kind, other: Kind, room: Room, work: Work): void {
  if (one.blank.isBox && other.blank.isBox) return;
  for (const turn of room.keepsAcross ? [0] : [0, 1, 2, 3]) {
    const still = one.blank.turned[0];
    const slid = other.blank.turned[turn]!;
    const cuts = [...cutsAlong(still, slid, room.gap, 1), ...cutsAlong(slid, still, room.gap, -1)];
    work.spent += PLACES_PER_CUT * cuts.length;
    const pair = {
      still: turnedSize(one.blank, 0),
      slid: turnedSize(other.blank, turn),
      offset: other.blank.bottom - one.blank.bottom
    };
    const isNew = (box: Box): boolean => fitsIn(room, box) && !isBeaten(found, box);
    tryShifts(cuts, pair, room, shift => {
      const box = boxOf(pair, shift, room.keepsAcross ? one.blank.bottom : undefined);
      if (isNew(box)) addUnlessWorse(found, paired(one, other, turn, box, shift));
      const turnedBox = { length: box.width, width: box.length, bottom: 0 };
      if (room.keepsAcross || !isNew(turnedBox)) return;
      addUnlessWorse(found, quarterTurned(paired(one, other, turn, box, shift), [one, other]));
    });
  }
}

/**
 * The cuts along slanted sides of a piece, with what lies past them kept off by the gap. With a way of -1 it is the
 * piece itself that is moved against the other.
 */
function cutsAlong(piece: Corners, past: Corners, gap: number, way: 1 | -1): SlantedCut[] {
  return piece.flatMap((from, index) => {
    const to = piece[(index + 1) % piece.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const x = (to.y - from.y) / length;
    const y = (from.x - to.x) / length;
    if (!(Math.min(Math.abs(x), Math.abs(y)) > ROUNDING)) return [];
    const nearest = past.reduce((least, point) => Math.min(least, x * point.x + y * point.y), Infinity);
    return [{ along: way * x, across: way * y, least: x * from.x + y * from.y + gap - nearest }];
  });
}

/**
 * Calls back with shifts of the second piece against the first, as near as a cut lets it. Along a cut the block grows
 * evenly but where two ends of the boxes are level, so these and the ends of what a unit has room for are enough.
 */
function tryShifts(cuts: readonly SlantedCut[], pair: Pair, room: Room, tried: (shift: Point) => void): void {
  const xs = levels(pair.still.length, pair.slid.length, room);
  const ys = room.keepsAcross ? [pair.offset] : levels(pair.still.width, pair.slid.width, room);
  for (const x of xs.slice(0, 2)) {
    for (const y of ys.slice(0, 2)) {
      if (cuts.some(cut => cut.along * x + cut.across * y >= cut.least - ROUNDING)) tried({ x, y });
    }
  }
  for (const { along, across, least } of cuts) {
    for (const y of ys) tried({ x: (least - across * y) / along, y });
    if (!room.keepsAcross) for (const x of xs) tried({ x, y: (least - along * x) / across });
  }
}

/** Where ends of two lengths are level, then where both reach over the room from end to end. */
function levels(one: number, other: number, { length, width }: Room): number[] {
  return [0, one - other, length - other, one - length, width - other, one - width];
}

/** Two boxes, the first at nought, and where the second lies across the unit when pieces keep their places. */
interface Pair {
  readonly still: Size;
  readonly slid: Size;
  readonly offset: number;
}

interface Size {
  readonly length: number;
  readonly width: number;
}

/** The box round both: it lies at nought, unless the first keeps its own bottom. */
function boxOf({ still, slid }: Pair, { x, y }: Point, bottom?: number): Box {
  const low = Math.min(0, y);
  return {
    length: Math.max(still.length, x + slid.length) - Math.min(0, x),
    width: Math.max(still.width, y + slid.width) - low,
    bottom: bottom === undefined ? 0 : bottom + low
  };
}

function paired(one: Kind, other: Kind, turn: number, box: Box, shift: Point): Block {
  const left = Math.min(0, shift.x);
  const first = box.bottom - Math.min(0, shift.y);
  const blanks = [
    { kind: one.kind, turn: 0, x: -left, y: first },
    { kind: other.kind, turn: 90 * turn, x: shift.x - left, y: first + shift.y }
  ];
  return { ...box, made: { of: 'blanks', blanks } };
}

/** A pair turned by a quarter turn as a whole. */
function quarterTurned(pair: Block, kinds: readonly [Kind, Kind]): Block {
  const { made } = pair;
  const blanks = made.of === 'blanks' ? made.blanks : [];
  return {
    length: pair.width,
    width: pair.length,
    bottom: 0,
    made: {
      of: 'blanks',
      blanks: blanks.map(({ kind, turn, x, y }, index): PlacedBlank => {
        const { width } = turnedSize(kinds[index]!.blank, turn / 90);
        return { kind, turn: (turn + 90) % 360, x: pair.width - y - width, y: x };
      })
    }
  };
}
