import { chordCorners, insideCorners } from '../../drawing/chord-corners.ts';
import type { Sheet } from '../../drawing/drawing.ts';
import { INKS } from '../../drawing/inks.ts';
import { type Box, lineBox, reachOf, Taken } from '../../drawing/taken.ts';
import type { Loop, Point } from '../../geometry/index.ts';
import { COLUMN, FOOTER, ground, HEADER, MARGIN, onGround, type Page } from './page.ts';
import type { PlanArea } from './plan-input.ts';

/** What is on the plan already where a text looks for its place. */
export interface Surroundings {
  readonly sheet: Sheet;
  /** Texts and marks: nothing is written over them. */
  readonly taken: Taken;
  /** Outlines, with their edging: no text stands across one. */
  readonly walls: Taken;
  readonly lies: (place: Point) => 'outside' | 'on units' | 'kept out';
}

/** Side of the squares by which what is taken is looked up, mm on paper. */
export const SQUARE = 8;

export function surroundingsOf(areas: readonly PlanArea[], page: Page): Surroundings {
  const { sheet } = page;
  const outlines = areas.map(({ outline }) => [chordCorners(outline)]);
  const kept = areas.flatMap(area =>
    area.keptOut.filter(({ kind }) => kind !== 'inset').map(({ outline }) => [chordCorners(outline)])
  );
  const walls = new Taken(ground(sheet, SQUARE));
  const pen = (ink: 'edging' | 'kept-out'): number => ground(sheet, INKS[ink].pen);
  for (const { outline, sides, keptOut } of areas) {
    outline.forEach((side, index) => addWall(walls, [side], sides[index]?.edging === undefined ? 0 : pen('edging')));
    for (const one of keptOut) addWall(walls, one.outline, pen('kept-out'));
  }
  return {
    sheet,
    taken: takenBy(page),
    walls,
    lies: place => {
      if (kept.some(corners => insideCorners(corners, place))) return 'kept out';
      return outlines.some(corners => insideCorners(corners, place)) ? 'on units' : 'outside';
    }
  };
}

/** Room of the title, the legend and the scale bar. */
function takenBy({ sheet, legend }: Page): Taken {
  const taken = new Taken(ground(sheet, SQUARE));
  const [width, height] = [sheet.width * 1000, sheet.height * 1000];
  const add = (left: number, right: number, bottom: number, top: number): void => {
    const at = onGround(sheet, (left + right) / 2, (bottom + top) / 2);
    taken.add({ at, width: ground(sheet, right - left), height: ground(sheet, top - bottom), turn: 0 });
  };
  add(0, width, height - MARGIN - HEADER, height);
  add(legend.left, legend.left + legend.columns * COLUMN, legend.top - legend.height, legend.top);
  add(0, width / 2, 0, MARGIN + FOOTER);
  return taken;
}

function addWall(walls: Taken, sides: Loop, thickness: number): void {
  for (const side of sides) {
    const corners = [...chordCorners([side]), side.to];
    corners.slice(1).forEach((to, index) => walls.add({ ...lineBox(corners[index]!, to), height: thickness }));
  }
}

/** What most printers leave blank at the edge of a sheet, mm on paper. */
const BLANK = 5;

/** Whether a box lies on the paper, where it is printed. */
export function isOnSheet(box: Box, sheet: Sheet): boolean {
  const { left, right, bottom, top } = sheet.bounds;
  const { x, y } = box.at;
  const across = reachOf(box, { x: 1, y: 0 }) + ground(sheet, BLANK);
  const up = reachOf(box, { x: 0, y: 1 }) + ground(sheet, BLANK);
  return x - across > left && x + across < right && y - up > bottom && y + up < top;
}
