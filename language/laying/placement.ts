import {
  type Bounds,
  type Frame,
  loopOfPath,
  outOfFrame,
  type Path,
  type PathPiece,
  type Point,
  reversedLoop
} from '../geometry/index.ts';
import type { Piece, Placement } from './laid.ts';

/** How a unit lies in a frame: its length along the courses, or standing across them. */
interface Lying {
  readonly standing: boolean;
}

/**
 * The place on the plan of a unit that fills a box of a frame. The unit's own frame is never mirrored, so in a frame
 * whose courses follow each other to the right it begins at another corner of the box.
 */
export function placedUnit(frame: Frame, { standing }: Lying, { left, right, bottom, top }: Bounds): Placement {
  const corner = {
    x: standing && !frame.mirrored ? right : left,
    y: frame.mirrored && !standing ? top : bottom
  };
  const quarter = frame.mirrored ? -Math.PI / 2 : Math.PI / 2;
  return { ...outOfFrame(frame, corner), direction: frame.direction + (standing ? quarter : 0) };
}

/** The step on the plan of so many metres along the courses of a frame. */
export function stepAlong({ direction }: Frame, metres: number): Point {
  return { x: metres * Math.cos(direction), y: metres * Math.sin(direction) };
}

/** A piece found in a box of a frame, as it is cut out of the unit that fills the box. */
export function pieceIn(frame: Frame, lying: Lying, box: Bounds, piece: PathPiece): Piece {
  const inUnit = (path: Path): Piece['outline'] => {
    const loop = loopOfPath(path).map(({ from, to, arc }) => {
      const ends = { from: ownPlace(frame, lying, box, from), to: ownPlace(frame, lying, box, to) };
      if (arc === undefined) return ends;
      const centre = ownPlace(frame, lying, box, arc.centre);
      return { ...ends, arc: { centre, turn: frame.mirrored ? -arc.turn : arc.turn } };
    });
    return frame.mirrored ? reversedLoop(loop) : loop;
  };
  return { outline: inUnit(piece.rim), holes: piece.holes.map(inUnit), area: piece.area };
}

/** A place of the frame as seen from the corner of the unit that {@link placedUnit} puts there. */
function ownPlace(
  { mirrored }: Frame,
  { standing }: Lying,
  { left, right, bottom, top }: Bounds,
  { x, y }: Point
): Point {
  if (standing) return { x: y - bottom, y: mirrored ? x - left : right - x };
  return { x: x - left, y: mirrored ? top - y : y - bottom };
}
