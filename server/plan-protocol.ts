// The live plan: what the server and the editor client say of it to each other, and the client to its panel.
import type { DrawnElement, TextLocation, TextRange } from './protocol.ts';

/** The client asks for the plan of a job as it stands; where it has one already, for what differs from that. */
export const planRequest = 'paving/plan';

export interface PlanParams {
  readonly textDocument: { readonly uri: string };
  /** The number of the plan that the client has. */
  readonly has?: number;
}

/** The client asks which file's plan a text is drawn in: its own, or that of an open job that uses it. */
export const planOwnerRequest = 'paving/planOwner';

export type PlanOwnerParams = Omit<PlanParams, 'has'>;

export interface PlanOwnerResult {
  /** Absent where no job leads there. */
  readonly uri?: string;
}

export type PlanResult =
  | { readonly number: number; readonly plan: LivePlan }
  | { readonly number: number; readonly since: number; readonly patch: PlanPatch }
  | { readonly problem: string };

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

/** The client asks for the place of a thing in the text, as it stands now. */
export const placeOfThingRequest = 'paving/placeOfThing';

export interface PlaceOfThingParams {
  readonly textDocument: { readonly uri: string };
  readonly thing: string;
}

export interface PlaceOfThingResult {
  /** Null where the text has none. */
  readonly place: TextLocation | null;
}

/** The client asks which things of the plan the cursor stands in, the innermost first. `uri` may be a file that the job uses. */
export const thingsAtRequest = 'paving/thingsAt';

export interface ThingsAtParams {
  /** The job whose plan is shown. */
  readonly textDocument: { readonly uri: string };
  readonly uri: string;
  readonly position: { readonly line: number; readonly character: number };
}

export interface ThingsAtResult {
  readonly things: readonly string[];
}

/** The client asks for a section: along one of the job's lines, or from one place of the plan to another. */
export const sectionRequest = 'paving/section';

export interface SectionParams {
  readonly textDocument: { readonly uri: string };
  readonly along: SectionLine;
}

export type SectionLine =
  { readonly key: string } | { readonly from: readonly [number, number]; readonly to: readonly [number, number] };

export type SectionResult = { readonly drawing: DrawnElement; readonly text: string } | { readonly problem: string };

/** The client asks how the text reads once a thing is dragged there. */
export const dragRequest = 'paving/drag';

export interface DragParams {
  readonly textDocument: { readonly uri: string };
  readonly thing: string;
  /** Where its handle comes to lie; mm on the ground. */
  readonly to: readonly [number, number];
}

export type DragResult =
  | {
      readonly uri: string;
      /** Of the text that the edits are made to. */
      readonly version: number | null;
      readonly edits: readonly { readonly range: TextRange; readonly newText: string }[];
    }
  | { readonly problem: string };

// ---- quantities in the side bar ----

/** The client asks what a job holds, as rows one within the other; of a file that a job uses, that job. */
export const jobContentsRequest = 'paving/jobContents';

export interface JobContentsParams {
  readonly textDocument: { readonly uri: string };
}

/** Nothing where no open job has the file. */
export type JobContentsResult = JobContents | null;

export interface JobContents {
  /** The text of the job itself. */
  readonly uri: string;
  readonly row: ContentsRow;
}

export interface ContentsRow {
  /** Stays while the thing stays. */
  readonly id: string;
  /** A plain word: `area`, `layer`, `number`, `warning`. */
  readonly kind: string;
  readonly label: string;
  /** As it is shown: what is told from before an error says so. */
  readonly value: string;
  /** From before an error. */
  readonly stale?: true;
  readonly place?: TextLocation;
  readonly inside: readonly ContentsRow[];
}

/** The client asks for a row and all in it as a table, for the clipboard. */
export const contentsTableRequest = 'paving/contentsTable';

export interface ContentsTableParams {
  readonly textDocument: { readonly uri: string };
  /** The row's id. */
  readonly row: string;
}

/** Nothing where there is no such row any more. */
export interface ContentsTableResult {
  readonly table?: string;
}
