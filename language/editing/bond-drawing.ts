import type { Bond } from '../job/job.ts';
import type { Cell } from '../laying/bonds/cell-bond.ts';

/** Signs along a unit of a bond by its shift: a number that halves, thirds and quarters come out even in. */
const UNIT = 12;
const UNITS = 3;
const COURSES = 4;

/** Signs along a square of a drawn bond; its height is one line and the line above it. */
const SQUARE = 4;
/** Squares that are drawn each way: of a larger bond as many as it has, up to the most. */
const USUAL_SQUARES = { across: 10, up: 6 };
const MOST_SQUARES = { across: 16, up: 12 };

/** What of a bond can be drawn with lines: its units by the offset of its courses or from its repeating cell. */
export function drawBond(bond: Bond): string | undefined {
  if (bond.way === 'courses') return drawn(unitsOfCourses(bond.offset.value));
  return bond.way === 'cell' ? drawn(unitsOfCell(bond.cell)) : undefined;
}

/** Which unit lies at a place of the drawing, counted in signs from the left and in lines of units from below. */
interface Units {
  readonly across: number;
  readonly up: number;
  readonly at: (across: number, up: number) => string;
}

/** A few courses of a bond from its offset, a share of a unit's length from nought to less than one. */
function unitsOfCourses(offset: number): Units {
  // A shift too small to be drawn is still seen.
  const shift = offset === 0 ? 0 : Math.min(UNIT - 1, Math.max(1, offset * UNIT));
  return {
    across: UNIT * UNITS,
    up: COURSES,
    at: (across, up) => `${Math.floor((across - Math.round(up * shift)) / UNIT)} ${up}`
  };
}

/** The cell laid again and again, counting which time it is: a unit that reaches over its edge belongs to the one before. */
function unitsOfCell({ columns, rows, slots }: Cell): Units {
  const owners = new Map<string, { readonly slot: number; readonly right: number; readonly above: number }>();
  slots.forEach(({ column, row, across, up }, slot) => {
    for (let x = column; x < column + across; x++)
      for (let y = row; y < row + up; y++)
        owners.set(`${x % columns} ${y % rows}`, {
          slot,
          right: Math.floor(x / columns),
          above: Math.floor(y / rows)
        });
  });
  const squares = (usual: number, own: number, most: number): number => Math.min(Math.max(usual, own), most);
  return {
    across: SQUARE * squares(USUAL_SQUARES.across, columns, MOST_SQUARES.across),
    up: squares(USUAL_SQUARES.up, rows, MOST_SQUARES.up),
    at: (across, up) => {
      const column = Math.floor(across / SQUARE);
      const { slot, right, above } = owners.get(`${column % columns} ${up % rows}`)!;
      return `${slot} ${Math.floor(column / columns) - right} ${Math.floor(up / rows) - above}`;
    }
  };
}

/** Units with lines between them, the first course at the bottom, as on a plan. */
function drawn(units: Units): string {
  const lines: string[] = [];
  for (let up = units.up; up >= 0; up--) {
    lines.push(alongDrawing(units, at => lineSign(units, at, up)));
    if (up > 0) lines.push(alongDrawing(units, at => (isUpright(units, at, up - 1) ? '│' : ' ')));
  }
  return lines.join('\n');
}

function alongDrawing({ across }: Units, sign: (at: number) => string): string {
  return Array.from({ length: across + 1 }, (_, at) => sign(at)).join('');
}

/** Whether a joint, or the edge of the drawing, stands before a place in a line of units; none stands outside it. */
function isUpright({ across, up, at }: Units, place: number, line: number): boolean {
  if (line < 0 || line >= up) return false;
  return place === 0 || place === across || at(place - 1, line) !== at(place, line);
}

/** The same for a joint below a line of units, at a place. */
function isLevel({ across, up, at }: Units, place: number, line: number): boolean {
  if (place < 0 || place >= across) return false;
  return line === 0 || line === up || at(place, line - 1) !== at(place, line);
}

/** Where lines of the drawing meet: below the line of units `line`, before `place`. */
function lineSign(units: Units, place: number, line: number): string {
  const up = isUpright(units, place, line);
  const down = isUpright(units, place, line - 1);
  const left = isLevel(units, place - 1, line);
  const right = isLevel(units, place, line);
  return SIGNS[(up ? 8 : 0) + (down ? 4 : 0) + (left ? 2 : 0) + (right ? 1 : 0)]!;
}

/** By which ways lines go on: up counts 8, down 4, left 2, right 1. */
const SIGNS = ' ╶╴─╷┌┐┬╵└┘┴│├┤┼';
