import { distance, pointsOn, type Side } from '../../geometry/index.ts';
import type { Piece } from '../laid.ts';
import { curveMarking } from './marking-out-curve.ts';
import { circleMarking, openingMarking } from './marking-out-hole.ts';
import { keepOfLine } from './marking-out-keep.ts';
import { notchMarking } from './marking-out-notch.ts';
import { pathMarking } from './marking-out-path.ts';
import { leftOf, straightMarking, throughCut } from './marking-out-straight.ts';
import type { Cut, CutKind, End, SquareCut } from './marking-out.ts';
import { sawLinesOf, type SawLine, WITHIN } from './saw-lines.ts';
import type { UnitOutline } from './unit-shape.ts';

/** The cuts that make one of the pieces of a unit, in the order of its outline, holes last. */
export function cutsOf(piece: Piece, pieces: readonly Piece[], unit: UnitOutline): Cut[] {
  const round = sawLinesOf(piece.outline, unit).flatMap(line => cutsAlong(line, pieces, unit));
  const holes = piece.holes.flatMap(hole => sawLinesOf(hole, unit)).map(holeCut);
  return cutAtBothEnds([...round, ...holes], unit);
}

function cutsAlong(line: SawLine, pieces: readonly Piece[], unit: UnitOutline): Cut[] {
  return straightCuts(line, pieces, unit) ?? [shapedCut(line, unit)];
}

/** A line whose every side can be cut right through the unit, parting nothing that is laid. */
function straightCuts({ sides }: SawLine, pieces: readonly Piece[], unit: UnitOutline): Cut[] | undefined {
  const cuts: Cut[] = [];
  for (const side of sides) {
    const cut = !side.arc && partsNothing(side, pieces) ? throughCut(side, unit) : undefined;
    if (!cut) return undefined;
    const offcut = [...cut.lost, ...cut.exits.map(exit => exit.point)];
    cuts.push({ kind: 'straight', marking: straightMarking(cut, unit), offcut });
  }
  return cuts;
}

function partsNothing(side: Side, pieces: readonly Piece[]): boolean {
  return (
    distance(side.from, side.to) > 0 &&
    pieces.every(piece => {
      const off = pointsOn(piece.outline).map(point => leftOf(side, point));
      return off.every(each => each >= -WITHIN) || off.every(each => each <= WITHIN);
    })
  );
}

function shapedCut(line: SawLine, unit: UnitOutline): Cut {
  const { sides } = line;
  const bowed = circleMarking(sides) ?? curveMarking(line, unit);
  if (bowed) return { kind: 'curved', marking: bowed };
  const notch = line.closed ? undefined : notchMarking(sides, unit);
  if (notch) return { kind: 'notched', marking: notch };
  return { kind: kindOfPath(line), marking: pathMarking(line, keepOfLine(line, unit)) };
}

/** A straight saw that runs into an inner corner makes a notch. */
function kindOfPath({ sides, closed }: SawLine): CutKind {
  if (sides.some(side => side.arc)) return 'curved';
  const turns = sides.map((side, index) => {
    const next = sides[index + 1] ?? (closed ? sides[0] : undefined);
    return next ? leftOf(side, next.to) : 0;
  });
  return turns.some(turn => turn < -WITHIN) ? 'notched' : 'several cuts';
}

function holeCut(line: SawLine): Cut {
  const marking = circleMarking(line.sides) ?? openingMarking(line.sides) ?? pathMarking(line, 'outside');
  return { kind: 'with a hole', marking };
}

/** Two square cuts the same way leave no end to measure from: each is told by what comes off. */
function cutAtBothEnds(cuts: readonly Cut[], unit: UnitOutline): Cut[] {
  const squares = cuts.map(cut => cut.marking).filter(marking => marking.kind === 'square-cut');
  const isPaired = ({ across }: SquareCut): boolean => squares.filter(other => other.across === across).length > 1;
  return cuts.map(cut => {
    const { marking } = cut;
    if (marking.kind !== 'square-cut' || !isPaired(marking)) return cut;
    return {
      ...cut,
      marking: { kind: 'strip-off', side: opposite(marking), size: unit[marking.across] - marking.size }
    };
  });
}

function opposite({ keep }: SquareCut): End {
  if (keep === 'left') return 'right';
  if (keep === 'right') return 'left';
  return keep === 'near' ? 'far' : 'near';
}
