import { distance, type Point, type Side } from '../../geometry/index.ts';
import type { CornerCut, Mark, Marking, SlantingCut, SquareCut } from './marking-out.ts';
import { keepOf } from './marking-out-keep.ts';
import { markFrom, markOn } from './marking-out-marks.ts';
import { WITHIN } from './saw-lines.ts';
import type { CornerName, SideName, UnitCorner, UnitOutline, UnitSide } from './unit-shape.ts';

/** Where the line of a straight cut leaves a unit: at a corner, or on a side. */
type Exit = { readonly point: Point } & ({ readonly corner: CornerName } | { readonly side: UnitSide });

/** A straight cut right through a unit: where it meets its rim, and the corners on either hand; the piece lies left. */
export interface ThroughCut {
  readonly exits: readonly [Exit, Exit];
  readonly kept: readonly UnitCorner[];
  readonly lost: readonly UnitCorner[];
}

/** Metres that a point lies to the left of the line along a side. */
export function leftOf({ from, to }: Side, point: Point): number {
  const cross = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return cross / distance(from, to);
}

/** The cut along a straight side, prolonged to the rim of the unit. Undefined where it only grazes the unit. */
export function throughCut(side: Side, unit: UnitOutline): ThroughCut | undefined {
  const off = new Map(unit.corners.map(corner => [corner, leftOf(side, corner)]));
  const offOf = (corner: UnitCorner): number => off.get(corner)!;
  const exits = unit.sides.flatMap((edge): Exit[] => {
    const from = offOf(edge.from);
    const to = offOf(edge.to);
    if (Math.abs(from) <= WITHIN) return [{ point: edge.from, corner: edge.from.name }];
    if (Math.abs(to) <= WITHIN || from > 0 === to > 0) return [];
    const share = from / (from - to);
    const point = {
      x: edge.from.x + share * (edge.to.x - edge.from.x),
      y: edge.from.y + share * (edge.to.y - edge.from.y)
    };
    return [{ point, side: edge }];
  });
  const [first, second] = exits;
  const kept = unit.corners.filter(corner => offOf(corner) > WITHIN);
  const lost = unit.corners.filter(corner => offOf(corner) < -WITHIN);
  if (!first || !second || exits.length > 2 || kept.length === 0 || lost.length === 0) return undefined;
  return { exits: [first, second], kept, lost };
}

/** How a cut right through is marked: square, across a corner, or slanting. */
export function straightMarking(cut: ThroughCut, unit: UnitOutline): Marking {
  return squareCut(cut, unit) ?? cornerCut(cut) ?? slantingCut(cut, unit);
}

function squareCut({ exits: [a, b], kept }: ThroughCut, unit: UnitOutline): SquareCut | undefined {
  if (unit.shape !== 'rectangle') return undefined;
  const { length, width } = unit;
  if (Math.abs(a.point.x - b.point.x) <= WITHIN) {
    const at = (a.point.x + b.point.x) / 2;
    const keepsLeft = kept.every(corner => corner.x < at);
    return {
      kind: 'square-cut',
      across: 'length',
      size: keepsLeft ? at : length - at,
      keep: keepsLeft ? 'left' : 'right'
    };
  }
  if (Math.abs(a.point.y - b.point.y) <= WITHIN) {
    const at = (a.point.y + b.point.y) / 2;
    const keepsNear = kept.every(corner => corner.y < at);
    return { kind: 'square-cut', across: 'width', size: keepsNear ? at : width - at, keep: keepsNear ? 'near' : 'far' };
  }
  return undefined;
}

function cornerCut({ exits: [a, b], kept, lost }: ThroughCut): CornerCut | undefined {
  const keep = lost.length === 1 ? 'rest' : 'corner';
  const [corner, ...others] = keep === 'rest' ? lost : kept;
  if (!corner || others.length > 0 || !('side' in a) || !('side' in b)) return undefined;
  const fromCorner = ({ point, side }: { point: Point; side: UnitSide }): Mark =>
    markFrom(side, side.from === corner ? 'from' : 'to', point);
  return { kind: 'corner-cut', corner: corner.name, marks: inOrder(fromCorner(a), fromCorner(b)), keep };
}

function slantingCut({ exits: [a, b], kept }: ThroughCut, unit: UnitOutline): SlantingCut {
  // Of rectangles the end that stays is where a tape is held.
  const markOf = (exit: Exit): Mark => {
    if ('corner' in exit) return cornerMark(exit.corner, unit);
    const end = kept.includes(exit.side.from) ? 'from' : 'to';
    return unit.shape === 'rectangle' ? markFrom(exit.side, end, exit.point) : markOn(exit.side, exit.point);
  };
  return { kind: 'slanting-cut', marks: inOrder(markOf(a), markOf(b)), keep: keepOf(kept, unit)! };
}

function cornerMark(corner: CornerName, unit: UnitOutline): Mark {
  return { side: unit.sides.find(side => side.from.name === corner)!.name, from: corner, at: 0 };
}

/** The near side is marked first, then the ends, the far side last. */
const MARKED: readonly SideName[] = [
  'near',
  'left near',
  'left',
  'right near',
  'right',
  'left far',
  'right far',
  'far'
];

function inOrder(a: Mark, b: Mark): readonly [Mark, Mark] {
  return MARKED.indexOf(a.side) <= MARKED.indexOf(b.side) ? [a, b] : [b, a];
}
