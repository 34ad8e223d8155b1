import type { CourseFrame } from '../../geometry/index.ts';
import { gapsIn, type Rectangle } from './cell-gaps.ts';
import type { BondPattern } from './pattern.ts';

/** A place for a unit in a repeating cell, counted in squares of the cell from its lower left corner. */
export interface Slot {
  readonly column: number;
  readonly row: number;
  /** Squares along the courses, and across them; a slot may reach over the cell's edges. */
  readonly across: number;
  readonly up: number;
}

export interface Cell {
  readonly columns: number;
  readonly rows: number;
  readonly slots: readonly Slot[];
}

/** A kind of unit with its size, metres; length along a course when it lies in one. */
export interface SizedUnit {
  readonly key: string;
  readonly length: number;
  readonly width: number;
}

/** A bond drawn as a cell, laid with units. */
export interface CellBond {
  readonly pattern: BondPattern;
  /** Size of a square of the cell, metres, along and across the courses. */
  readonly module: { readonly along: number; readonly across: number };
  /** The widest joint that comes of units that do not fill their squares, m. */
  readonly widestJoint: number;
}

/** The cell asks for another number of sizes than there are units. */
export interface WrongSizes {
  readonly sizes: number;
}

/** In metres: a joint wider than asked by no more than this is rounding. */
const ROUNDING = 1e-9;

/**
 * Lays units in the slots of a cell: the largest unit in the largest slots. A square is as large as the tightest unit
 * needs with its joint; where others do not fill theirs they lie in the middle and their joints are wider.
 */
export function cellBond(
  frame: CourseFrame,
  cell: Cell,
  units: readonly SizedUnit[],
  joint: number
): CellBond | WrongSizes {
  const kinds = kindsOf(cell);
  if (kinds.length !== units.length) return { sizes: kinds.length };
  const bySize = [...units].sort((a, b) => b.length * b.width - a.length * a.width || b.length - a.length);
  const unitOf = (slot: Slot): SizedUnit => bySize[kinds.indexOf(kindOf(slot))]!;
  const module = moduleOf(cell.slots, unitOf, joint);
  const laid = cell.slots.map(slot => {
    const unit = unitOf(slot);
    const standing = slot.up > slot.across;
    const length = standing ? unit.width : unit.length;
    const width = standing ? unit.length : unit.width;
    const spareAlong = Math.max(0, slot.across * module.along - joint - length);
    const spareAcross = Math.max(0, slot.up * module.across - joint - width);
    const x = slot.column * module.along + spareAlong / 2;
    const y = slot.row * module.across + spareAcross / 2;
    return { unit: unit.key, standing, slot, x, y, length, width, spareAlong, spareAcross };
  });
  // The outermost faces along the cell's edges lie right at the start: no unit there loses a sliver to it.
  const corner = {
    x: outermost(laid.filter(({ slot }) => slot.column === 0).map(({ x }) => x)),
    y: outermost(laid.filter(({ slot }) => slot.row === 0).map(({ y }) => y))
  };
  const alongPitch = cell.columns * module.along;
  const acrossPitch = cell.rows * module.across;
  const rectangles = laid.map(({ x, y, length, width }): Rectangle => {
    return { x: x - corner.x, y: y - corner.y, length, width };
  });
  const pitches = { alongPitch, acrossPitch, offset: 0 };
  return {
    pattern: {
      frame,
      units: laid.map(({ unit, standing }, index) => ({ unit, standing, ...rectangles[index]!, ...pitches })),
      joints: gapsIn(rectangles, alongPitch, acrossPitch).map(gap => ({ ...gap, ...pitches }))
    },
    module,
    widestJoint: widestJoint(cell, laid, joint)
  };
}

/** Nought where every unit reaches over the edge. */
function outermost(faces: readonly number[]): number {
  return faces.length === 0 ? 0 : Math.min(...faces);
}

/** The kinds of slots, by their sides in squares, the largest first. */
export function kindsOf({ slots }: Cell): string[] {
  const kinds = new Map(slots.map(slot => [kindOf(slot), slot]));
  return [...kinds]
    .sort(([, a], [, b]) => b.across * b.up - a.across * a.up || Math.max(b.across, b.up) - Math.max(a.across, a.up))
    .map(([kind]) => kind);
}

function kindOf({ across, up }: Slot): string {
  return `${Math.max(across, up)} ${Math.min(across, up)}`;
}

/** Where units stand as well as lie, the squares are square. */
function moduleOf(
  slots: readonly Slot[],
  unitOf: (slot: Slot) => SizedUnit,
  joint: number
): { along: number; across: number } {
  const needs = slots.map(slot => {
    const { length, width } = unitOf(slot);
    const standing = slot.up > slot.across;
    return {
      along: ((standing ? width : length) + joint) / slot.across,
      across: ((standing ? length : width) + joint) / slot.up
    };
  });
  const along = Math.max(...needs.map(need => need.along));
  const across = Math.max(...needs.map(need => need.across));
  if (slots.every(slot => slot.up <= slot.across)) return { along, across };
  return { along: Math.max(along, across), across: Math.max(along, across) };
}

function widestJoint(
  { columns, rows }: Cell,
  laid: readonly { readonly slot: Slot; readonly spareAlong: number; readonly spareAcross: number }[],
  joint: number
): number {
  const at = new Map<string, (typeof laid)[number]>();
  for (const one of laid)
    for (let column = 0; column < one.slot.across; column++)
      for (let row = 0; row < one.slot.up; row++)
        at.set(`${(one.slot.column + column) % columns} ${(one.slot.row + row) % rows}`, one);
  let widest = joint;
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++) {
      const here = at.get(`${column} ${row}`);
      const beside = at.get(`${(column + 1) % columns} ${row}`);
      const above = at.get(`${column} ${(row + 1) % rows}`);
      if (!here || !beside || !above) continue;
      const reachesOn = { along: endsAt(here.slot, column, 'along'), across: endsAt(here.slot, row, 'across') };
      if (reachesOn.along) widest = Math.max(widest, joint + (here.spareAlong + beside.spareAlong) / 2);
      if (reachesOn.across) widest = Math.max(widest, joint + (here.spareAcross + above.spareAcross) / 2);
    }
  return widest > joint + ROUNDING ? widest : joint;

  function endsAt(slot: Slot, square: number, way: 'along' | 'across'): boolean {
    return way === 'along'
      ? (slot.column + slot.across - 1) % columns === square
      : (slot.row + slot.up - 1) % rows === square;
  }
}
