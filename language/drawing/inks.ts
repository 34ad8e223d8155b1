/** What a shape stands for: printers give each its pen and filling, and colour is never the only difference. */
export type Ink = keyof typeof INKS;

export interface InkLook {
  /** Width of the line round the shape, mm on paper; nought for none. */
  readonly pen: number;
  readonly fill: 'none' | 'paper' | 'ground' | 'unit' | 'ink';
  /** Drawn over the filling. */
  readonly hatch?: Hatch;
  /** A broken line: how long its dashes and gaps are, mm on paper; or dash and gap by turns. */
  readonly dash?: number | readonly number[];
  /** Letters. */
  readonly bold?: true;
}

/** Lines one way, lines the other way, lines both ways, short lines, rings as of stones, bricks, or dots. */
export type Hatch = 'lines' | 'falling' | 'crossed' | 'dashes' | 'rings' | 'bricks' | 'dots';

const looks = <Name extends string>(all: Readonly<Record<Name, InkLook>>): Readonly<Record<Name, InkLook>> => all;

export const INKS = looks({
  sheet: { pen: 0, fill: 'paper' },
  // Half of the pen lies under the area that it runs round.
  edging: { pen: 2.4, fill: 'none' },
  ground: { pen: 0, fill: 'ground' },
  whole: { pen: 0.13, fill: 'unit' },
  border: { pen: 0.35, fill: 'unit', hatch: 'dots' },
  cut: { pen: 0.22, fill: 'unit', hatch: 'lines' },
  'border-cut': { pen: 0.35, fill: 'unit', hatch: 'lines' },
  'kept-out': { pen: 0.4, fill: 'paper', hatch: 'crossed' },
  inset: { pen: 0.6, fill: 'none' },
  outline: { pen: 0.5, fill: 'none' },
  // What is known of an area is its outline alone.
  'outline-only': { pen: 0.5, fill: 'none', dash: 2.4 },
  // Over units: what lies under it still shows.
  'soft-spot': { pen: 0.35, fill: 'none', hatch: 'falling', dash: 0.8 },
  'broken-out': { pen: 0.35, fill: 'none', hatch: 'dashes', dash: 3.2 },
  'no-dig': { pen: 0.35, fill: 'none', dash: [0.3, 1.1] },
  below: { pen: 0.35, fill: 'none', dash: 0.9 },
  drain: { pen: 0.4, fill: 'paper', hatch: 'falling' },
  pipe: { pen: 0.6, fill: 'none', dash: 1.8 },
  'break-line': { pen: 0.3, fill: 'none', dash: [3, 0.9, 0.4, 0.9] },
  route: { pen: 0.3, fill: 'none', dash: [0.6, 0.9] },
  section: { pen: 0.45, fill: 'none', dash: [5, 1, 1, 1] },
  leaf: { pen: 0.4, fill: 'paper' },
  swing: { pen: 0.25, fill: 'none', dash: 1.2 },
  dot: { pen: 0.3, fill: 'paper' },
  cross: { pen: 0.3, fill: 'none' },
  tick: { pen: 0.35, fill: 'none' },
  fall: { pen: 0.35, fill: 'ink' },
  // Sections: what is cut through, and lines along it.
  'cut-unit': { pen: 0.35, fill: 'unit' },
  'cut-bed': { pen: 0.2, fill: 'paper', hatch: 'dots' },
  'cut-base': { pen: 0.2, fill: 'paper', hatch: 'rings' },
  'cut-sub-base': { pen: 0.2, fill: 'paper', hatch: 'lines' },
  'cut-made-up': { pen: 0.3, fill: 'ground', hatch: 'rings', dash: 0.8 },
  'cut-soft-spot': { pen: 0.35, fill: 'paper', hatch: 'falling', dash: 0.8 },
  'cut-topsoil': { pen: 0.13, fill: 'paper', hatch: 'dashes' },
  'cut-wall': { pen: 0.5, fill: 'ground', hatch: 'bricks' },
  'cut-concrete': { pen: 0.3, fill: 'ground', hatch: 'dots' },
  'cut-box': { pen: 0.4, fill: 'paper', hatch: 'crossed' },
  'ground-line': { pen: 0.5, fill: 'none', dash: 2 },
  'finish-line': { pen: 0.8, fill: 'none' },
  'beside-line': { pen: 0.7, fill: 'none', dash: [0.6, 0.6] },
  'dig-line': { pen: 0.6, fill: 'none', dash: [4, 1.1, 0.8, 1.1] },
  drop: { pen: 0.1, fill: 'none' },
  // Before and after over each other: what stays is thin, what comes is heavy, what goes is broken.
  'kept-ground': { pen: 0, fill: 'unit' },
  'given-ground': { pen: 0, fill: 'none', hatch: 'falling' },
  'added-ground': { pen: 0, fill: 'none', hatch: 'lines' },
  stays: { pen: 0.25, fill: 'none' },
  comes: { pen: 0.8, fill: 'none' },
  goes: { pen: 0.45, fill: 'none', dash: [1.8, 1.2] },
  'gone-cross': { pen: 0.3, fill: 'none' },
  'edging-stays': { pen: 1.5, fill: 'none' },
  'edging-goes': { pen: 1.2, fill: 'none', dash: [2.4, 1.6] },
  move: { pen: 0.35, fill: 'ink' },
  leader: { pen: 0.18, fill: 'ink' },
  start: { pen: 0.7, fill: 'ink' },
  mark: { pen: 0.25, fill: 'paper' },
  'bar-dark': { pen: 0.25, fill: 'ink' },
  'bar-light': { pen: 0.25, fill: 'paper' },
  number: { pen: 0, fill: 'ink', bold: true },
  text: { pen: 0, fill: 'ink' },
  strong: { pen: 0, fill: 'ink', bold: true }
});

/** Hatches: distance from line to line and width of a line, mm on paper. */
export const HATCHES: Readonly<Record<Hatch, { readonly distance: number; readonly pen: number }>> = {
  lines: { distance: 1.1, pen: 0.13 },
  falling: { distance: 1.8, pen: 0.25 },
  crossed: { distance: 1.6, pen: 0.18 },
  dashes: { distance: 1.8, pen: 0.22 },
  rings: { distance: 1.9, pen: 0.18 },
  bricks: { distance: 2.4, pen: 0.16 },
  dots: { distance: 1.1, pen: 0.28 }
};
