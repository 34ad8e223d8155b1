import type { CourseFrame, Loop } from '../../geometry/index.ts';
import type { AreaToLay, FieldToLay } from '../area-to-lay.ts';
import { runsAlong } from '../field-frame.ts';

/** Which ways the first unit can be moved, and whether the courses can be turned, without giving up what is said. */
export interface FreeWays {
  readonly along: boolean;
  readonly across: boolean;
  readonly turn: boolean;
  /** The width of the joints: lines that go on from elsewhere keep theirs. */
  readonly joint: boolean;
}

/**
 * Whole units along a side, equal cuts and joint lines carried on each hold the courses in one way or in both. The courses
 * are turned only where no side is named that they run along.
 */
export function freeWays({ outline, field }: AreaToLay, frame: CourseFrame): FreeWays {
  const { start, carriedOnFrom } = field;
  if (carriedOnFrom !== undefined) return { along: false, across: false, turn: false, joint: false };
  const line = start.jointLine;
  const wholeAcross = start.whole.some(side => runsAlong(outline[side]!, frame));
  const wholeAlong = start.whole.some(side => !runsAlong(outline[side]!, frame));
  const lineCrossesSide = line !== undefined && runsAlong(outline[line.side]!, frame);
  return {
    along: !start.equalCuts && !wholeAlong && !lineCrossesSide,
    across: !wholeAcross && (line === undefined || lineCrossesSide),
    turn:
      start.along === undefined &&
      start.whole.length === 0 &&
      start.turned === undefined &&
      line === undefined &&
      changesWhenTurned(field, outline),
    joint: line === undefined
  };
}

/** Squares in stack bond lie the same way turned by a quarter. */
function changesWhenTurned({ bond, units }: FieldToLay, outline: Loop): boolean {
  if (outline.every(({ arc }) => arc !== undefined)) return false;
  if (bond.way === 'cell') return true;
  const [unit] = units;
  return bond.way === 'courses' && unit !== undefined && (unit.length !== unit.width || bond.offset !== 0);
}
