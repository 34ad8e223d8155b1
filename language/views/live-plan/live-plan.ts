// The plan as it is drawn live: the same types as the server's protocol has, which this part may not import.

/**
 * A plan as it is drawn on a screen at any scale: shapes on the ground and what they stand for, each with a key that stays
 * while the thing stays. Lengths and places are millimetres on the ground, rounded to a tenth, x to the right, y up.
 */
export interface LivePlan {
  readonly title: string;
  /** In a few sentences what is to be seen. */
  readonly description: string;
  readonly system: 'metric' | 'imperial';
  /** Said above all: what is missing, and what is shown as it was before an error, with its line. */
  readonly notes: readonly string[];
  /** What comes first lies under what follows. */
  readonly shapes: readonly LiveShape[];
  /** In the order of the table. */
  readonly things: readonly LiveThing[];
  readonly legend: readonly LiveLegendLine[];
  /** Lines along which a section can be drawn. */
  readonly sections: readonly { readonly key: string; readonly name: string }[];
}

/** What can be switched on and off. */
export type Content =
  | 'units'
  | 'cuts'
  | 'cut-numbers'
  | 'edges'
  | 'kept-out'
  | 'points'
  | 'dimensions'
  | 'heights'
  | 'falls'
  | 'starts'
  | 'things'
  | 'findings'
  | 'names';

export type LiveShape = LivePath | LiveRows | LiveText | LiveMark;

interface LiveKeyed {
  readonly key: string;
  readonly content: Content;
  /** Ink, as printed plans have it. */
  readonly ink: string;
  readonly tint?: string;
  /** Key of the thing that it stands for. */
  readonly thing: string;
  /** From before an error: drawn dimmed. */
  readonly stale?: true;
}

/**
 * Corners of a line or an outline, flat: x, y, and how the side from there to the next corner bends, as the tangent of a
 * quarter of its turn, positive anticlockwise (nought: straight). No side turns more than half a circle.
 */
export type LiveCorners = readonly number[];

/** What lies inside an odd number of outlines, or an open line. */
export interface LivePath extends LiveKeyed {
  readonly kind: 'path';
  readonly loops: readonly LiveCorners[];
  readonly closed: boolean;
  /** Where its number finds room: the number itself is the thing's. Size of the largest letters, turn in radians. */
  readonly numbered?: { readonly x: number; readonly y: number; readonly size: number; readonly turn: number };
}

/** Units of one form in rows, or pieces of units that are cut alike. */
export interface LiveRows extends LiveKeyed {
  readonly kind: 'rows';
  /** The outline in the unit's own frame. */
  readonly form: LiveCorners;
  /** x and y of the first frame, its direction in radians, x and y of the step to the next, how many. */
  readonly runs: readonly (readonly [number, number, number, number, number, number])[];
  /** Where the number of a piece finds room, as in a path, but in the frame: its place, and its turn against the frame. */
  readonly numbered?: LivePath['numbered'];
}

/** A text that keeps its size on the screen. */
export interface LiveText extends LiveKeyed {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** Radians anticlockwise, from -90 up to 90 degrees. */
  readonly turn: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** How much room there is along it on the ground: where it takes more on the screen it is left out. */
  readonly room?: number;
  /** Of two that would lie over each other the one of the lower rank is shown. */
  readonly rank: number;
}

/** A sign that keeps its size on the screen. */
export interface LiveMark extends LiveKeyed {
  readonly kind: 'mark';
  readonly x: number;
  readonly y: number;
  readonly sign: 'point' | 'dot' | 'diamond' | 'fall' | 'start' | 'centre' | 'error' | 'warning' | 'note';
  /** Which way it points, radians anticlockwise. */
  readonly turn?: number;
}

/** What a person can point at, and a row of the table. */
export interface LiveThing {
  readonly key: string;
  /** The table's heading: `Areas`, `Edges`, `Cut units`. */
  readonly kind: string;
  readonly name: string;
  /** What is written in its pieces: the number of a cut. */
  readonly number?: string;
  /** Rows of words: what is told, and what it is. */
  readonly facts: readonly (readonly [string, string])[];
  /** Left, bottom, right, top. */
  readonly bounds: readonly [number, number, number, number];
  /** The text has a place for it. */
  readonly leads: boolean;
  /** The key of the area that it belongs to. */
  readonly area?: string;
  /** Where it is taken hold of to move it; why it can't be, in a sentence. Absent of what nobody would drag. */
  readonly handle?: { readonly x: number; readonly y: number; readonly why?: string };
  readonly stale?: true;
}

export interface LiveLegendLine {
  readonly key: string;
  readonly sign:
    | { readonly ink: string; readonly tint?: string }
    | { readonly line: string }
    | { readonly mark: LiveMark['sign'] }
    | { readonly none: true };
  readonly text: string;
  readonly strong?: true;
  /** Absent of what is shown always. */
  readonly content?: Content;
}

/** What differs between two plans: absent where nothing does. */
export interface PlanPatch {
  readonly title?: string;
  readonly description?: string;
  readonly system?: LivePlan['system'];
  readonly notes?: LivePlan['notes'];
  readonly shapes?: ListPatch<LiveShape>;
  readonly things?: ListPatch<LiveThing>;
  readonly legend?: ListPatch<LiveLegendLine>;
  readonly sections?: LivePlan['sections'];
}

/**
 * First what is gone goes; then fields of items are set, `null` for a field that is there no more; then each item takes the
 * place of the one with its key, or comes before `before`, or last.
 */
export interface ListPatch<T> {
  readonly gone: readonly string[];
  readonly set?: readonly { readonly key: string; readonly fields: Readonly<Record<string, unknown>> }[];
  readonly put: readonly { readonly item: T; readonly before?: string }[];
}
