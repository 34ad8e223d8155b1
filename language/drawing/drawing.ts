import type { Loop, Point, Side } from '../geometry/index.ts';
import type { Bounds } from '../geometry/bounds.ts';
import type { Placement } from '../laying/laid.ts';
import type { Ink } from './inks.ts';
import type { Tint } from './tints.ts';

/**
 * A drawing as data, from which any printer prints: keyed shapes in metres on the ground, x to the right, y up. What has
 * changed between two drawings is told by key.
 */
export interface Drawing {
  readonly title: string;
  /** In a few sentences what is to be seen, for who cannot see it. */
  readonly description: string;
  readonly sheet: Sheet;
  /** What is drawn first lies under what follows. */
  readonly layers: readonly Layer[];
}

/** The paper that a drawing is made for. */
export interface Sheet {
  /** Name of the paper's format: `A4`, `letter`. */
  readonly format: string;
  /** Paper, m. */
  readonly width: number;
  readonly height: number;
  /** Metres on the ground for one metre on paper: 50 for 1:50. */
  readonly scale: number;
  /** What the paper covers of the plan, m on the ground. */
  readonly bounds: Bounds;
}

export interface Layer {
  readonly key: string;
  readonly shapes: readonly Shape[];
}

export type Shape = Outlines | Rows | Line | Label;

interface Keyed {
  readonly key: string;
  readonly ink: Ink;
  /** What it is, in words, for who points at it. */
  readonly says?: string;
}

/** What lies inside one or several outlines, and in an odd number of them. */
export interface Outlines extends Keyed {
  readonly kind: 'outlines';
  readonly loops: readonly Loop[];
  readonly tint?: Tint;
  /** A pen finer than the ink's, m on paper, for what is small. */
  readonly pen?: number;
}

/** Units of one form in rows; `form` is the unit's outline in its own frame. One shape, however many they are. */
export interface Rows extends Keyed {
  readonly kind: 'rows';
  readonly form: Loop;
  readonly runs: readonly { readonly first: Placement; readonly step: Point; readonly count: number }[];
  readonly tint?: Tint;
  readonly pen?: number;
}

/** A line of sides that follow each other and need not close. */
export interface Line extends Keyed {
  readonly kind: 'line';
  readonly sides: readonly Side[];
}

/** One line of text: `at` is half its height up, at its start, middle or end; size of the letters in m on the ground. */
export interface Label extends Keyed {
  readonly kind: 'label';
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  /** Radians anticlockwise. */
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
}
