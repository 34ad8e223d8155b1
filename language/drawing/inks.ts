/** What a shape stands for: printers give each its pen and filling, and colour is never the only difference. */
export type Ink = keyof typeof INKS;

export interface InkLook {
  /** Width of the line round the shape, mm on paper; nought for none. */
  readonly pen: number;
  readonly fill: 'none' | 'paper' | 'ground' | 'unit' | 'ink';
  /** Drawn over the filling. */
  readonly hatch?: Hatch;
  /** A broken line: how long its dashes and gaps are, mm on paper. */
  readonly dash?: number;
  /** Letters. */
  readonly bold?: true;
}

/** Lines one way, lines both ways, or dots. */
export type Hatch = 'lines' | 'crossed' | 'dots';

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
  crossed: { distance: 1.6, pen: 0.18 },
  dots: { distance: 1.1, pen: 0.28 }
};
