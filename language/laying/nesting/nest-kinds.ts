import { areaOf, cornerLoop, CUTTING_TOLERANCE, type Loop, perimeterOf, rectangleLoop } from '../../geometry/index.ts';
import { type Blank, blankOf } from './nest-blank.ts';
import type { UnitShape } from '../cut-list/unit-shape.ts';
import type { DemandedPieces, NestingInputs } from './nested.ts';

/** Equal pieces as nesting sees them. */
export interface PieceKind {
  readonly demanded: DemandedPieces;
  readonly count: number;
  readonly blank: Blank;
  /** Share of a unit that one takes up at least, half a saw's cut round both. */
  readonly share: number;
}

/** The most pieces of a small demand: an exhaustive search looks for a better nesting. Of more it would seldom end. */
export const MOST_SEARCHED = 40;

/** Relative: sizes that fill a unit exactly but for rounding must not seem to be more than it. */
export const HAIR = 1e-6;

/** In metres: what pieces stay apart at least. The saw may take the cutting tolerance from the pieces beside a cut. */
export function gapOf({ sawCut }: NestingInputs): number {
  return Math.max(0, sawCut - CUTTING_TOLERANCE);
}

/** The kinds of a demand, those that take up most of a unit first. */
export function kindsOf(inputs: NestingInputs): PieceKind[] {
  const outline = unitOutline(inputs.unit);
  const gap = gapOf(inputs);
  const unitTaken = taken(outline, gap);
  return inputs.pieces
    .filter(({ count }) => count > 0)
    .map(demanded => {
      const blank = blankOf(demanded.piece.outline, inputs.unit);
      const share = (taken(cornerLoop(blank.turned[0]), gap) / unitTaken) * (1 - HAIR);
      return { demanded, count: demanded.count, blank, share };
    })
    .sort((one, two) => two.share - one.share || one.demanded.group - two.demanded.group);
}

/** The outline of a unit in its own frame. */
export function unitOutline({ shape, length, width }: UnitShape): Loop {
  const middle = width / 2;
  return shape === 'rectangle'
    ? rectangleLoop(length, width, { x: 0, y: 0 }, 0)
    : cornerLoop([
        { x: 0, y: middle },
        { x: length / 4, y: 0 },
        { x: (3 * length) / 4, y: 0 },
        { x: length, y: middle },
        { x: (3 * length) / 4, y: width },
        { x: length / 4, y: width }
      ]);
}

/** Square metres within half a gap of a convex outline: what no other piece may come into. */
function taken(outline: Loop, gap: number): number {
  return areaOf(outline) + (perimeterOf(outline) * gap) / 2 + (Math.PI * gap * gap) / 4;
}
