import {
  type Bounds,
  boundsOf,
  firstMomentOf,
  perimeterOf,
  type Point,
  type Side,
  turnedAbout
} from '../../geometry/index.ts';
import type { CutUnit, Piece } from '../laid.ts';
import { isOnUnitSide } from './saw-lines.ts';
import type { UnitOutline } from './unit-shape.ts';

/** A cut unit with what comparing it with others takes. Metres. */
export interface PreparedCut {
  /** Its place in the list that came in. */
  readonly index: number;
  readonly unit: string;
  readonly outline: UnitOutline;
  readonly pieces: readonly Piece[];
  /** Sides of all outlines and holes, sawn ones first: they tell two cuts apart soonest. */
  readonly sides: readonly Side[];
  readonly bounds: Bounds;
  readonly area: number;
  readonly sawLength: number;
  /** Metres round all outlines and holes. */
  readonly perimeter: number;
}

export function preparedCut({ unit, pieces }: CutUnit, index: number, outline: UnitOutline): PreparedCut {
  const all = pieces.flatMap(({ outline: rim, holes }) => [...rim, ...holes.flat()]);
  const sawn = all.filter(side => !isOnUnitSide(side, outline));
  const sides = [...sawn, ...all.filter(side => !sawn.includes(side))];
  return {
    index,
    unit,
    outline,
    pieces,
    sides,
    bounds: boundsOf(sides),
    area: pieces.reduce((sum, piece) => sum + piece.area, 0),
    sawLength: perimeterOf(sawn),
    perimeter: perimeterOf(sides)
  };
}

/** The sides of a cut whose unit is turned about its middle. */
export function turnedSidesOf(
  { sides, bounds, outline }: PreparedCut,
  turn: number
): Pick<PreparedCut, 'sides' | 'bounds'> {
  if (turn === 0) return { sides, bounds };
  const turned = turnedSides(sides, outline.centre, turn);
  return { sides: turned, bounds: boundsOf(turned) };
}

/** The same cut of a unit turned about its middle. */
export function turnedCut(cut: PreparedCut, turn: number): PreparedCut {
  if (turn === 0) return cut;
  const { centre } = cut.outline;
  const pieces = cut.pieces.map(piece => ({
    outline: turnedSides(piece.outline, centre, turn),
    holes: piece.holes.map(hole => turnedSides(hole, centre, turn)),
    area: piece.area
  }));
  return { ...cut, ...turnedSidesOf(cut, turn), pieces };
}

/** Places no further apart are the same but for rounding; shares of the unit. */
const SAME_PLACE = 1e-9;

/**
 * The turn of the unit that brings what is laid of it nearest to the left near corner; of a hexagon, to the left: cut
 * across the middle of its flat sides it keeps the left half.
 */
export function plainTurn({ sides, area, outline }: PreparedCut): number {
  const moment = firstMomentOf(sides);
  const { shape, length, width, centre, turns } = outline;
  const middle = { x: moment.x / area, y: moment.y / area };
  const lies = turns.map(turn => {
    const { x, y } = turnedAbout(middle, centre, turn);
    const [along, across] = [x / length, y / width];
    return { turn, places: shape === 'hexagon' ? [along, across] : [along + across, along] };
  });
  return lies.reduce((best, each) => (comesBefore(each.places, best.places) ? each : best)).turn;
}

function comesBefore(places: readonly number[], others: readonly number[]): boolean {
  const apart = places.map((place, index) => place - others[index]!).find(gap => Math.abs(gap) > SAME_PLACE);
  return apart !== undefined && apart < 0;
}

function turnedSides(sides: readonly Side[], centre: Point, turn: number): Side[] {
  const turned = (point: Point): Point => turnedAbout(point, centre, turn);
  return sides.map(({ from, to, arc }) => ({
    from: turned(from),
    to: turned(to),
    ...(arc && { arc: { centre: turned(arc.centre), turn: arc.turn } })
  }));
}
